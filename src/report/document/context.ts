import type { Comparison, OptionBalance } from "../../model/compare.js";
import type { Bearer } from "../../model/money/bearer.js";
import type { OptionResult } from "../../model/option.js";
import type { StudyRun } from "../../study/prepare/compute.js";
import type { TracedResult } from "../../study/traced/traced.js";
import type { TracedOption } from "../../study/traced/traced-option.js";
import { type Formatter, formatter, percent } from "../words/format.js";

/** What every part of the report works from. */
export interface ReportContext {
  readonly run: StudyRun;
  readonly comparison: Comparison;
  readonly traced: TracedResult;
  readonly requested: OptionBalance;
  readonly format: Formatter;
  readonly horizon: number;
  readonly priceYear: number;
  /** Set where the lake is infested already: the report is then a maintenance budget. */
  readonly infestedSince: number | undefined;
  /** The program in force, where it is another than none and the lake is not infested yet. */
  readonly existing: OptionResult | undefined;
  /** A bearer's name, or the names of several with their shares. */
  readonly bearerName: (bearer: Bearer) => string;
  /** Number of an assumption in the appendix: "A12". */
  readonly assumptionNumber: (id: string) => string;
}

export function reportContext(run: StudyRun): ReportContext {
  const { document, comparison, usedAssumptions } = run;
  const traced = run.traced();
  const numbers = new Map([...usedAssumptions].sort().map((id, index) => [id, `A${index + 1}`]));
  const bearers = new Map(document.money.bearers.map(({ id, name }) => [id, name]));
  return {
    run,
    comparison,
    traced,
    requested: requestedOption(run),
    format: formatter(document.money.currency, document.study.units),
    horizon: document.money.horizon,
    priceYear: document.money.priceYear,
    infestedSince: document.lake.infestedSince,
    existing: traced.existing,
    bearerName: (bearer) =>
      typeof bearer === "string"
        ? (bearers.get(bearer) ?? bearer)
        : bearer.map(({ id, share }) => `${bearers.get(id) ?? id} ${percent(share, 4)}`).join(", "),
    assumptionNumber: (id) => numbers.get(id) ?? "",
  };
}

export function requestedOption({
  document,
  comparison,
}: Pick<StudyRun, "document" | "comparison">): OptionBalance {
  const found = comparison.options.find(({ result }) => result.option.id === document.study.requestedOption);
  if (!found) throw new Error(`no option ${document.study.requestedOption}`);
  return found;
}

export const allOptions = ({ comparison }: Pick<ReportContext, "comparison">): OptionResult[] => [
  comparison.baseline,
  ...comparison.options.map(({ result }) => result),
];

/** What is told of an option of the comparison. */
export function tracedOf({ traced }: Pick<ReportContext, "traced">, optionId: string): TracedOption {
  const found = traced.options.find(({ result }) => result.option.id === optionId);
  if (!found) throw new Error(`no traced option ${optionId}`);
  return found;
}
