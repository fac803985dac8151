import { at, sumOf } from "../../../lists.js";
import { lastMade, once, remembered } from "../../computed-once.js";
import { months } from "../../lake/calendar.js";
import type { Layer } from "../../mussels/layer.js";
import type { AssumptionId } from "../../register/register.js";
import type { Component, Limit, LimitLoad, Priced } from "../component.js";
import type { LakeContext } from "../context.js";
import { loadOf } from "../limits.js";
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

/** What the service of a line is worth while it is missing. */
export interface Served {
  /** A share of the service that is missing all month. */
  readonly missing: (share: number, month: number, ids: readonly AssumptionId[]) => readonly Priced[];
  /** Hours in which there is none. */
  readonly standing: (hours: number, month: number, ids: readonly AssumptionId[]) => readonly Priced[];
  /** Largest share that may be missing. */
  readonly limit: number;
}

/** The raw-water system on one line, beside the line's own upkeep. */
export type RawWater = Pick<Component, "losses"> & {
  readonly limits: (layer: Layer, month: number) => readonly LimitLoad[];
};

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
  const arriving = (pieces: Pieces) => arrivalsOf(line, pieces, parameters, context.growth);
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
  const worst = shortfall(line, share, parameters);
  const work = workLines(context);
  return {
    losses: (layer, month, upstream = 1) => {
      const arrivals = withShare(own(layer), upstream, at(fromUpstream(), month));
      const load = loadingOf(line, arrivals, parameters);
      return [
        ...work(load),
        ...standingLines(load, line, month, { context, served }),
        ...served.missing(missing(layer, load), month, missingIds),
      ];
    },
    limits: (layer) => {
      const load = loadingOf(line, own(layer), parameters);
      return [
        loadOf(coolersPlugged, worst(layer, load), served.limit),
        ...load.orifices.map(({ load: blocked }) => loadOf(orificesBlocked, blocked, 1)),
      ];
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

function workLines({ assumed }: LakeContext): (load: Loading) => Priced[] {
  const hoursOf = (what: string, hoursId: AssumptionId, ids: readonly AssumptionId[]) => {
    const hoursEach = assumed(hoursId);
    const unitRate = assumed(labourRateId);
    const assumptionIds: readonly AssumptionId[] = [labourRateId, hoursId, ...pieceIds, ...ids];
    return (count: number): Priced => ({
      what,
      type: "work",
      quantity: count * hoursEach,
      quantityKind: "hours",
      unitRate,
      assumptionIds,
    });
  };
  const straining = hoursOf("cleaning the strainer", "raw-water.strainer-hours", ["raw-water.blinded-share"]);
  const cooling = hoursOf("cleaning the coolers", "raw-water.cooler-hours", coolerIds);
  const narrow = hoursOf("clearing the orifices", "raw-water.orifice-hours", ["raw-water.most-cleanings"]);
  return ({ swaps, coolers, orifices }) => [
    straining(swaps),
    cooling(sumOf(coolers.map(({ cooler, cleanings }) => cooler.count * cleanings))),
    narrow(sumOf(orifices.map(({ orifice, clearings }) => orifice.count * clearings))),
  ];
}

/** While a simplex strainer or an orifice is open the line stands, and what it serves while its coolers are. */
function standingLines(
  { swaps, coolers, orifices }: Loading,
  { strainer }: SmallLine,
  month: number,
  { context: { assumed }, served }: { readonly context: LakeContext; readonly served: Served },
): Priced[] {
  const shut =
    (strainer?.type === "simplex" ? swaps : 0) + largest(orifices.map(({ clearings }) => clearings));
  const open = largest(coolers.map(({ cleanings }) => cleanings));
  const lines: Priced[] = [];
  if (shut > 0) lines.push(...served.standing(shut * assumed(shutId), month, shutIds));
  if (open > 0) lines.push(...served.standing(open * assumed(openId), month, openIds));
  return lines;
}

const shutId = "raw-water.strainer-outage";
const openId = "raw-water.cooler-outage";
const shutIds = [shutId] as const;
const openIds = [openId] as const;

/** Lists of assumptions with others before them, each made once. */
export const joinedTo = (ids: readonly AssumptionId[]) =>
  remembered((more: readonly AssumptionId[]): readonly AssumptionId[] => [...ids, ...more]);

/** Alike or not, they are cleaned in the same hours. */
const largest = (counts: readonly number[]) => Math.max(0, ...counts);
