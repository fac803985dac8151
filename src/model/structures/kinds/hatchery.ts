import { at, sumOf } from "../../../lists.js";
import { daysOf, months, secondsPerDay } from "../../lake/calendar.js";
import { dryDays, type Hatchery, hatcheryComponents, headOf, lineName } from "../deliveries/hatchery.js";
import { itemYears } from "../deliveries/yearly-items.js";
import { linePart } from "../pipe-part.js";
import { atOneElevation, boreWords, type StructureKind, sized } from "../structure-kind.js";

const largestFlow = ({ requiredFlow }: Hatchery) => Math.max(...requiredFlow);

export const hatchery: StructureKind<Hatchery> = {
  kind: "hatchery",
  title: "Fish hatchery supply",
  name: "hatchery",
  commonFields: ["line/roughness", "filters", "aerationHead"],
  isBuilt: true,
  hasPublishedCosts: false,
  lowestField: "elevation",
  reach: atOneElevation,
  size: (each) => ["up to ", sized(largestFlow(each), "flow"), ", line ", ...boreWords(each.line)],
  inlet: ({ elevation, requiredFlow }) => ({ elevation, flow: requiredFlow }),
  rack: (each) => each.rack && { rack: each.rack, flow: largestFlow(each) },
  pipes: (each) => {
    const line = { ...each.line, requiredFlow: largestFlow(each), availableHead: headOf(each) };
    return [linePart(lineName, ["line"], { line, count: 1 })];
  },
  components: hatcheryComponents,
  ownYears: ({ duties }, _litter, { density }) =>
    itemYears(
      duties.map((duty) => ({ ...duty, apart: false })),
      density.length / 12,
    ),
  cleanService: (each, context) => [dryDays(each, context)],
  outputs: ({ requiredFlow }) => [
    {
      what: "water supplied",
      quantity: sumOf(months.map((month) => at(requiredFlow, month) * daysOf(month) * secondsPerDay)),
      measure: "volume",
    },
  ],
  cautions:
    "Nothing that kills mussels may reach fish: chlorine, copper and potassium harm or kill them at doses used in pipes; take the rearing units off the line first. Head boxes, filter pits and lines are permit-required confined spaces; ultraviolet light blinds. Fish, water and trucks that leave an infested hatchery carry larvae: follow the state's fish health and transport rules, and its disposal rules for dead fish.",
  lowered: (each, { fall, flowShare }) => ({
    ...each,
    elevation: each.elevation - fall,
    requiredFlow: each.requiredFlow.map((flow) => flow * flowShare),
  }),
};
