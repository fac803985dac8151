import type { Problem } from "../../study/reading/problems.js";
import type { Means } from "./means.js";
import type { Answer, Kind } from "./questions.js";

/** What a worker is started with. */
export interface WorkerStart extends Means {
  /** Which questions it answers: it loads what they need. */
  readonly answers: "comparing" | "reporting" | "papers";
  /** How much it stands back for other threads, from 0 to 19. */
  readonly niceness: number;
}

/** From a worker: what it answers the one question that it was sent. */
export type Reply =
  | { readonly answer: Answer<Kind> }
  | { readonly subject: string; readonly problems: readonly Problem[] }
  | { readonly fault: unknown };
