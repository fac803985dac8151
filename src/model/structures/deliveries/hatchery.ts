import { at } from "../../../lists.js";
import { type ByMonth, daysOf, months, secondsPerDay } from "../../lake/calendar.js";
import { wettedShares } from "../../lake/levels.js";
import type { Layer } from "../../mussels/layer.js";
import { cleaningOf } from "../cleaning.js";
import type { Charge, Component, Limit, Priced } from "../component.js";
import type { LakeContext } from "../context.js";
import type { Pipe, Rack, StructureBase } from "../inputs.js";
import { fouledPipeIds, pipeWall, thicknessLimit } from "../pipe.js";
import { rackComponent } from "../rack.js";
import type { ServiceItem } from "../structure-kind.js";
import { monthlyShare } from "./monthly-line.js";
import type { YearlyItem } from "./yearly-items.js";

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

export const lineName = "supply line";

/** Head that is left for the line. */
export const headOf = ({ line, aerationHead = 0 }: Hatchery) => line.availableHead - aerationHead;

/** The rack at the mouth and the line with the filters at its end. No oxidant: it would kill the fish. */
export function hatcheryComponents(hatchery: Hatchery, context: LakeContext): Component[] {
  const { rack, elevation, requiredFlow: flow } = hatchery;
  const racks = rack ? [rackComponent({ rack, elevation, flow, headLost: () => () => {} }, context)] : [];
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
    losses: (tell, layer, month) => {
      const missing = 1 - share(layer, month);
      if (missing > 0) {
        const line = shortfallLine(hatchery, missing, month);
        tell(line, line.quantity);
      }
      filters(tell, layer, month);
    },
    limit: (meet, layer, month) => {
      meet(tooShort, 1 - share(layer, month), limit);
      tooThick(meet, layer);
    },
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

function filterWork(
  { filters, requiredFlow }: Hatchery,
  { assumed, roughness }: LakeContext,
): Component["losses"] {
  if (filters === 0) return () => {};
  const work = {
    filters,
    cleanings: assumed(cleaningsId),
    hours: assumed(timeId),
    closedCover: roughness.closedCover,
  };
  const charge: Charge = {
    what: "more cleaning of the filters",
    type: "work",
    quantityKind: "hours",
    unitRate: assumed(labourId),
    assumptionIds: [cleaningsId, timeId, "hydraulics.closed-cover", labourId],
  };
  return (tell, layer, month) => {
    if (at(requiredFlow, month) > 0) tell(charge, filterHours(layer, work));
  };
}

/** What the levels cost without any mussels: the days on which the mouth stands above the water. */
export function dryDays(hatchery: Hatchery, { daily }: LakeContext): ServiceItem {
  const wetted = wettedShares(daily, hatchery.elevation);
  const lines = months.map((month) => shortfallLine(hatchery, 1 - at(wetted, month), month));
  const { quantityKind, unitRate } = at(lines, 0);
  return {
    what: `${at(lines, 0).what} while the mouth is exposed`,
    quantityKind,
    quantity: lines.map(({ quantity }) => quantity),
    unitRate: months.map(() => unitRate),
  };
}
