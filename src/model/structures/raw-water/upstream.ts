import { noElement } from "../../../lists.js";
import { months } from "../../lake/calendar.js";
import type { LakeContext } from "../context.js";
import { layerIn } from "../plans/course-months.js";
import { matureCourse } from "../plans/untouched.js";
import type { UpstreamWall } from "./fittings.js";
import { type PieceParameters, type Pieces, piecesOf, shedPieces } from "./pieces.js";

/**
 * Pieces that a line draws from a wall upstream in each month of a mature year, of which it takes its share of the water,
 * G = Gu Q/Qu. The wall is as if left alone, but no thicker than its own upkeep lets it grow.
 */
export function upstreamPieces(
  wall: UpstreamWall,
  requiredFlow: number,
  parameters: PieceParameters,
  context: LakeContext,
): Pieces[] {
  const drawn = Math.min(1, requiredFlow / wall.flow);
  const thickest = context.assumed("conduit.largest-layer");
  const { course, from } = matureCourse(context.growing(wall.surface), context);
  const sums = months.map(() => ({ mass: 0, sized: 0 }));
  for (let month = from; month < course.months; month++) {
    const layer = layerIn(course, month);
    const kept = Math.min(1, thickest / layer.thickness);
    const thickness = Math.min(layer.thickness, thickest);
    const { shed, lengthMm } = layer;
    const { mass, size } = shedPieces({ shed, lengthMm, thickness }, wall.area * drawn * kept, parameters);
    const sum = sums[month % 12] ?? noElement(sums, month);
    sum.mass += mass;
    sum.sized += mass * size;
  }
  const years = (course.months - from) / months.length;
  return sums.map(({ mass, sized }) => piecesOf(mass / years, mass > 0 ? sized / mass : 0, parameters));
}
