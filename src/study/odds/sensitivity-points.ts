import { at } from "../../lists.js";
import type { DrawnStudy, LakePoint } from "./draws.js";
import type { ComparedOptions } from "./stop-drawing.js";

/** Values of inputs at which the net benefit is asked for, by the stage of the inputs. */
export interface ValueSet {
  readonly lake: ReadonlyMap<string, number>;
  readonly chances: ReadonlyMap<string, number>;
}

/** Works out points, each by itself, and gives for each the net benefits by its sets of chances. */
export type RunPoints = (points: readonly LakePoint[]) => Promise<ReadonlyArray<readonly number[]>>;

/**
 * Net benefits by sets of values, in their order. Sets that share one map of lake values make one point, so that the
 * lake is worked out once for them.
 */
export async function netBenefitsOf(sets: readonly ValueSet[], run: RunPoints): Promise<number[]> {
  const byLake = new Map<ValueSet["lake"], number[]>();
  sets.forEach(({ lake }, index) => {
    const places = byLake.get(lake);
    if (places) places.push(index);
    else byLake.set(lake, [index]);
  });
  const found = await run(
    [...byLake].map(([lake, places]) => ({ lake, chances: places.map((place) => at(sets, place).chances) })),
  );
  const results = Array<number>(sets.length).fill(0);
  [...byLake.values()].forEach((places, point) => {
    places.forEach((place, index) => {
      results[place] = at(at(found, point), index);
    });
  });
  return results;
}

/** Net benefit of the requested option at a point by its sets of chances: expected cost of the baseline less its own. */
export function netBenefitsAt(
  { expected }: Pick<DrawnStudy, "expected">,
  { requested, baseline }: ComparedOptions,
  point: LakePoint,
): number[] {
  return expected(point).map((costs) => at(costs, baseline) - at(costs, requested));
}
