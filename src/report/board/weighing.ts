import type { StudyRun } from "../../study/prepare/compute.js";
import { type ReportContext, requestedOption } from "../document/context.js";
import { hasRatio, pays, signOf } from "../words/balance-signs.js";
import { spreadText } from "../words/format.js";
import { plainAnswer } from "./answer-words.js";

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
  return best && best !== requested && pays(best)
    ? ` Of the options compared, “${best.result.option.name}” comes out best.`
    : "";
}

/** The answer to the board: whether the requested option pays, by how much and how firmly. @param odds what it does to the chance */
export function answerText(context: ReportContext, odds: string): string {
  const { run, requested, format, infestedSince } = context;
  const { name } = requested.result.option;
  const loss = infestedSince === undefined ? "infestation cost" : "upkeep and losses";
  const hasPrintedRatio = hasRatio(requested) && signOf(requested.avoidedLoss) > 0;
  if (!hasPrintedRatio) return `${plainAnswer(context, loss)} ${odds}`;
  const isWorth = pays(requested);
  const symbol = format.money(1);
  const each = `each ${symbol} spent${isWorth ? ` on “${name}”` : ""} is expected to avoid ${unitMoney(requested.benefitCostRatio, symbol)} of ${loss}${uncertaintyText(run, isWorth)}`;
  return isWorth
    ? `Yes, on this estimate: ${each}. ${odds}`
    : `No. On this estimate “${name}” is not worth its cost: ${each}. ${odds}`;
}

/** Says so where the answer does not hold over the ranges that were tried. */
function uncertaintyText(run: StudyRun, isWorth: boolean): string {
  const spread = ratioRange(run);
  const flips = spread !== undefined && (isWorth ? spread.low < 1 : spread.high > 1);
  return flips ? `, but the answer turns within the ranges of the assumptions (${spreadText(spread)})` : "";
}

/** What one unit of money brings, to its hundredth. @param symbol one unit as printed */
export function unitMoney(perUnit: number, symbol: string): string {
  const sign = symbol.replace("1", "");
  return perUnit > 0 && perUnit < 0.01 ? `less than ${sign}0.01` : `${sign}${perUnit.toFixed(2)}`;
}
