import { counted } from "../../../counted.js";
import type { Priced } from "../component.js";
import type { StructureBase } from "../inputs.js";
import type { StructureKind } from "../structure-kind.js";

/** What an authority is free to do about the boats of an infested lake. */
export const policies = ["checks-of-leaving-boats", "closed-to-boats", "other"] as const;
type Policy = (typeof policies)[number];

interface YearlyItem {
  readonly name: string;
  readonly cost: number;
  /** True for losses that are not infrastructure (recreation, property, fishery); totalled apart. */
  readonly apart: boolean;
  /** Which policy of the authority it pays for; absent for a duty that comes with the mussels. */
  readonly policy?: Policy | undefined;
  readonly fromYear: number;
}

export interface LakeWide extends StructureBase {
  readonly kind: "lake-wide";
  readonly items: readonly YearlyItem[];
}

/** A year in which no item begins has the list of the year before. */
function itemYears(items: readonly YearlyItem[], horizon: number): readonly (readonly Priced[])[] {
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

export const lakeWide: StructureKind<LakeWide> = {
  kind: "lake-wide",
  title: "Lake-wide duties",
  name: "lake-wide",
  commonFields: [],
  isBuilt: false,
  hasPublishedCosts: false,
  lowestField: "elevation",
  reach: () => undefined,
  size: ({ items }) => [counted(items.length, "yearly duty", "yearly duties")],
  components: () => [],
  ownYears: ({ items }, _litter, { density }) => itemYears(items, density.length / 12),
  lowered: (structure) => structure,
};
