import { dirname } from "node:path";
import { loadAssumptions } from "../assumptions/load.js";
import { sweepCsv } from "../forms/sweep-csv.js";
import { assumptionsFolder } from "../report/document/assets.js";
import { parsedStudyFile } from "../study/reading/read.js";
import { mostPoints } from "../study/swept/points.js";
import { sweep } from "../study/swept/sweep.js";
import { required, UsageError } from "./arguments.js";

interface SweepArguments {
  /** Each with its values in one text. */
  readonly values: ReadonlyArray<{ readonly id: string; readonly value: string }>;
  readonly asJson: boolean;
}

/** Computes a study at every combination of some values and prints what each option comes to. */
export function sweepCommand(
  path: string,
  { values, asJson }: SweepArguments,
  print: (text: string) => void,
): void {
  required(values[0]?.id, "--set ID=VALUES");
  const swept = values.map(({ id, value }) => ({ id, values: valuesIn(value) }));
  const result = sweep(parsedStudyFile(path), swept, loadAssumptions(assumptionsFolder, dirname(path)));
  print(asJson ? JSON.stringify(result, undefined, 2) : sweepCsv(result).trimEnd());
}

const steps = /^(-?[\d.]+)\s*\.\.\s*(-?[\d.]+)\s+by\s+([\d.]+)(.*)$/;

/** The values in a list, or in steps from one to another. @throws UsageError */
function valuesIn(text: string): string[] {
  const [, first, last, by, unit = ""] = steps.exec(text) ?? [];
  if (first === undefined) {
    return text.split(text.includes(";") ? ";" : ",").map((value) => value.trim());
  }
  const [from, to, step] = [Number(first), Number(last), Number(by)];
  const count = Math.floor((to - from) / step + rounding) + 1;
  if (!(step > 0) || !Number.isFinite(count) || count < 1) {
    throw new UsageError(`--set has "${text}"; allowed: from the smaller to the larger, as 1..9 by 2.`);
  }
  if (count > mostPoints) {
    const found = `--set has "${text}", ${count.toLocaleString("en-US")} values`;
    throw new UsageError(
      `${found}; allowed: at most ${mostPoints.toLocaleString("en-US")} points in one sweep. Take wider steps.`,
    );
  }
  return Array.from(
    { length: count },
    (_, index) => `${Number((from + index * step).toPrecision(digits))}${unit}`,
  );
}

/** Part of a step by which the last may miss the end. */
const rounding = 1e-9;
const digits = 12;
