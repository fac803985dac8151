import type { AssumptionSet } from "../../assumptions/entry.js";
import type { AssumptionFiles } from "../../assumptions/yaml-file.js";
import type { Answer, Asked, Kind } from "./questions.js";

/** With what studies are computed. */
export interface AnswerContext {
  readonly assumptions: AssumptionSet;
  /** What they were read from. */
  readonly files: AssumptionFiles;
}

/** Answers to questions of some kinds, in this thread. */
export type AnswersOf<Some extends Kind> = {
  readonly [Which in Some]: (asked: Asked<Which>) => Answer<Which> | Promise<Answer<Which>>;
};
