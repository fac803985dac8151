import { at, sumOf } from "../../../lists.js";
import { type ByMonth, daysOf, months, secondsPerDay } from "../../lake/calendar.js";
import type { Priced } from "../component.js";
import type { LakeContext } from "../context.js";
import { amountByYear, carbonLines, type TasteAndOdour } from "../deliveries/taste-and-odour.js";
import type { StructureBase } from "../inputs.js";
import { type StructureKind, sized } from "../structure-kind.js";

/** What water works pay more for treatment where mussels change the water. Their intake is a structure of its own. */
export interface TreatmentPlant extends StructureBase {
  readonly kind: "treatment-plant";
  /** Raw water treated, m³/s. */
  readonly treated: ByMonth;
  /** Id of the intake whose cost is told together with this. */
  readonly intake?: string | undefined;
  readonly tasteAndOdour?: TasteAndOdour | undefined;
  /** Extra treatment against disinfection by-products in a mature infestation, by month and volume. */
  readonly byProducts?: { readonly cost: ByMonth } | undefined;
}

const volumes = ({ treated }: TreatmentPlant) =>
  months.map((month) => at(treated, month) * daysOf(month) * secondsPerDay);

/** The water of each year at the price of its months, in proportion to the density of mussels. */
function byProductLines(cost: ByMonth, plant: TreatmentPlant, { density }: LakeContext): Priced[] {
  const water = volumes(plant);
  const price = sumOf(months.map((month) => at(cost, month) * at(water, month)));
  if (price === 0) return [];
  const meanPrice = price / sumOf(water);
  return amountByYear(plant.treated, cost, density).map((money) => ({
    what: "treatment against disinfection by-products",
    type: "loss",
    quantity: money / meanPrice,
    quantityKind: "volume",
    unitRate: meanPrice,
    assumptionIds: [],
  }));
}

/** A year that repeats the amounts of the year before is the same list. */
function plantYears(plant: TreatmentPlant, context: LakeContext): readonly (readonly Priced[])[] {
  const { tasteAndOdour, byProducts, treated } = plant;
  const kinds = [
    tasteAndOdour ? carbonLines(tasteAndOdour, treated, context) : [],
    byProducts ? byProductLines(byProducts.cost, plant, context) : [],
  ];
  const years: (readonly Priced[])[] = [];
  for (let year = 0; year < context.density.length / 12; year++) {
    const lines = kinds
      .flatMap((ofKind) => ofKind.slice(year, year + 1))
      .filter(({ quantity }) => quantity > 0);
    const before = years[year - 1];
    const isSame =
      before?.length === lines.length &&
      before.every(({ quantity }, index) => quantity === lines[index]?.quantity);
    years.push(before && isSame ? before : lines);
  }
  return years;
}

export const treatmentPlant: StructureKind<TreatmentPlant> = {
  kind: "treatment-plant",
  title: "Water treatment plant",
  name: "treatment plant",
  commonFields: ["intake"],
  // Bad taste makes nobody look for mussels.
  isBuilt: false,
  hasPublishedCosts: false,
  lowestField: "elevation",
  reach: () => undefined,
  size: ({ treated }) => ["up to ", sized(Math.max(...treated), "flow"), " treated"],
  components: () => [],
  ownYears: (plant, _litter, context) => plantYears(plant, context),
  outputs: (plant) => [
    {
      what: "water treated",
      quantity: sumOf(volumes(plant)),
      measure: "treatedVolume",
      alongWith: plant.intake,
    },
  ],
  cautions:
    "Powdered carbon burns and takes the oxygen from closed rooms: treat silos and feed pits as permit-required confined spaces, and keep it away from oxidants. Lock out feeders and mixers. A new treatment or a new dose goes to the state's drinking-water program first.",
  lowered: (plant, { flowShare }) => ({
    ...plant,
    treated: plant.treated.map((flow) => flow * flowShare),
  }),
};
