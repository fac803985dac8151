import type { PlanNumber } from "../model/register/plan-numbers.js";

/** What the last word of a number's id once said of it. */
const wordOf: Readonly<Record<PlanNumber, string>> = {
  capital: "capital",
  referenceSize: "reference-size",
  sizeExponent: "size-exponent",
  life: "life",
  upkeep: "upkeep",
  outageDays: "outage-days",
  settlementFactor: "settlement-factor",
  cleaningShare: "cleaning-share",
  temperature: "temperature",
  hours: "hours",
  energyPrice: "energy-price",
  visit: "visit",
  switchingHours: "switching-hours",
  inspection: "inspection",
  limitShare: "limit-share",
  dosePrice: "dose-price",
};

/**
 * The numbers of a plan in files that do not name them one by one, as those of reports issued by earlier versions: such
 * an entry gives the middle word of their ids, or has it as its own id.
 * @param needed what its mechanism reads
 */
export function earlierNumbers(
  middle: string,
  needed: readonly string[],
  ids: readonly string[],
): Readonly<Record<string, string>> {
  const own = ids.map((id) => ({ id, words: id.split(".") }));
  return Object.fromEntries(
    Object.entries(wordOf).flatMap(([name, last]) =>
      (needed.includes(name) ? own : [])
        .filter(({ words }) => words.length === 3 && words[0] === "plan" && words[1] === middle)
        .filter(({ words }) => words[2] === last)
        .map(({ id }) => [name, id]),
    ),
  );
}
