import type { DimensionName } from "../../units/dimensions.js";
import type { TypicalId } from "./filling.js";

/** A question in the words of a lake office; whoever does not know leaves it empty. */
export interface Question {
  /** The fact within its group: "flow". */
  readonly key: string;
  readonly label: string;
  readonly help: string;
  /** Values of which one is chosen, with their words. */
  readonly choices?: ReadonlyArray<readonly [value: string, label: string]>;
  /** What an amount measures. */
  readonly dimension?: DimensionName;
  /** Whether one of the choices is always taken. */
  readonly isSettled?: boolean;
  /** What stands for it while it is not known. */
  readonly typical?: TypicalId;
}

/** Questions of one thing. */
export interface QuestionGroup {
  /** The fact that holds them: "plant"; empty for facts that stand by themselves. */
  readonly key: string;
  readonly title: string;
  readonly screen: 1 | 2;
  /** Whether there may be several of the thing. */
  readonly repeats: boolean;
  /** For what is there or not: the question whether it is there. */
  readonly presence?: string;
  readonly questions: readonly Question[];
}
