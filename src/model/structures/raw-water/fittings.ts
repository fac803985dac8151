import type { Surface } from "../../mussels/surface.js";

/** A bundle of equal tubes that a line's water runs through, in some passes one after the other. */
export interface Cooler {
  readonly name: string;
  /** Coolers alike, side by side; every other number is for one of them. */
  readonly count: number;
  readonly tubes: number;
  readonly bore: number;
  readonly passes: number;
}

/** What stands at the head of a line. A simplex strainer is cleaned with the line shut, a duplex one in turn. */
export interface Strainer {
  readonly mesh: number;
  readonly screenArea: number;
  readonly type: "simplex" | "duplex" | "self-cleaning";
}

/** A narrow bore in a line: a metering or throttling orifice, a nozzle, a seal's passage. */
export interface Orifice {
  readonly name: string;
  readonly count: number;
  readonly bore: number;
}

/** A surface upstream of a line whose mussels break off into its water. */
export interface UpstreamWall {
  readonly surface: Surface;
  readonly area: number;
  /** Largest flow along it, of which the line takes its share. */
  readonly flow: number;
}

/** What a small line carries, beside its pipe; all of it may be left out. */
export interface Fittings {
  /** What it serves, in the author's words. */
  readonly serves?: string | undefined;
  readonly coolers?: readonly Cooler[] | undefined;
  readonly strainer?: Strainer | undefined;
  readonly orifices?: readonly Orifice[] | undefined;
  /** Id of the structure that it is tapped from; of a plant's line its own penstock where it is left out. */
  readonly upstream?: string | undefined;
  /** Walls of that structure. */
  readonly upstreamWalls?: readonly UpstreamWall[] | undefined;
}

export const hasFittings = ({ coolers = [], strainer, orifices = [] }: Fittings): boolean =>
  coolers.length > 0 || orifices.length > 0 || strainer !== undefined;
