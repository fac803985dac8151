import type { StudyRun } from "../../study/prepare/compute.js";
import { type ReportContext, requestedOption } from "../document/context.js";
import { hasRatio, pays, ratioWords, signOf } from "../words/balance-signs.js";
import { capitalised, ratioNote, spreadText } from "../words/format.js";
import { plainAnswer } from "./answer-words.js";

/** Chance of being infested by the end of the horizon. */
export const chanceAtEnd = (result: { infestedByYear: readonly number[] }): number =>
  result.infestedByYear.at(-1) ?? 0;

/** Lowest and highest benefit–cost ratio of the requested option over the ranges that were tried. */
export function ratioRange(run: StudyRun): { low: number; high: number } | undefined {
  const ratios = run
    .ranges()
    .flatMap(({ low, high }) => [low, high])
    .flatMap((comparison) => requestedOption({ document: run.document, comparison }).benefitCostRatio ?? []);
  return ratios.length === 0 ? undefined : { low: Math.min(...ratios), high: Math.max(...ratios) };
}

/** The ratio of the answer, and beside it how far it goes: by the averages that of central values, else the ranges tried. */
export function ratioFigure({ run, requested, weighed, headline }: ReportContext) {
  const balance = weighed(requested);
  const tried = () => {
    const spread = ratioRange(run);
    return spread && hasRatio(requested) ? ratioNote(spread) : "";
  };
  return {
    label: "Benefit–cost ratio",
    value: ratioWords(balance),
    note: headline ? `${ratioWords(requested)} at central values` : tried(),
  };
}

/** Names the option that comes out best, where it is another than that requested. */
export function bestText({ comparison, requested, weighed }: ReportContext): string[] {
  const [best] = comparison.options
    .map(weighed)
    .sort((one, other) => other.netBenefit.comparedTo(one.netBenefit));
  return best && best.result !== requested.result && pays(best)
    ? [`Of the options compared, “${best.result.option.name}” comes out best.`]
    : [];
}

/** The answer to the board: whether the requested option pays, by how much and how firmly. @param likelihood a sentence by the odds */
export function answerText(context: ReportContext, likelihood: string | undefined): string {
  return [balanceText(context), likelihood].filter(Boolean).join(" ");
}

function balanceText(context: ReportContext): string {
  const { run, format, infestedSince, headline } = context;
  const requested = context.weighed(context.requested);
  const { name } = requested.result.option;
  const loss = infestedSince === undefined ? "damage" : "upkeep and losses";
  const hasPrintedRatio = hasRatio(requested) && signOf(requested.avoidedLoss) > 0;
  if (!hasPrintedRatio) return plainAnswer(context, loss);
  const isWorth = pays(requested);
  const symbol = format.money(1);
  const estimate = headline ? "on average" : "on our best estimate";
  const brings = `each ${symbol} spent${isWorth ? ` on “${name}”` : ""} avoids ${unitMoney(requested.benefitCostRatio, symbol)} of ${loss}`;
  const open = headline ? "" : uncertaintyText(run, isWorth);
  return isWorth
    ? `Yes. ${capitalised(estimate)} ${brings}${open}.`
    : `No. “${name}” costs more than it saves ${estimate}${open}: ${brings}.`;
}

/** Says so where the answer does not hold over the ranges that were tried. */
function uncertaintyText(run: StudyRun, isWorth: boolean): string {
  const spread = ratioRange(run);
  const flips = spread !== undefined && (isWorth ? spread.low < 1 : spread.high > 1);
  return flips ? `, though some plausible assumptions reverse this (ratio ${spreadText(spread)})` : "";
}

/** What one unit of money brings, to its hundredth. @param symbol one unit as printed */
export function unitMoney(perUnit: number, symbol: string): string {
  const sign = symbol.replace("1", "");
  if (perUnit > 0 && perUnit < 0.01) return `less than ${sign}0.01`;
  return `${perUnit < 0 ? "−" : ""}${sign}${Math.abs(perUnit).toFixed(2)}`;
}
