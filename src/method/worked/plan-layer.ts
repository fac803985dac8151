import type { Layer } from "../../model/mussels/layer.js";
import type { Plan } from "../../model/structures/component.js";
import type { LakeContext } from "../../model/structures/context.js";
import type { Structure } from "../../model/structures/kinds.js";
import { courseOf } from "../../model/structures/plans/course.js";
import { type Course, isCleaned, layerIn, thicknessIn } from "../../model/structures/plans/course-months.js";
import {
  densityUnder,
  type SurfacePart,
  settlersLetOn,
  untouchedCourse,
} from "../../model/structures/plans/untouched.js";
import { componentsOf } from "../../model/structures/structure.js";

/** A part at the end of a month under the plan that its costs follow, with what grew there since it was bare. */
export interface PlannedLayer {
  readonly layer: Layer;
  readonly part: SurfacePart;
  /** Month since establishment, and the first in which the surface was not yet bare again. */
  readonly month: number;
  readonly start: number;
  /** Density over capacity times suitability by month since establishment, as the plan lets settlers on. */
  readonly density: readonly number[];
}

/**
 * The layer of a part in a month of the year under a plan, once the infestation is mature: in the year, of those that
 * repeat, in which it is thickest then. @param months of the year, of which the one with the thickest layer is taken
 */
export function layerUnderPlan(
  structure: Structure,
  name: string,
  { plan, context, months }: { plan: Plan; context: LakeContext; months: readonly number[] },
): PlannedLayer | undefined {
  const component = componentsOf(structure, context).find((each) => each.name === name);
  if (!component) return undefined;
  const part = { component, context, surface: context.growing(component.surface) };
  const factor = settlersLetOn(plan, context);
  const course = courseOf(plan, untouchedCourse(factor, part), part);
  const years = course.months / 12;
  const from = (years - Math.max(1, Math.min(course.cycle, years))) * 12;
  const month = thickestMonth(course, from, months);
  return {
    layer: layerIn(course, month),
    part,
    month,
    start: startBefore(month, course),
    density: densityUnder(factor, context),
  };
}

function thickestMonth(course: Course, from: number, months: readonly number[]): number {
  let best = from + (months[0] ?? 0);
  for (let month = from; month < course.months; month++) {
    if (!months.includes(month % 12)) continue;
    if (thicknessIn(course, month) > thicknessIn(course, best)) best = month;
  }
  return best;
}

/** The month after the last cleaning before this one; that of establishment where there was none. */
function startBefore(month: number, course: Course): number {
  for (let earlier = month - 1; earlier >= 0; earlier--) if (isCleaned(course, earlier)) return earlier + 1;
  return 0;
}
