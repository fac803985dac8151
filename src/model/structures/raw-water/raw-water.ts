import { at } from "../../../lists.js";
import { lastMade, once } from "../../computed-once.js";
import { months } from "../../lake/calendar.js";
import type { Layer } from "../../mussels/layer.js";
import type { AssumptionId } from "../../register/register.js";
import type { Charge, Component, Limit, Tell } from "../component.js";
import type { LakeContext } from "../context.js";
import { loadOf, nearer } from "../limits.js";
import type { SmallLine, serviceShare } from "../small-line.js";
import { hasFittings, type UpstreamWall } from "./fittings.js";
import {
  arrivalsOf,
  type Loading,
  type LoadingParameters,
  leftOf,
  loadingOf,
  loadingParameters,
  withShare,
} from "./loading.js";
import { type Pieces, pieceIds, shedPieces } from "./pieces.js";
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

const limitIds = ["raw-water.spare-tubes", "raw-water.most-cleanings", ...pieceIds] as const;
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
 * @param of.share `serviceShare` of the line
 */
export function rawWaterOf(
  line: SmallLine,
  { area, walls, share }: { area: number; walls: readonly UpstreamWall[]; share: Share },
  context: LakeContext,
  served: Served,
): RawWater | undefined {
  if (!hasFittings(line)) return undefined;
  const parameters = loadingParameters(context);
  const arriving = arrivalsOf(line, parameters, context.growth);
  const own = lastMade((layer: Layer) => arriving(shedPieces(layer, area, parameters.pieces)));
  const fromUpstream = once(() => {
    const byWall = walls.map((wall) =>
      upstreamPieces(wall, line.requiredFlow, parameters.pieces, context).map(arriving),
    );
    return months.map((month) =>
      byWall.reduce((sum, ofWall) => withShare(sum, 1, at(ofWall, month)), arriving(noPieces)),
    );
  });
  const missing = missingShare(line, share, parameters, served.limit);
  const tellMissing = served.missing(missingIds);
  const worst = shortfall(line, share, parameters);
  const tellWork = workOf(context);
  const tellStanding = standingOf(line, context, served);
  return {
    losses: (tell, layer, month, upstream = 1) => {
      const arrivals = withShare(own(layer), upstream, at(fromUpstream(), month));
      const load = loadingOf(line, arrivals, parameters);
      tellWork(tell, load);
      tellStanding(tell, load, month);
      tellMissing(tell, missing(layer, load), month);
    },
    limit: (layer) => {
      const load = loadingOf(line, own(layer), parameters);
      let nearest = loadOf(coolersPlugged, worst(layer, load), served.limit);
      for (const { load: blocked } of load.orifices)
        nearest = nearer(nearest, loadOf(orificesBlocked, blocked, 1));
      return nearest;
    },
  };
}

const noPieces: Pieces = { mass: 0, size: 0 };

const coolerIds = ["raw-water.spare-tubes", "raw-water.most-cleanings"] as const;
const missingIds = [...pieceIds, ...coolerIds];

/**
 * Service missing when coolers are as plugged as they get, beyond what the spare tubes make up for:
 * D = max(0, 1 − S(xp)/S(σ)).
 */
function shortfall({ coolers: all = [] }: SmallLine, share: Share, { spareTubes }: LoadingParameters) {
  const spare = leftOf(all.map((cooler) => ({ cooler, peak: spareTubes })));
  return (layer: Layer, { coolers }: Loading): number => {
    const allowed = share(layer, spare);
    return allowed > 0 ? Math.max(0, 1 - share(layer, leftOf(coolers)) / allowed) : 0;
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
): (layer: Layer, load: Loading) => number {
  const worst = shortfall(line, share, parameters);
  return (layer, load) => {
    const short = worst(layer, load);
    const tripped = short > limit ? 1 - limit / short : 0;
    return tripped + ((1 - tripped) * Math.min(short, limit)) / 2;
  };
}

function workOf({ assumed }: LakeContext): (tell: Tell, load: Loading) => void {
  const hoursOf = (what: string, hoursId: AssumptionId, ids: readonly AssumptionId[]) => {
    const hoursEach = assumed(hoursId);
    const charge: Charge = {
      what,
      type: "work",
      quantityKind: "hours",
      unitRate: assumed(labourRateId),
      assumptionIds: [labourRateId, hoursId, ...pieceIds, ...ids],
    };
    return (tell: Tell, count: number) => tell(charge, count * hoursEach);
  };
  const straining = hoursOf("cleaning the strainer", "raw-water.strainer-hours", ["raw-water.blinded-share"]);
  const cooling = hoursOf("cleaning the coolers", "raw-water.cooler-hours", coolerIds);
  const narrow = hoursOf("clearing the orifices", "raw-water.orifice-hours", ["raw-water.most-cleanings"]);
  return (tell, { swaps, coolers, orifices }) => {
    let cleanings = 0;
    for (const each of coolers) cleanings += each.cooler.count * each.cleanings;
    let clearings = 0;
    for (const each of orifices) clearings += each.orifice.count * each.clearings;
    straining(tell, swaps);
    cooling(tell, cleanings);
    narrow(tell, clearings);
  };
}

/**
 * While a simplex strainer or an orifice is open the line stands, and what it serves while its coolers are. Alike or not,
 * they are cleaned in the same hours.
 */
function standingOf({ strainer }: SmallLine, { assumed }: LakeContext, served: Served) {
  const tellShut = served.standing([shutId]);
  const tellOpen = served.standing([openId]);
  return (tell: Tell, { swaps, coolers, orifices }: Loading, month: number): void => {
    let clearings = 0;
    for (const each of orifices) clearings = Math.max(clearings, each.clearings);
    let cleanings = 0;
    for (const each of coolers) cleanings = Math.max(cleanings, each.cleanings);
    const shut = (strainer?.type === "simplex" ? swaps : 0) + clearings;
    if (shut > 0) tellShut(tell, shut * assumed(shutId), month);
    if (cleanings > 0) tellOpen(tell, cleanings * assumed(openId), month);
  };
}

const shutId = "raw-water.strainer-outage";
const openId = "raw-water.cooler-outage";
