import { counted } from "../../../counted.js";
import { daysOf, hoursPerDay, months } from "../../lake/calendar.js";
import type { AssumptionId } from "../../register/register.js";
import { cleaningOf, supplyOutage, timesAsMuch } from "../cleaning.js";
import type { Charge, Component, Limit } from "../component.js";
import type { LakeContext } from "../context.js";
import type { Exchanger, Pipe, StructureBase } from "../inputs.js";
import { pipeWall, thicknessLimit, upstreamWall } from "../pipe.js";
import { linePart } from "../pipe-part.js";
import { fittingWords } from "../raw-water/fitting-words.js";
import type { Fittings } from "../raw-water/fittings.js";
import { rawWaterOf, type Served } from "../raw-water/raw-water.js";
import { serviceShare, smallLineIds } from "../small-line.js";
import { atOneElevation, boreWords, type StructureKind } from "../structure-kind.js";

/** Small-bore raw-water lines of one kind; all but the count is for one of them. */
export interface ServiceLine extends StructureBase, Pipe, Fittings {
  readonly kind: "service-line";
  readonly elevation: number;
  readonly count: number;
  readonly requiredFlow: number;
  readonly availableHead: number;
  /** What a day without the line costs. */
  readonly shortageCostPerDay: number;
  readonly oxidantAllowed: boolean;
  readonly exchanger?: Exchanger | undefined;
}

const limitId = "service-line.shortage-limit";
const tooShort: Limit = { broken: "line too narrow: shortage above the limit", assumptionIds: [limitId] };

/**
 * Small-bore raw-water lines of one kind: fire protection, seal water, sampling, heat exchangers. Mussels grow as at
 * the velocity of the required flow in every month, although such a line may stand still for most of it: standing, it
 * may foul less, for want of food, or more, where the flow would be too fast to settle in. A day on which a share of
 * the required flow is missing costs that share of a day without the line.
 */
export function serviceLineComponents(line: ServiceLine, context: LakeContext): Component[] {
  const { count, requiredFlow } = line;
  const flow = months.map(() => requiredFlow);
  const wall = pipeWall(line, line.elevation, { flow });
  const share = serviceShare(line, context);
  const limit = context.assumed(limitId);
  const tooThick = thicknessLimit(context);
  const narrowed = withoutWater(line, smallLineIds(line));
  const walls = line.upstreamWalls ?? [];
  const served = servedBy(line, limit);
  const shut = { what: "service missing in outages", ...withoutLine(line) };
  const { outage, outageDaysId } = supplyOutage(context, shut, (days) => days * count);
  const rawWater = rawWaterOf(line, { area: wall.wettedArea, count, walls, share }, context, served);
  return [
    {
      name: "service line",
      kind: "service-line",
      designFlow: requiredFlow * count,
      count,
      surface: wall.surface,
      wettedArea: wall.wettedArea * count,
      cleaning: timesAsMuch(cleaningOf("service-line", wall.wettedArea, context), count),
      oxidant: line.oxidantAllowed ? { flow: flow.map((each) => each * count) } : undefined,
      outage,
      outageDaysId,
      isFed: rawWater !== undefined,
      losses: (tell, layer, month, upstream) => {
        const missing = 1 - share(layer);
        if (missing > 0) tell(narrowed, missing * daysOf(month) * count);
        rawWater?.losses(tell, layer, month, upstream);
      },
      limit: (meet, layer, month) => {
        meet(tooShort, 1 - share(layer), limit);
        tooThick(meet, layer);
        rawWater?.limit(meet, layer, month);
      },
    },
  ];
}

/** A day without one of the lines. */
const withoutLine = ({ shortageCostPerDay: unitRate }: ServiceLine) =>
  ({ type: "loss", quantityKind: "days", unitRate }) as const;

const withoutWater = (line: ServiceLine, assumptionIds: readonly AssumptionId[]): Charge => ({
  what: "service missing for want of water",
  ...withoutLine(line),
  assumptionIds,
});

function servedBy(line: ServiceLine, limit: number): Served {
  const { count } = line;
  return {
    limit,
    missing: (ids) => {
      const plugged = withoutWater(line, [...smallLineIds(line), limitId, ...ids]);
      return (tell, lost, month) => tell(plugged, lost * daysOf(month) * count);
    },
    standing: (ids) => {
      const shut = withoutWater(line, ids);
      return (tell, hours) => tell(shut, (hours / hoursPerDay) * count);
    },
  };
}

export const serviceLine: StructureKind<ServiceLine> = {
  kind: "service-line",
  title: "Service line",
  name: "service lines",
  commonFields: ["roughness", "oxidantAllowed"],
  isBuilt: true,
  hasPublishedCosts: false,
  lowestField: "elevation",
  reach: atOneElevation,
  size: (line) => [`${counted(line.count, "line")}, `, ...boreWords(line), ...fittingWords(line)],
  inlet: ({ elevation, requiredFlow }) => ({ elevation, flow: months.map(() => requiredFlow) }),
  pipes: (line) => [linePart("service line", [], { line, count: line.count })],
  walls: (line) => {
    const flow = months.map(() => line.requiredFlow);
    return [upstreamWall(pipeWall(line, line.elevation, { flow }), flow, line.count)];
  },
  components: serviceLineComponents,
  lowered: (line, { fall, flowShare }) => ({
    ...line,
    elevation: line.elevation - fall,
    requiredFlow: line.requiredFlow * flowShare,
  }),
};
