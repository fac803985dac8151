import { bareSurface, type Layer } from "../../../../src/model/mussels/layer.js";
import type { LakeContext } from "../../../../src/model/structures/context.js";
import type { Cooler, Strainer } from "../../../../src/model/structures/raw-water/fittings.js";
import {
  arrivalsOf,
  type Loading,
  loadingOf,
  loadingParameters,
} from "../../../../src/model/structures/raw-water/loading.js";
import { shedPieces } from "../../../../src/model/structures/raw-water/pieces.js";
import type { SmallLine } from "../../../../src/model/structures/small-line.js";

/** A layer of which pieces break off that block invented fittings. */
export const fouled: Layer = {
  ...bareSurface,
  number: 5000,
  lengthMm: 18,
  cover: 1.6,
  mass: 6,
  thickness: 0.012,
  shed: 0.4,
};

export const airCoolers: Cooler = { name: "air coolers", count: 4, tubes: 100, bore: 0.012, passes: 2 };

export const strainerOf = (type: Strainer["type"]): Strainer => ({ mesh: 0.012, screenArea: 0.3, type });

/** What the pieces of one line's wall, of so many square metres under that layer, do to its fittings. */
export function loadOf(line: SmallLine, wall: number, context: LakeContext): Loading {
  const parameters = loadingParameters(context);
  const pieces = shedPieces(fouled, wall, parameters.pieces);
  return loadingOf(line, parameters)(arrivalsOf(line, parameters, context.growth)(pieces));
}
