import { at, sumOf } from "../../../lists.js";
import { pipeArea } from "../../hydraulics/friction.js";
import type { LakeContext } from "../context.js";
import type { Cooler, Fittings, Orifice } from "./fittings.js";
import { caughtMass, lodgingPieces, type PieceParameters, type Pieces, pieceParameters } from "./pieces.js";

/** What the pieces of a month do to the fittings of one line. */
export interface Loading {
  /** Times that the strainer is blinded to its limit. */
  readonly swaps: number;
  readonly coolers: readonly CoolerLoading[];
  readonly orifices: readonly OrificeLoading[];
}

interface CoolerLoading {
  readonly cooler: Cooler;
  /** Cleanings of each of the coolers. */
  readonly cleanings: number;
  /** Share of the first pass that is plugged when it is cleaned. */
  readonly peak: number;
}

interface OrificeLoading {
  readonly orifice: Orifice;
  /** Clearings of each of the orifices. */
  readonly clearings: number;
  /** Blockings over the most that can be cleared. */
  readonly load: number;
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

/** What pieces bring to the fittings of a line in a month: all of it in proportion to their mass. */
export interface Arrivals {
  /** Times that the strainer is blinded to its limit. */
  readonly swaps: number;
  /** Share of the first pass of each kind of cooler that they plug. */
  readonly plugged: readonly number[];
  /** Blockings of one orifice of each kind. */
  readonly blockings: readonly number[];
}

export function arrivalsOf(
  line: Fittings,
  parameters: LoadingParameters,
  growth: Growth,
): (pieces: Pieces) => Arrivals {
  const { coolers = [], orifices = [], strainer } = line;
  const mesh = strainer?.mesh;
  const firstPasses = coolers.map((cooler) => ({
    bore: cooler.bore,
    share: flowShare(cooler, coolers),
    tubes: firstPassTubes(cooler),
  }));
  const allOrifices = sumOf(orifices.map(({ count }) => count));
  return (pieces) => {
    const lodging = (bore: number) => lodgingPieces(pieces, { bore, mesh }, parameters.pieces, growth.shell);
    return {
      swaps: strainer?.type === "self-cleaning" ? 0 : blindings(line, [pieces], parameters, growth),
      plugged: firstPasses.map(({ bore, share, tubes }) => (lodging(bore) * share) / tubes),
      blockings: orifices.map(({ bore }) => lodging(bore) / allOrifices),
    };
  };
}

/** Arrivals with a share of others. */
export const withShare = (own: Arrivals, share: number, others: Arrivals): Arrivals => ({
  swaps: own.swaps + share * others.swaps,
  plugged: withShareOf(own.plugged, share, others.plugged),
  blockings: withShareOf(own.blockings, share, others.blockings),
});

const withShareOf = (own: readonly number[], share: number, others: readonly number[]) =>
  own.length === 0 ? own : own.map((each, index) => each + share * at(others, index));

export function loadingOf(
  { coolers = [], orifices = [] }: Fittings,
  { swaps, plugged, blockings }: Arrivals,
  parameters: LoadingParameters,
): Loading {
  return {
    swaps,
    coolers: coolers.map((cooler, index) => {
      const { cleanings, peak } = coolerCleanings(at(plugged, index), parameters);
      return { cooler, cleanings, peak };
    }),
    orifices: orifices.map((orifice, index) => ({
      orifice,
      clearings: Math.min(at(blockings, index), parameters.mostCleanings),
      load: at(blockings, index) / parameters.mostCleanings,
    })),
  };
}

/**
 * Times in a month that what a strainer catches covers its share of the screen, as pieces side by side:
 * nS = C/(ρb s AS β).
 */
export function blindings(
  { strainer }: Fittings,
  pieces: readonly Pieces[],
  { pieces: parameters, blindedShare }: Pick<LoadingParameters, "pieces" | "blindedShare">,
  { bulkDensity }: Pick<Growth, "bulkDensity">,
): number {
  if (!strainer) return 0;
  const { mesh, screenArea } = strainer;
  const covered = pieces.map((each) =>
    each.size > 0 ? caughtMass(each, mesh, parameters) / (bulkDensity * each.size) : 0,
  );
  return sumOf(covered) / (screenArea * blindedShare);
}

/**
 * Cleanings of a cooler in a month in which pieces plug a share x of its first pass: n = min(x/σ, nm), once for each share of
 * spare tubes, as often as can be. It is plugged by then to xp = max(min(σ, x), x/nm), at most 1.
 */
export function coolerCleanings(
  plugged: number,
  { spareTubes, mostCleanings }: Pick<LoadingParameters, "spareTubes" | "mostCleanings">,
): Pick<CoolerLoading, "cleanings" | "peak"> {
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

/** Water in proportion to the first passes that are open, tubes by all passes: w = Σ φ (1 − x), a = Σ n (1 − x/p)/Σ n. */
export function leftOf(plugged: ReadonlyArray<Pick<CoolerLoading, "cooler" | "peak">>): Left {
  if (plugged.length === 0) return { water: 1, tubes: 1 };
  const all = { open: 0, tubes: 0 };
  const left = { open: 0, tubes: 0 };
  for (const { cooler, peak } of plugged) {
    const open = openArea(cooler);
    const tubes = cooler.count * cooler.tubes;
    all.open += open;
    left.open += open * (1 - peak);
    all.tubes += tubes;
    left.tubes += tubes * (1 - peak / cooler.passes);
  }
  return { water: left.open / all.open, tubes: left.tubes / all.tubes };
}
