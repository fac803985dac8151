import { at } from "../../../lists.js";
import { lastMade, once } from "../../computed-once.js";
import { months } from "../../lake/calendar.js";
import type { Layer } from "../../mussels/layer.js";
import type { AssumptionId } from "../../register/register.js";
import type { Charge, Component, Limit, Tell } from "../component.js";
import type { LakeContext } from "../context.js";
import type { SmallLine, serviceShare } from "../small-line.js";
import { hasFittings, type UpstreamWall } from "./fittings.js";
import {
  type Arrivals,
  allLeft,
  arrivalsOf,
  type Left,
  type Loading,
  type LoadingParameters,
  leftOf,
  loadingOf,
  loadingParameters,
  withShare,
} from "./loading.js";
import { pieceIds, piecesOf, shedPieces } from "./pieces.js";
import { upstreamPieces } from "./upstream.js";

/** Tells what a share of a service or hours without it are worth in a month. */
type ServiceLost = (tell: Tell, lost: number, month: number) => void;

/** What the service of a line is worth while it is missing, by the assumptions behind what is missing. */
export interface Served {
  /** A share of the service that is missing all month. */
  readonly missing: (ids: readonly AssumptionId[]) => ServiceLost;
  /** Hours in which there is none. */
  readonly standing: (ids: readonly AssumptionId[]) => ServiceLost;
  /** Largest share that may be missing. */
  readonly limit: number;
}

/** The raw-water system on one line, beside the line's own upkeep. */
export type RawWater = Pick<Component, "losses" | "limit">;

/** What lodges in a narrow bore is counted by the mass of a shell of its length. */
const lodgingIds = ["raw-water.most-cleanings", "shell.mass-intercept", "shell.mass-exponent"] as const;
const coolerIds = ["raw-water.spare-tubes", ...lodgingIds] as const;
const limitIds = [...coolerIds, ...pieceIds] as const;
const coolersPlugged: Limit = {
  broken: "coolers plugged faster than they can be cleaned",
  assumptionIds: limitIds,
};
const orificesBlocked: Limit = {
  broken: "orifices blocked faster than they can be cleared",
  assumptionIds: limitIds,
};

const labourRateId = "labour.maintenance-rate";

/** What a line still does under a layer, with what its coolers are left of water and tubes. */
type Share = ReturnType<typeof serviceShare>;

/**
 * Undefined where the line carries nothing that shells could harm.
 * @param of.area wall of one line, m²
 * @param of.count lines alike, all of which are worked on
 * @param of.share `serviceShare` of the line
 */
export function rawWaterOf(
  line: SmallLine,
  {
    area,
    count,
    walls,
    share,
  }: {
    area: number;
    count: number;
    walls: readonly UpstreamWall[];
    share: Share;
  },
  context: LakeContext,
  served: Served,
): RawWater | undefined {
  if (!hasFittings(line)) return undefined;
  const parameters = loadingParameters(context);
  const arriving = arrivalsOf(line, parameters, context.growth);
  const loading = loadingOf(line, parameters);
  const ownArrivals: number[] = [];
  const own = lastMade((layer: Layer) => arriving(shedPieces(layer, area, parameters.pieces), ownArrivals));
  const fromUpstream = once(() => arrivalsFrom(walls, arriving, line, parameters, context));
  const missing = missingShare(line, share, parameters, served.limit);
  const tellMissing = served.missing(missingIds);
  const worst = shortfall(line, share, parameters);
  const tellWork = workOf(count, context);
  const tellStanding = standingOf(line, context, served);
  return {
    losses: (tell, layer, month, upstream = 1) => {
      const load = loading(own(layer), upstream, at(fromUpstream(), month));
      tellWork(tell, load);
      tellStanding(tell, load, month);
      const lost = missing(layer, load.left);
      if (lost > 0) tellMissing(tell, lost, month);
    },
    limit: (meet, layer) => {
      const { left, blocked } = loading(own(layer));
      meet(coolersPlugged, worst(layer, left), served.limit);
      meet(orificesBlocked, blocked, 1);
    },
  };
}

/** What comes down from all walls upstream in each month of a mature year. */
function arrivalsFrom(
  walls: readonly UpstreamWall[],
  arriving: ReturnType<typeof arrivalsOf>,
  { requiredFlow }: SmallLine,
  { pieces }: LoadingParameters,
  context: LakeContext,
): readonly Arrivals[] {
  const byWall = walls.map((wall) =>
    upstreamPieces(wall, requiredFlow, pieces, context).map((each) => arriving(each)),
  );
  const none = arriving(piecesOf(0, 0, pieces));
  return months.map((month) => byWall.reduce((sum, ofWall) => withShare(sum, 1, at(ofWall, month)), none));
}

const missingIds = [...pieceIds, ...coolerIds];

/**
 * Service missing when coolers are as plugged as they get, beyond what the spare tubes make up for:
 * D = max(0, 1 − S(xp)/S(σ)).
 */
function shortfall({ coolers = [] }: SmallLine, share: Share, { spareTubes }: LoadingParameters) {
  const spare = leftOf(coolers)(coolers.map(() => spareTubes));
  return (layer: Layer, left: Left): number => {
    if (left === allLeft) return 0;
    const allowed = share(layer, spare);
    return allowed > 0 ? Math.max(0, 1 - share(layer, left) / allowed) : 0;
  };
}

/**
 * Service that coolers miss over a month as they plug from clean to their worst. Above the limit D0 the unit trips and stands
 * until they are clean: τ = max(0, 1 − D0/D) of the time, V = τ + (1 − τ) min(D, D0)/2.
 */
export function missingShare(
  line: SmallLine,
  share: Share,
  parameters: LoadingParameters,
  limit: number,
): (layer: Layer, left: Left) => number {
  const worst = shortfall(line, share, parameters);
  return (layer, left) => {
    const short = worst(layer, left);
    const tripped = short > limit ? 1 - limit / short : 0;
    return tripped + ((1 - tripped) * Math.min(short, limit)) / 2;
  };
}

function workOf(lines: number, { assumed }: LakeContext): (tell: Tell, load: Loading) => void {
  const hoursOf = (what: string, hoursId: AssumptionId, ids: readonly AssumptionId[]) => {
    const hoursEach = assumed(hoursId);
    const charge: Charge = {
      what,
      type: "work",
      quantityKind: "hours",
      unitRate: assumed(labourRateId),
      assumptionIds: [labourRateId, hoursId, ...pieceIds, ...ids],
    };
    return (tell: Tell, count: number) => {
      if (count > 0) tell(charge, count * hoursEach * lines);
    };
  };
  const straining = hoursOf("cleaning the strainer", "raw-water.strainer-hours", ["raw-water.blinded-share"]);
  const cooling = hoursOf("cleaning the coolers", "raw-water.cooler-hours", coolerIds);
  const narrow = hoursOf("clearing the orifices", "raw-water.orifice-hours", lodgingIds);
  return (tell, { swaps, cleanings, clearings }) => {
    straining(tell, swaps);
    cooling(tell, cleanings);
    narrow(tell, clearings);
  };
}

/**
 * While a simplex strainer or an orifice is open the line stands, and what it serves while its coolers are. Alike or not,
 * they are cleaned in the same hours.
 */
function standingOf({ strainer, orifices = [] }: SmallLine, { assumed }: LakeContext, served: Served) {
  const isSimplex = strainer?.type === "simplex";
  const hours = { shut: assumed(shutId), open: assumed(openId) };
  const shutIds: readonly AssumptionId[] = [
    ...(isSimplex ? (["raw-water.blinded-share"] as const) : []),
    ...(orifices.length > 0 ? lodgingIds : []),
  ];
  const tellShut = served.standing([shutId, ...shutIds, ...pieceIds]);
  const tellOpen = served.standing([openId, ...coolerIds, ...pieceIds]);
  return (tell: Tell, { swaps, cleaningsOfOne, clearingsOfOne }: Loading, month: number): void => {
    const shut = (isSimplex ? swaps : 0) + clearingsOfOne;
    if (shut > 0) tellShut(tell, shut * hours.shut, month);
    if (cleaningsOfOne > 0) tellOpen(tell, cleaningsOfOne * hours.open, month);
  };
}

const shutId = "raw-water.strainer-outage";
const openId = "raw-water.cooler-outage";
