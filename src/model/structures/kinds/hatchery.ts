import { at, sumOf } from "../../../lists.js";
import { type ByMonth, daysOf, months, secondsPerDay } from "../../lake/calendar.js";
import type { Layer } from "../../mussels/layer.js";
import type { AssumptionId } from "../../register/register.js";
import { cleaningOf } from "../cleaning.js";
import type { Component, Limit, Priced } from "../component.js";
import type { LakeContext } from "../context.js";
import { monthlyShare } from "../deliveries/monthly-line.js";
import { itemYears, type YearlyItem } from "../deliveries/yearly-items.js";
import type { Pipe, Rack, StructureBase } from "../inputs.js";
import { loadOf, nearer } from "../limits.js";
import { fouledPipeIds, pipeWall, thicknessLimit } from "../pipe.js";
import { linePart } from "../pipe-part.js";
import { rackComponent } from "../rack.js";
import { atOneElevation, boreWords, type StructureKind, sized } from "../structure-kind.js";

/** What a shortfall costs: fish by the day without any water, or water brought by truck. */
type Shortfall =
  | { readonly by: "fish"; readonly lossPerDay: number }
  | { readonly by: "trucking"; readonly price: number };

/** A fish hatchery that takes its water from the lake. */
export interface Hatchery extends StructureBase {
  readonly kind: "hatchery";
  readonly elevation: number;
  readonly requiredFlow: ByMonth;
  readonly rack?: Rack | undefined;
  readonly line: Pipe & { readonly availableHead: number };
  /** Head that the aeration column or tower needs at the end of the line. */
  readonly aerationHead?: number | undefined;
  /** Filters, with or without ultraviolet light, at the end of the line. */
  readonly filters: number;
  readonly shortfall: Shortfall;
  /** Yearly duties once mussels are in the lake, such as checks of stocking trucks. */
  readonly duties: readonly Omit<YearlyItem, "apart">[];
}

const lineName = "supply line";

/** Head that is left for the line. */
const headOf = ({ line, aerationHead = 0 }: Hatchery) => line.availableHead - aerationHead;

/** The rack at the mouth and the line with the filters at its end. No oxidant: it would kill the fish. */
export function hatcheryComponents(hatchery: Hatchery, context: LakeContext): Component[] {
  const { rack, elevation, requiredFlow: flow } = hatchery;
  const racks = rack ? [rackComponent({ rack, elevation, flow, lossPriced: () => [] }, context)] : [];
  return [...racks, lineComponent(hatchery, context)];
}

const limitId = "service-line.shortage-limit";
const tooShort: Limit = { broken: "line too narrow: shortage above the limit", assumptionIds: [limitId] };

function lineComponent(hatchery: Hatchery, context: LakeContext): Component {
  const { line, elevation, requiredFlow } = hatchery;
  const wall = pipeWall(line, elevation, { flow: requiredFlow });
  const share = monthlyShare({ pipe: line, requiredFlow, availableHead: headOf(hatchery) }, context);
  const limit = context.assumed(limitId);
  const tooThick = thicknessLimit(context);
  const filters = filterWork(hatchery, context);
  return {
    name: lineName,
    kind: "service-line",
    designFlow: Math.max(...requiredFlow),
    count: 1,
    ...wall,
    cleaning: cleaningOf("service-line", wall.wettedArea, context),
    losses: (layer, month) => [
      shortfallLine(hatchery, 1 - share(layer, month), month),
      ...filters(layer, month),
    ],
    limit: (layer, month) => nearer(loadOf(tooShort, 1 - share(layer, month), limit), tooThick(layer)),
  };
}

/** A day short of a share of the water costs that share of a day without any, or that water by truck. */
function shortfallLine({ shortfall, requiredFlow }: Hatchery, missing: number, month: number): Priced {
  const days = at(requiredFlow, month) > 0 ? missing * daysOf(month) : 0;
  const line = { type: "loss", assumptionIds: fouledPipeIds } as const;
  if (shortfall.by === "fish") {
    const unitRate = shortfall.lossPerDay;
    return { ...line, what: "fish lost for want of water", quantity: days, quantityKind: "days", unitRate };
  }
  return {
    ...line,
    what: "water brought by truck",
    quantity: days * secondsPerDay * at(requiredFlow, month),
    quantityKind: "volume",
    unitRate: shortfall.price,
  };
}

const cleaningsId = "hatchery.filter-cleanings";
const timeId = "hatchery.filter-time";
const labourId = "labour.maintenance-rate";

/**
 * Hours a month at the filters for what breaks off in the line: more cleanings n of each of N filters in proportion
 * to the line's cover up to a closed layer, H = N n h min(1, c/c1). Judged; no count was found.
 */
export function filterHours(
  layer: Layer,
  {
    filters,
    cleanings,
    hours,
    closedCover,
  }: Record<"filters" | "cleanings" | "hours" | "closedCover", number>,
): number {
  return filters * cleanings * hours * Math.min(1, layer.cover / closedCover);
}

function filterWork({ filters, requiredFlow }: Hatchery, { assumed, roughness }: LakeContext) {
  if (filters === 0) return () => [];
  const work = {
    filters,
    cleanings: assumed(cleaningsId),
    hours: assumed(timeId),
    closedCover: roughness.closedCover,
  };
  const assumptionIds: readonly AssumptionId[] = [cleaningsId, timeId, "hydraulics.closed-cover", labourId];
  const unitRate = assumed(labourId);
  return (layer: Layer, month: number): readonly Priced[] => [
    {
      what: "more cleaning of the filters",
      type: "work",
      quantity: at(requiredFlow, month) > 0 ? filterHours(layer, work) : 0,
      quantityKind: "hours",
      unitRate,
      assumptionIds,
    },
  ];
}

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
