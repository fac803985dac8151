import type { TableView } from "../words/view-types.js";
import type { AskView } from "./ask-view.js";
import type { BalancePicture } from "./balance-picture.js";

export interface BoardView {
  readonly question: string;
  readonly answer: string;
  /** How far the net benefit goes, and the chance that mussels establish; absent where nothing can establish any more. */
  readonly certainty?: string | undefined;
  readonly pays: boolean;
  /** Absent where there is nothing to weigh. */
  readonly balance: BalancePicture | undefined;
  readonly figures: readonly { readonly label: string; readonly value: string; readonly note: string }[];
  /** How the answer follows from the case at central values; absent where it is that case. */
  readonly bridge?: string | undefined;
  /** Both accounts, and all options from the best down; absent without odds. */
  readonly accounts?: TableView | undefined;
  readonly ranked?: TableView | undefined;
  /** What the tables come to, a sentence each. */
  readonly findings: readonly string[];
  readonly asked: string;
  /** Absent where there is no budget to ask for. */
  readonly ask?: AskView | undefined;
  readonly motion: string;
  /** Empty where nothing is told of it. */
  readonly notFunded: string;
  /** What the option requested adds to the program in force; absent where the study names none. */
  readonly increment?: string | undefined;
  readonly changes: readonly string[];
  readonly changesBasis?: string | undefined;
  /** How exact the estimate is, and how much of it rests on judgement. */
  readonly estimate?: string | undefined;
  /** That checks did not pass; empty where all did. */
  readonly failed: string;
  /** The first of them. */
  readonly failedChecks: readonly string[];
}

/** What differs between a lake to be kept clean, one infested already, and an option that only follows other levels. */
export type BoardCase = Omit<BoardView, "failed" | "failedChecks" | "motion" | "notFunded" | "ask">;
