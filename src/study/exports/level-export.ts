import type { RecordProblem } from "../reading/contradiction.js";

/** What a reader of exported files asks of its author, by the field of the mapping that answers it. */
export interface Asked {
  readonly about: "columns" | "unit" | "dates" | "decimals" | "missing" | "several";
  readonly problem: RecordProblem;
  /** Words that were found in place of values. */
  readonly words?: readonly string[];
}

/** What was read of an exported file of levels. */
export interface LevelExport {
  /** The record in the usual form, by date; absent while something is asked, or where no level was read. */
  readonly csv: string | undefined;
  /** How it was read, in sentences. */
  readonly told: readonly string[];
  readonly asked: readonly Asked[];
  /** Lines that are not in the record, in their order. */
  readonly refused: readonly RecordProblem[];
}
