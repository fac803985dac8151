import { counted } from "../../counted.js";
import type { RecordProblem } from "../../study/reading/contradiction.js";

/** A fault of a file, or of lines that were pasted. @param whole what has the fault where no line has */
export const faultText = ({ line, found, allowed, remedy }: RecordProblem, whole = "The file"): string =>
  `${line === undefined ? whole : `Line ${line}`}: found ${found}; allowed: ${allowed}. ${remedy}`;

interface Tried {
  readonly asked: ReadonlyArray<{ readonly about: string; readonly problem: RecordProblem }>;
  readonly refused: readonly RecordProblem[];
  readonly refusedCount: number;
  readonly problems: readonly RecordProblem[];
}

/** What is told of a file that was tried. @param problems what is wrong with the form or the file as a whole */
export const fileTold = (tried: Tried | undefined, problems: readonly string[]) => ({
  faults: [...problems, ...(tried?.problems ?? []).map((each) => faultText(each))],
  asked: (tried?.asked ?? []).map(({ about, problem }) => ({ about, text: faultText(problem) })),
  refused: (tried?.refused ?? []).map((each) => faultText(each)),
  refusedCount: counted(tried?.refusedCount ?? 0, "line"),
});
