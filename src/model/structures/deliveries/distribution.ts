import { at } from "../../../lists.js";
import { canalArea, canalCapacityLeft, canalPerimeter } from "../../hydraulics/canal.js";
import { type ByMonth, daysOf, months, secondsPerDay } from "../../lake/calendar.js";
import type { AssumptionId } from "../../register/register.js";
import { cleaningOf, timesAsMuch } from "../cleaning.js";
import type { Charge, Component, Limit, Tell } from "../component.js";
import type { LakeContext } from "../context.js";
import type { Pipe } from "../inputs.js";
import { noLimit } from "../limits.js";
import { fouledPipeIds, pipeWall, thicknessLimit } from "../pipe.js";
import { monthlyShare } from "./monthly-line.js";

/** A concrete-lined canal; an earth canal hardly fouls and is left out. */
export interface Canal {
  readonly length: number;
  readonly bottomWidth: number;
  readonly depth: number;
  /** Horizontal over vertical. */
  readonly sideSlope?: number | undefined;
  /** Flow that it carries when clean. */
  readonly capacity?: number | undefined;
}

/** Pressurised pipes to the fields; all but the count is for one of them. */
export interface Laterals extends Pipe {
  readonly count: number;
  readonly availableHead: number;
}

/** What brings pumped water to the land. */
export interface Distribution {
  readonly elevation: number;
  /** Water brought to the land in each month, m³. */
  readonly delivered: ByMonth;
  readonly canal?: Canal | undefined;
  readonly laterals?: Laterals | undefined;
  /** Value of water that is not brought, by volume. */
  readonly lostDeliveries: number;
  readonly drainedWhenIdle: boolean;
}

/** Mean flow of each month, m³/s. */
export const meanFlows = (delivered: ByMonth): number[] =>
  delivered.map((volume, month) => volume / (daysOf(month) * secondsPerDay));

/** A part whose water stands in months without any, or that is emptied in them where the plant is. */
export function seasonal(part: Component, { delivered, drainedWhenIdle }: Distribution): Component {
  const { place } = part.surface;
  const running = delivered.map((volume) => (volume > 0 ? 1 : 0));
  const drained = months.filter((month) => at(delivered, month) === 0);
  const isEmptied = drainedWhenIdle && place.at === "elevation";
  return {
    ...part,
    surface: { ...part.surface, running, place: isEmptied ? { ...place, drained } : place },
  };
}

const spareId = "irrigation.canal-spare";
const roughnessId = "irrigation.canal-roughness";
const slopeId = "irrigation.canal-side-slope";
const sideIds: readonly AssumptionId[] = [slopeId];

/** A lined canal: what it falls short of a month's flow under a layer is not brought, W = max(0, Q − C q) s. */
export function canalComponent(canal: Canal, way: Distribution, context: LakeContext): Component {
  const { assumed, roughness } = context;
  const flow = meanFlows(way.delivered);
  const section = {
    ...canal,
    sideSlope: canal.sideSlope ?? assumed(slopeId),
    roughness: assumed(roughnessId),
  };
  const capacity = canal.capacity ?? Math.max(...flow) * (1 + assumed(spareId));
  const wettedArea = canalPerimeter(section) * canal.length;
  const areaIds = canal.sideSlope === undefined ? sideIds : undefined;
  const spareIds = canal.capacity === undefined ? ([spareId] as const) : [];
  const short = notBrought(way, [...fouledPipeIds, roughnessId, ...(areaIds ?? []), ...spareIds]);
  return seasonal(
    {
      name: "canal",
      kind: "conduit",
      designFlow: Math.max(...flow),
      count: 1,
      surface: {
        place: { at: "elevation", elevation: way.elevation },
        velocity: flow.map((each) => each / canalArea(section)),
      },
      wettedArea,
      areaIds,
      cleaning: cleaningOf("canal", wettedArea, context, areaIds),
      losses: (tell, layer, month) => {
        const carried = capacity * canalCapacityLeft(section, layer, roughness);
        short(tell, Math.max(0, at(flow, month) - carried) * daysOf(month) * secondsPerDay);
      },
      limit: noLimit,
    },
    way,
  );
}

const limitId = "service-line.shortage-limit";
const tooShort: Limit = {
  broken: "laterals too narrow: shortage above the limit",
  assumptionIds: [limitId],
};

/** Laterals share the water equally; the share that one misses under a layer is not brought, W = (1 − S) V. */
export function lateralsComponent(laterals: Laterals, way: Distribution, context: LakeContext): Component {
  const { count, availableHead } = laterals;
  const flow = meanFlows(way.delivered);
  const requiredFlow = flow.map((each) => each / count);
  const wall = pipeWall(laterals, way.elevation, { flow: requiredFlow });
  const share = monthlyShare({ pipe: laterals, requiredFlow, availableHead }, context);
  const limit = context.assumed(limitId);
  const tooThick = thicknessLimit(context);
  const short = notBrought(way, fouledPipeIds);
  return seasonal(
    {
      name: "laterals",
      kind: "service-line",
      designFlow: Math.max(...flow),
      count,
      surface: wall.surface,
      wettedArea: wall.wettedArea * count,
      cleaning: timesAsMuch(cleaningOf("lateral", wall.wettedArea, context), count),
      losses: (tell, layer, month) => short(tell, (1 - share(layer, month)) * at(way.delivered, month)),
      limit: (meet, layer, month) => {
        meet(tooShort, 1 - share(layer, month), limit);
        tooThick(meet, layer);
      },
    },
    way,
  );
}

function notBrought({ lostDeliveries: unitRate }: Distribution, assumptionIds: readonly AssumptionId[]) {
  const what = "water not brought to the land";
  const charge: Charge = { what, type: "loss", quantityKind: "volume", unitRate, assumptionIds };
  return (tell: Tell, volume: number): void => {
    if (volume > 0) tell(charge, volume);
  };
}
