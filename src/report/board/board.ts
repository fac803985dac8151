import type { BalancePicture } from "./balance-picture.js";
export interface BoardView {
  readonly question: string;
  readonly answer: string;
  readonly pays: boolean;
  /** Absent where there is nothing to weigh. */
  readonly balance: BalancePicture | undefined;
  readonly figures: readonly { readonly label: string; readonly value: string; readonly note: string }[];
  /** How the answer follows from the case at central values; absent where it is that case. */
  readonly bridge?: string | undefined;
  readonly asked: string;
  /** What the option requested adds to the program in force; absent where the study names none. */
  readonly increment?: string | undefined;
  readonly changes: readonly string[];
  readonly failedChecks: readonly string[];
}
