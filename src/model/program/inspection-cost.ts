import type { Money } from "../money/decimal.js";
import { totalOf } from "../money/line.js";
import type { Arrivals } from "./arrivals.js";
import type { ProgramLine } from "./cost.js";

export interface InspectionCost {
  /** Program cost of a year before fees and other revenue. */
  readonly cost: Money;
  /** Boats a year that the station meets in its open hours and looks at; sealed boats are not among them. */
  readonly checked: number;
  /** Absent where no boat is checked. */
  readonly perBoat: number | undefined;
}

/** Cost of one inspection, c = C/N: a year's cost of the whole program, C, over the boats checked in it, N. */
export function inspectionCost(
  lines: readonly ProgramLine[],
  { classes }: Pick<Arrivals, "classes">,
): InspectionCost {
  const cost = totalOf(lines.filter(({ type }) => type !== "revenue"));
  const checked = classes.reduce((sum, each) => sum + each.checked, 0);
  return { cost, checked, perBoat: checked > 0 ? cost.toNumber() / checked : undefined };
}
