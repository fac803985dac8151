import type { AnswerContext } from "./answer-context.js";

/** What a worker is started with. */
export interface WorkerStart extends AnswerContext {
  /** Which questions it answers: it loads what they need. */
  readonly answers: "comparing" | "reporting" | "papers";
}
