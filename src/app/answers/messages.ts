import type { Means } from "./means.js";

/** What a worker is started with. */
export interface WorkerStart extends Means {
  /** Which questions it answers: it loads what they need. */
  readonly answers: "comparing" | "reporting" | "papers";
}
