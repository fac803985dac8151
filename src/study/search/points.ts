import { at } from "../../lists.js";
import { totalOf } from "../../model/money/line.js";
import { programLines } from "../../model/program/cost.js";
import type { Taken } from "../../model/search/choices.js";
import { type Evaluated, type Evaluator, evaluator, type YearShare } from "../../model/search/evaluate.js";
import type { LakeTerms } from "../../model/search/lake-terms.js";
import { deterredShare, metShare, variantOf } from "../../model/search/variant.js";
import { hoursShare, isByHours, type SearchPlan, variantAt } from "./plan.js";
import type { OpenCell, SearchPoint } from "./result.js";

/** A program of the plan: its set of measures and what it has open. */
export interface Placed {
  readonly set: number;
  readonly taken: Taken;
}

/** The plan with what its lakes say. */
export interface Searching {
  readonly plan: SearchPlan;
  readonly lakes: readonly LakeTerms[];
  readonly evaluate: Evaluator;
  /** A year of a program in full at the prices entered. */
  readonly costPerYear: (placed: Placed) => number;
  /** The same within a cent, for many programs. */
  readonly quickCost: (placed: Placed) => number;
  readonly of: (placed: Placed, years?: readonly YearShare[]) => Evaluated;
  readonly point: (placed: Placed) => SearchPoint;
}

export function searching(plan: SearchPlan, lakes: readonly LakeTerms[]): Searching {
  const evaluate = evaluator(lakes);
  const costPerYear = ({ set, taken }: Placed) =>
    totalOf(
      programLines(variantOf(plan.base, variantAt(plan, set, taken)), plan.prepared.input.money),
    ).toNumber();
  const of: Searching["of"] = ({ set, taken }, years = plan.ownYears) => {
    const { coverage } = variantAt(plan, set, taken);
    return evaluate.of({ set, coverage, hours: hoursShare(plan, taken), years });
  };
  return {
    ...{ plan, lakes, evaluate, costPerYear, of, quickCost: quickCosts(plan) },
    point: (placed) => pointOf(plan, placed, of(placed), costPerYear(placed)),
  };
}

/** A program's cost is linear in its hours and in the share of those who pay. */
function quickCosts(plan: SearchPlan): Searching["quickCost"] {
  const { money } = plan.prepared.input;
  const own = plan.base.steps?.coverage ?? 0;
  const sets = plan.sets.map((_, set) => {
    const variant = variantAt(plan, set, { hours: 0, met: 0 });
    const [none, hours, fees] = [
      { hours: 0, of: 0 },
      { hours: 1, of: 0 },
      { hours: 0, of: 1 },
    ].map(({ hours, of }) =>
      totalOf(programLines(variantOf(plan.base, { ...variant, hours, coverage: { of } }), money)).toNumber(),
    ) as [number, number, number];
    return { none, hours: hours - none, fees: fees - none };
  });
  return ({ set, taken }) => {
    const { none, hours, fees } = at(sets, set);
    const { coverage } = variantAt(plan, set, taken);
    return none + hoursShare(plan, taken) * hours + deterredShare(metShare(coverage, own), own) * fees;
  };
}

export const placedId = ({ set, taken }: Placed): string => `${set}.${taken.levels.join("-")}`;

function pointOf(plan: SearchPlan, placed: Placed, evaluated: Evaluated, costPerYear: number): SearchPoint {
  const { set, taken } = placed;
  const { coverage, hours, measures } = variantAt(plan, set, taken);
  const own = plan.base.steps?.coverage ?? 0;
  const met = metShare(coverage, own);
  const staff = plan.base.staff.filter(({ group = "wages" }) => group === "wages");
  const { chance, loss, program, cost } = evaluated;
  return {
    id: placedId(placed),
    measures,
    open: isByHours(plan) ? openCells(plan, placed) : undefined,
    months: isByHours(plan) ? undefined : openMonths(plan, placed),
    hoursShare: hours,
    staffHours:
      staff.length === 0
        ? undefined
        : Math.round(staff.reduce((sum, each) => sum + each.hoursPerYear * hours, 0)),
    coverage: met,
    coverageShare: own === 0 ? 0 : met / own,
    ...{ costPerYear, chance, loss, program, cost },
  };
}

function openCells({ sets }: SearchPlan, { set, taken }: Placed): OpenCell[] {
  return at(sets, set).cells.flatMap((cell, index) => {
    if (!("site" in cell)) return [];
    const { open, inspectors } = at(cell.levels, at(taken.levels, index));
    const { site, siteName, dayType, name } = cell;
    return open
      ? [{ ...{ site, siteName, dayType, name }, ...{ from: open.from, to: open.to }, inspectors }]
      : [];
  });
}

function openMonths({ sets }: SearchPlan, { set, taken }: Placed): number[] {
  return at(sets, set).cells.flatMap((cell, index) =>
    "month" in cell && at(taken.levels, index) === 1 ? [cell.month] : [],
  );
}
