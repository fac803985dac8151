import type { Priced } from "../component.js";

/** What an authority is free to do about the boats of an infested lake. */
export const policies = ["checks-of-leaving-boats", "closed-to-boats", "other"] as const;
type Policy = (typeof policies)[number];

/** A duty or a loss that costs so much a year once mussels are there. */
export interface YearlyItem {
  readonly name: string;
  readonly cost: number;
  /** True for losses that are not infrastructure (recreation, property, fishery); totalled apart. */
  readonly apart: boolean;
  /** Which policy of the authority it pays for; absent for a duty that comes with the mussels. */
  readonly policy?: Policy | undefined;
  readonly fromYear: number;
}

/** A year in which no item begins has the list of the year before. */
export function itemYears(items: readonly YearlyItem[], horizon: number): readonly (readonly Priced[])[] {
  const years: (readonly Priced[])[] = [];
  for (let year = 0; year < horizon; year++) {
    const before = items.some(({ fromYear }) => fromYear === year + 1) ? undefined : years[year - 1];
    years.push(before ?? itemLines(items, year));
  }
  return years;
}

function itemLines(items: readonly YearlyItem[], year: number): Priced[] {
  return items
    .filter((item) => year + 1 >= item.fromYear)
    .map((item) => ({
      what: item.name,
      type: item.apart ? "apart" : item.policy ? "policy" : "duty",
      quantity: 1,
      quantityKind: "year",
      unitRate: item.cost,
      assumptionIds: [],
    }));
}
