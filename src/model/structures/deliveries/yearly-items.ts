import type { Priced } from "../component.js";

/** A duty or a loss that costs so much a year once mussels are there. */
export interface YearlyItem {
  readonly name: string;
  readonly cost: number;
  /** True for losses that are not infrastructure (recreation, property, fishery); totalled apart. */
  readonly apart: boolean;
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
      type: item.apart ? "apart" : "work",
      quantity: 1,
      quantityKind: "year",
      unitRate: item.cost,
      assumptionIds: [],
    }));
}
