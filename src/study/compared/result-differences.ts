import type { Comparison } from "../../model/compare.js";
import type { OptionResult } from "../../model/option.js";
import type { OptionBalance } from "../../model/option-balance.js";
import { presentValueOf } from "../../model/present-value.js";
import type { FigureName } from "./figures.js";

export interface ResultDifference {
  readonly of: "option" | "structure";
  readonly id: string;
  readonly name: string;
  readonly figure: FigureName;
  /** Absent if that study has no such option, structure or figure. */
  readonly left: number | undefined;
  readonly right: number | undefined;
  /** Right minus left; absent if either is. */
  readonly difference: number | undefined;
}

interface Figure {
  readonly of: ResultDifference["of"];
  readonly id: string;
  readonly name: string;
  readonly figure: FigureName;
  readonly value: number | undefined;
}

/**
 * Figures of the board's page for each option, and each structure's expected cost without a program, side by side:
 * those of the left comparison in order, then those only in the right one. Amounts are compared unadjusted.
 */
export function resultDifferences(left: Comparison, right: Comparison): ResultDifference[] {
  const [before, after] = [figuresOf(left), figuresOf(right)];
  const keys = new Set([...before.keys(), ...after.keys()]);
  return [...keys].flatMap((key) => {
    const [one, other] = [before.get(key), after.get(key)];
    const known = one ?? other;
    if (!known) return [];
    const [from, to] = [one?.value, other?.value];
    const difference = from === undefined || to === undefined ? undefined : to - from;
    const { of, id, name, figure } = known;
    return [{ of, id, name, figure, left: from, right: to, difference }];
  });
}

function figuresOf(comparison: Comparison): Map<string, Figure> {
  const { baseline, options, structures } = comparison;
  const all = [
    ...optionFigures(baseline),
    ...options.flatMap((balance) => [...optionFigures(balance.result), ...balanceFigures(balance)]),
    ...structures.map(({ structure }) => structureFigure(structure, comparison)),
  ];
  return new Map(all.map((each) => [`${each.of}/${each.id}/${each.figure}`, each]));
}

function optionFigures(result: OptionResult): Figure[] {
  const { id, name } = result.option;
  const of = (figure: FigureName, value: number | undefined): Figure => ({
    of: "option",
    id,
    name,
    figure,
    value,
  });
  return [
    of("programPerYear", result.programPerYear.toNumber()),
    of("infestation", result.presentValue.infestation.toNumber()),
    of("infestationPerYear", result.equivalentYearly.infestation.toNumber()),
    of("chanceAtEnd", result.infestedByYear.at(-1)),
    of("hazard", result.hazard),
  ];
}

function balanceFigures(balance: OptionBalance): Figure[] {
  const { id, name } = balance.result.option;
  const of = (figure: FigureName, value: number | undefined): Figure => ({
    of: "option",
    id,
    name,
    figure,
    value,
  });
  return [
    of("addedProgramCost", balance.addedProgramCost.toNumber()),
    of("netBenefit", balance.netBenefit.toNumber()),
    of("benefitCostRatio", balance.benefitCostRatio),
    of("breakEvenHazard", balance.breakEven.hazard),
  ];
}

function structureFigure(
  { id, name }: { readonly id: string; readonly name: string },
  { baseline, infestation }: Comparison,
): Figure {
  const value = presentValueOf(
    baseline.schedule.infestation.ofStructure(id),
    baseline.weights,
    infestation.ofStructure(id),
  ).toNumber();
  return { of: "structure", id, name, figure: "structureCost", value };
}
