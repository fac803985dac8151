import { counted } from "../../../counted.js";
import { itemYears, type YearlyItem } from "../deliveries/yearly-items.js";
import type { StructureBase } from "../inputs.js";
import type { StructureKind } from "../structure-kind.js";

export interface LakeWide extends StructureBase {
  readonly kind: "lake-wide";
  readonly items: readonly YearlyItem[];
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
