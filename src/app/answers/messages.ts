import type { AnswerContext } from "./answer-context.js";
import type { Question } from "./questions.js";

/** A question with the records that its studies name. */
export interface RecordedQuestion {
  readonly question: Question;
  readonly records: readonly string[];
}

/** What a worker is started with. */
export interface WorkerStart extends AnswerContext {
  /** Which questions it answers: it loads what they need. */
  readonly answers: "comparing" | "reporting" | "papers";
}
