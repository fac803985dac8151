import type { StudyRun } from "../study/compute.js";
import { type ReportContext, requestedOption } from "./context.js";
import { spreadText } from "./format.js";

/** Chance of being infested by the end of the horizon. */
export const chanceAtEnd = (result: { infestedByYear: readonly number[] }): number =>
  result.infestedByYear.at(-1) ?? 0;

/** Lowest and highest benefit–cost ratio of the requested option over the ranges that were tried. */
export function ratioRange(run: StudyRun): { low: number; high: number } | undefined {
  const ratios = run.ranges
    .flatMap(({ low, high }) => [low, high])
    .flatMap((comparison) => requestedOption({ document: run.document, comparison }).benefitCostRatio ?? []);
  return ratios.length === 0 ? undefined : { low: Math.min(...ratios), high: Math.max(...ratios) };
}

/** Names the option that comes out best, where it is another than that requested. */
export function bestText({ comparison, requested }: ReportContext): string {
  const best = [...comparison.options].sort((a, b) => b.netBenefit.comparedTo(a.netBenefit))[0];
  return best && best !== requested && best.netBenefit.greaterThan(0)
    ? ` Of the options compared, “${best.result.option.name}” comes out best.`
    : "";
}

/** The answer to the board: whether the requested option pays, by how much and how firmly. @param odds what it does to the chance */
export function answerText(context: ReportContext, pays: boolean, odds: string): string {
  const { run, requested, format, infestedSince } = context;
  const { benefitCostRatio, avoidedLoss, addedProgramCost } = requested;
  const { name } = requested.result.option;
  const loss = infestedSince === undefined ? "infestation cost" : "upkeep and losses";
  const added = format.money(avoidedLoss.abs());
  if (benefitCostRatio === undefined) return `${freeText(context, loss)} ${odds}`;
  if (avoidedLoss.lessThan(0)) {
    return `No. On this estimate “${name}” is not worth its cost: it costs ${format.money(addedProgramCost)} and adds ${added} of ${loss}, in present value. ${odds}`;
  }
  const symbol = format.money(1);
  const each = `each ${symbol} spent${pays ? ` on “${name}”` : ""} is expected to avoid ${unitMoney(benefitCostRatio, symbol)} of ${loss}${uncertaintyText(run, pays)}`;
  return pays
    ? `Yes, on this estimate: ${each}. ${odds}`
    : `No. On this estimate “${name}” is not worth its cost: ${each}. ${odds}`;
}

/** For an option that costs no more than doing nothing: what it avoids, or adds. */
function freeText({ requested, format }: ReportContext, loss: string): string {
  const { avoidedLoss, addedProgramCost, netBenefit, result } = requested;
  const { name } = result.option;
  const size = format.money(avoidedLoss.abs());
  if (avoidedLoss.greaterThanOrEqualTo(0)) {
    return `Yes, on this estimate: “${name}” costs no more than doing nothing, and avoids ${size} of ${loss} in present value.`;
  }
  const saved = format.money(addedProgramCost.abs());
  return netBenefit.greaterThan(0)
    ? `Yes, on this estimate: “${name}” saves ${saved} of cost and adds ${size} of ${loss}, in present value.`
    : `No. On this estimate “${name}” adds ${size} of ${loss} and saves only ${saved}, in present value.`;
}

/** Says so where the answer does not hold over the ranges that were tried. */
function uncertaintyText(run: StudyRun, pays: boolean): string {
  const spread = ratioRange(run);
  const flips = spread !== undefined && (pays ? spread.low < 1 : spread.high > 1);
  return flips ? `, but the answer turns within the ranges of the assumptions (${spreadText(spread)})` : "";
}

/** What one unit of money brings, to its hundredth. @param symbol one unit as printed */
export function unitMoney(perUnit: number, symbol: string): string {
  const sign = symbol.replace("1", "");
  return perUnit > 0 && perUnit < 0.01 ? `less than ${sign}0.01` : `${sign}${perUnit.toFixed(2)}`;
}
