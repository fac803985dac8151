import type { AssumptionSet } from "../../assumptions/entry.js";
import type { StudyDocument } from "../format/schema.js";
import type { Contradiction } from "../reading/contradiction.js";

type MoneyDocument = StudyDocument["money"];

/** What two rates may differ by that are the same eighths of a percent. */
const roundingError = 1e-9;

/**
 * A rate of the federal rule, or the rate before it, that is not the one noticed for its fiscal year. Notices that are
 * from memory refuse nothing.
 */
export function noticeProblems(
  { discountRate: { value, planning } }: MoneyDocument,
  { planningRates }: AssumptionSet,
): Contradiction[] {
  const year = planning?.fiscalYear;
  if (planning === undefined || year === undefined) return [];
  const differs = (
    field: "meanYield" | "previousRate",
    fiscalYear: number,
    rate: number,
  ): Contradiction[] => {
    const notice = planningRates.get(fiscalYear);
    if (notice?.basis !== "published" || Math.abs(notice.rate - rate) < roundingError) return [];
    return [
      {
        path: ["money", "discountRate", "planningRate", field],
        found: `a rate of ${percentText(rate)} for fiscal year ${fiscalYear}`,
        allowed: `what leads to ${percentText(notice.rate)}, as published (${notice.notice})`,
        remedy: "Correct it, or leave out fiscalYear where the rate is meant for no fiscal year.",
      },
    ];
  };
  return [
    ...differs("previousRate", year - 1, planning.previousRate.value),
    ...differs("meanYield", year, value),
  ];
}

const percentText = (rate: number) => `${Number((rate * 100).toFixed(3))} %`;
