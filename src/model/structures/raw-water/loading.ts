import { noElement, sumOf } from "../../../lists.js";
import { pipeArea } from "../../hydraulics/friction.js";
import type { LakeContext } from "../context.js";
import type { Cooler, Fittings } from "./fittings.js";
import {
  caughtMass,
  heldBy,
  lodgingPieces,
  type Opening,
  openingOf,
  type PieceParameters,
  type Pieces,
  pieceParameters,
} from "./pieces.js";

/** What the pieces of a month do to the fittings of one line. */
export interface Loading {
  /** Times that the strainer is blinded to its limit. */
  readonly swaps: number;
  /** Cleanings of all coolers together, and of the one that is cleaned most often. */
  readonly cleanings: number;
  readonly cleaningsOfOne: number;
  /** Clearings of all orifices together, and of the one that is cleared most often. */
  readonly clearings: number;
  readonly clearingsOfOne: number;
  /** What the coolers are left when they are as plugged as they get. */
  readonly left: Left;
  /** Blockings over the most that can be cleared, of the orifice where that is most. */
  readonly blocked: number;
}

export interface LoadingParameters {
  readonly pieces: PieceParameters;
  readonly blindedShare: number;
  readonly spareTubes: number;
  readonly mostCleanings: number;
}

export const loadingParameters = ({ assumed }: Pick<LakeContext, "assumed">): LoadingParameters => ({
  pieces: pieceParameters(assumed),
  blindedShare: assumed("raw-water.blinded-share"),
  spareTubes: assumed("raw-water.spare-tubes"),
  mostCleanings: assumed("raw-water.most-cleanings"),
});

type Growth = LakeContext["growth"];

/**
 * What pieces bring to the fittings of a line in a month, all of it in proportion to their mass: times that the strainer is
 * blinded to its limit, then the share of the first pass of each kind of cooler that they plug, then blockings of one orifice
 * of each kind.
 */
export type Arrivals = readonly number[];

/** @returns a function that puts them into a list, where it is handed one */
export function arrivalsOf(
  { coolers = [], orifices = [], strainer }: Fittings,
  parameters: LoadingParameters,
  growth: Growth,
): (pieces: Pieces, list?: number[]) => Arrivals {
  const held = heldBy(strainer?.mesh, parameters.pieces);
  const screen =
    strainer && strainer.type !== "self-cleaning" ? { held, area: strainer.screenArea } : undefined;
  const limit = { blindedShare: parameters.blindedShare, bulkDensity: growth.bulkDensity };
  const allOrifices = sumOf(orifices.map(({ count }) => count));
  const opening = (bore: number) => openingOf(bore, parameters.pieces);
  const narrow = [
    ...coolers.map((cooler) => ({
      way: { bore: opening(cooler.bore), held },
      share: flowShare(cooler, coolers),
      among: firstPassTubes(cooler),
    })),
    ...orifices.map(({ bore }) => ({ way: { bore: opening(bore), held }, share: 1, among: allOrifices })),
  ];
  return (pieces, list = []) => {
    list[0] = screen ? blindings(screen, pieces, limit) : 0;
    for (let kind = 0; kind < narrow.length; kind++) {
      const { way, share, among } = narrow[kind] ?? noElement(narrow, kind);
      list[kind + 1] = (lodgingPieces(pieces, way, growth.shell) * share) / among;
    }
    return list;
  };
}

/** Arrivals with a share of others, of one kind. */
const shared = (own: Arrivals, share: number, others: Arrivals, kind: number): number =>
  (own[kind] ?? noElement(own, kind)) + share * (others[kind] ?? noElement(others, kind));

/** The same of all kinds. */
export const withShare = (own: Arrivals, share: number, others: Arrivals): Arrivals =>
  own.map((_, kind) => shared(own, share, others, kind));

/** @returns a function of what the own wall brings, and a share of what others do: the same object each time */
export function loadingOf(
  { coolers = [], orifices = [] }: Fittings,
  parameters: LoadingParameters,
): (own: Arrivals, share?: number, others?: Arrivals) => Loading {
  const { mostCleanings } = parameters;
  const leftWith = leftOf(coolers);
  const peaks = coolers.map(() => 0);
  const load = {
    swaps: 0,
    cleanings: 0,
    cleaningsOfOne: 0,
    clearings: 0,
    clearingsOfOne: 0,
    blocked: 0,
    left: allLeft,
  };
  return (own, share = 0, others = own) => {
    let kind = 0;
    load.swaps = shared(own, share, others, kind);
    load.cleanings = load.cleaningsOfOne = load.clearings = load.clearingsOfOne = load.blocked = 0;
    for (const { count } of coolers) {
      const { peak, cleanings } = coolerCleanings(shared(own, share, others, kind + 1), parameters);
      peaks[kind++] = peak;
      load.cleanings += count * cleanings;
      load.cleaningsOfOne = Math.max(load.cleaningsOfOne, cleanings);
    }
    for (const { count } of orifices) {
      const blockings = shared(own, share, others, ++kind);
      const clearings = Math.min(blockings, mostCleanings);
      load.clearings += count * clearings;
      load.clearingsOfOne = Math.max(load.clearingsOfOne, clearings);
      load.blocked = Math.max(load.blocked, blockings / mostCleanings);
    }
    load.left = leftWith(peaks);
    return load;
  };
}

/**
 * Times in a month that what a strainer catches covers its share of the screen, as pieces side by side:
 * nS = C/(ρb s AS β).
 */
export function blindings(
  { held, area }: { readonly held: Opening; readonly area: number },
  pieces: Pieces,
  { blindedShare, bulkDensity }: Pick<LoadingParameters, "blindedShare"> & Pick<Growth, "bulkDensity">,
): number {
  const covered = pieces.size > 0 ? caughtMass(pieces, held) / (bulkDensity * pieces.size) : 0;
  return covered / (area * blindedShare);
}

/**
 * Cleanings of a cooler in a month in which pieces plug a share x of its first pass: n = min(x/σ, nm), once for each share of
 * spare tubes, as often as can be. It is plugged by then to xp = max(min(σ, x), x/nm), at most 1.
 */
export function coolerCleanings(
  plugged: number,
  { spareTubes, mostCleanings }: Pick<LoadingParameters, "spareTubes" | "mostCleanings">,
): { readonly cleanings: number; readonly peak: number } {
  return {
    cleanings: Math.min(plugged / spareTubes, mostCleanings),
    peak: Math.min(1, Math.max(Math.min(spareTubes, plugged), plugged / mostCleanings)),
  };
}

const firstPassTubes = ({ count, tubes, passes }: Cooler) => (count * tubes) / passes;

const openArea = (cooler: Cooler) => firstPassTubes(cooler) * pipeArea(cooler.bore);

/** Coolers side by side share the water, and the pieces in it, by the area of their first passes. */
export const flowShare = (cooler: Cooler, all: readonly Cooler[]): number =>
  openArea(cooler) / all.reduce((sum, each) => sum + openArea(each), 0);

/** Water and tubes that are left of a line's coolers under their plugged shares. */
export interface Left {
  readonly water: number;
  readonly tubes: number;
}

/**
 * Water in proportion to the first passes that are open, tubes by all passes: w = Σ φ (1 − x), a = Σ n (1 − x/p)/Σ n, by the
 * share x of each cooler's first pass that is plugged; the same object each time.
 */
export function leftOf(coolers: readonly Cooler[]): (plugged: readonly number[]) => Left {
  const bundles = coolers.map((each) => ({
    open: openArea(each),
    tubes: each.count * each.tubes,
    passes: each.passes,
  }));
  const allOpen = sumOf(bundles.map(({ open }) => open));
  const allTubes = sumOf(bundles.map(({ tubes }) => tubes));
  if (bundles.length === 0) return () => allLeft;
  const left = { water: 1, tubes: 1 };
  return (plugged) => {
    let water = 0;
    let whole = 0;
    for (let index = 0; index < bundles.length; index++) {
      const { open, tubes, passes } = bundles[index] ?? noElement(bundles, index);
      const peak = plugged[index] ?? noElement(plugged, index);
      water += open * (1 - peak);
      whole += tubes * (1 - peak / passes);
    }
    left.water = water / allOpen;
    left.tubes = whole / allTubes;
    return left;
  };
}

export const allLeft: Left = { water: 1, tubes: 1 };
