import type { Assumed } from "../../assumed.js";
import type { Layer } from "../../mussels/layer.js";
import { type ShellParameters, wetMassG } from "../../mussels/shell.js";

/** Shells and druses that come down a line in a month. */
export interface Pieces {
  /** Live wet mass that they stand for, kg. */
  readonly mass: number;
  /** Length that 37 % of the mass exceeds, m. */
  readonly size: number;
  /** The size to the power of the spread of their sizes. */
  readonly power: number;
}

/** What pieces are longer than or not, with its length to the power of the spread of their sizes. */
export interface Opening {
  readonly length: number;
  readonly power: number;
}

export interface PieceParameters {
  readonly spread: number;
  /** Width of a piece over its length. */
  readonly width: number;
  readonly carriedShare: number;
}

export const pieceIds = [
  "raw-water.piece-spread",
  "raw-water.piece-width",
  "raw-water.carried-share",
  "growth.yearly-mortality",
  "growth.bulk-density",
] as const;

export const pieceParameters = (assumed: Assumed): PieceParameters => ({
  spread: assumed("raw-water.piece-spread"),
  width: assumed("raw-water.piece-width"),
  carriedShare: assumed("raw-water.carried-share"),
});

export const piecesOf = (mass: number, size: number, { spread }: PieceParameters): Pieces => ({
  mass,
  size,
  power: size ** spread,
});

/**
 * What a wall sheds into its water in a month, G = χ Ms A: of the mass that dies or loses its hold, the share that comes off
 * in pieces. Druses are as large as the layer is thick, and no smaller than one shell: s = max(L, t).
 */
export function shedPieces(
  layer: Pick<Layer, "shed" | "lengthMm" | "thickness">,
  area: number,
  parameters: PieceParameters,
): Pieces {
  return piecesOf(parameters.carriedShare * layer.shed * area, pieceSize(layer), parameters);
}

export const pieceSize = ({ lengthMm, thickness }: Pick<Layer, "lengthMm" | "thickness">): number =>
  Math.max(lengthMm * metresPerMm, thickness);

const metresPerMm = 1e-3;
const gramsPerKg = 1e3;

/**
 * Share of the mass in pieces longer than an opening: P = exp(−(d/s)^k), Rosin and Rammler's law of broken material (1933,
 * from memory).
 */
export function longerShare({ power }: Pieces, opening: Opening): number {
  return Math.exp(-opening.power / power);
}

export const openingOf = (length: number, { spread }: PieceParameters): Opening => ({
  length,
  power: length ** spread,
});

/** Length of the pieces that a mesh just holds, d = a/ω: they pass end on, by their width. No strainer holds none. */
export const heldBy = (mesh: number | undefined, parameters: PieceParameters): Opening =>
  openingOf(mesh === undefined ? Number.POSITIVE_INFINITY : mesh / parameters.width, parameters);

/** Mass that a mesh catches in a month, kg: C = G P(a/ω). */
export function caughtMass(pieces: Pieces, held: Opening): number {
  return pieces.mass * longerShare(pieces, held);
}

/**
 * Pieces a month that pass the mesh end on and then lie across a bore, longer than it is wide: N = G (P(b) − P(a/ω))/W(ℓ),
 * ℓ = min(max(b, s), a/ω), W the mass of a shell of that length. None where the mesh holds all that is longer than the bore.
 */
export function lodgingPieces(
  pieces: Pieces,
  { bore, held }: { readonly bore: Opening; readonly held: Opening },
  shell: ShellParameters,
): number {
  const between = Math.max(0, longerShare(pieces, bore) - longerShare(pieces, held));
  const length = Math.min(Math.max(bore.length, pieces.size), held.length);
  return (pieces.mass * between * gramsPerKg) / wetMassG(length / metresPerMm, shell);
}
