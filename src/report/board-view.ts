import type { OptionBalance } from "../model/compare.js";
import type { StudyRun } from "../study/compute.js";
import { type BalancePicture, balancePicture } from "./balance-picture.js";
import { type ReportContext, requestedOption } from "./context.js";
import { percent, ratio } from "./format.js";
import { infestedBoard } from "./infested-board.js";

export interface BoardView {
  readonly question: string;
  readonly answer: string;
  readonly pays: boolean;
  /** Absent where there is nothing to weigh. */
  readonly balance: BalancePicture | undefined;
  readonly figures: readonly { readonly label: string; readonly value: string; readonly note: string }[];
  readonly asked: string;
  readonly changes: readonly string[];
  readonly failedChecks: readonly string[];
}

/** Page 1: the question, the answer, five figures, what is asked and what would change it. */
export function boardView(context: ReportContext): BoardView {
  const failedChecks = context.comparison.checks
    .filter((check) => !check.passed)
    .map((check) => `${check.what}: ${check.found}; expected ${check.allowed}.`);
  const { infestedSince } = context;
  const board =
    infestedSince === undefined ? preventionBoard(context) : infestedBoard(context, infestedSince);
  return { ...board, failedChecks };
}

function preventionBoard(context: ReportContext): Omit<BoardView, "failedChecks"> {
  const { requested, run, horizon } = context;
  const pays = requested.netBenefit.greaterThan(0);
  const name = requested.result.option.name.toLowerCase();
  return {
    question: `Does keeping mussels out of ${run.document.lake.name} by “${name}” cost less than letting them in, over ${horizon} years?`,
    answer: answer(context, pays),
    pays,
    balance: balancePicture(context),
    figures: figures(context),
    asked: asked(context, pays),
    changes: changes(context),
  };
}

function answer(context: ReportContext, pays: boolean): string {
  const { run, comparison, requested, format, horizon } = context;
  const symbol = format.money(1);
  const name = requested.result.option.name;
  const perUnit = requested.benefitCostRatio;
  const odds = `The chance of infestation within ${horizon} years is ${percent(chance(comparison.baseline))} without it and ${percent(chance(requested.result))} with it.`;
  if (perUnit === undefined) return `${name} costs no more than doing nothing, and avoids losses. ${odds}`;
  const best = bestOption(context);
  const other =
    best && best !== requested && best.netBenefit.greaterThan(0)
      ? ` Of the options compared, “${best.result.option.name}” comes out best.`
      : "";
  const caveat = uncertaintyText(run, pays);
  return pays
    ? `Yes, on this estimate: each ${symbol} spent on “${name}” is expected to avoid ${unitMoney(perUnit, symbol)} of infestation cost${caveat}. ${odds}${other}`
    : `No. On this estimate “${name}” is not worth its cost: each ${symbol} spent is expected to avoid ${unitMoney(perUnit, symbol)} of infestation cost${caveat}. ${odds}${other}`;
}

function spreadText({ low, high }: { low: number; high: number }): string {
  const [from, to] = [ratio(low), ratio(high)];
  return from === to ? from : `${from} to ${to}`;
}

/** Says so where the answer does not hold over the ranges that were tried. */
function uncertaintyText(run: StudyRun, pays: boolean): string {
  const spread = ratioRange(run);
  const flips = spread !== undefined && (pays ? spread.low < 1 : spread.high > 1);
  return flips ? `, but the answer turns within the ranges of the assumptions (${spreadText(spread)})` : "";
}

function unitMoney(perUnit: number, symbol: string): string {
  const sign = symbol.replace("1", "");
  return perUnit > 0 && perUnit < 0.01 ? `less than ${sign}0.01` : `${sign}${perUnit.toFixed(2)}`;
}

const chance = (result: { infestedByYear: readonly number[] }): number => result.infestedByYear.at(-1) ?? 0;

function bestOption({ comparison }: ReportContext): OptionBalance | undefined {
  return [...comparison.options].sort((a, b) => b.netBenefit.comparedTo(a.netBenefit))[0];
}

function figures(context: ReportContext) {
  const { comparison, requested, format, horizon, run } = context;
  const { baseline } = comparison;
  const breakEven = requested.breakEven.hazard;
  const spread = ratioRange(run);
  return [
    {
      label: "Program, per year",
      value: format.money(requested.result.programPerYear),
      note: "net of fees, while the lake stays clean",
    },
    {
      label: "Infestation without it, expected per year",
      value: format.money(baseline.equivalentYearly.infestation),
      note: `weighed by its chance, spread evenly over ${horizon} years`,
    },
    {
      label: `Chance of infestation in ${horizon} years`,
      value: `${percent(chance(baseline))} → ${percent(chance(requested.result))}`,
      note: `${percent(baseline.hazard)} a year without, ${percent(requested.result.hazard)} with the program`,
    },
    {
      label: "Benefit–cost ratio",
      value: requested.benefitCostRatio === undefined ? "no added cost" : ratio(requested.benefitCostRatio),
      note: spread ? `${spreadText(spread)} over the ranges shown on the next pages` : "",
    },
    {
      label: "Break-even yearly chance",
      value: breakEven === undefined ? "none" : percent(breakEven),
      note:
        breakEven === undefined
          ? "at no chance of infestation does it pay"
          : "the program pays above this chance without it",
    },
  ];
}

/** Lowest and highest benefit–cost ratio of the requested option over the ranges that were tried. */
export function ratioRange(run: StudyRun): { low: number; high: number } | undefined {
  const ratios = run.ranges
    .flatMap(({ low, high }) => [low, high])
    .flatMap((comparison) => requestedOption({ document: run.document, comparison }).benefitCostRatio ?? []);
  return ratios.length === 0 ? undefined : { low: Math.min(...ratios), high: Math.max(...ratios) };
}

function asked({ run, requested, format }: ReportContext, pays: boolean): string {
  const { name } = requested.result.option;
  const amount = format.money(requested.result.programPerYear);
  const { board } = run.document.study;
  return pays
    ? `The ${board} is asked to approve ${amount} a year for “${name}”, to be reviewed each budget year.`
    : `On these figures the ${board} is not advised to approve ${amount} a year for “${name}” on infrastructure grounds alone. Other grounds are listed under what the estimate leaves out.`;
}

function changes({ requested, comparison, format }: ReportContext): string[] {
  const { breakEven } = requested;
  const yearly = comparison.baseline.hazard;
  const lines = [
    breakEven.hazard === undefined
      ? "No yearly chance of infestation, however high, makes this option pay at its present cost."
      : `The answer turns at a yearly chance of ${percent(breakEven.hazard)} without the program; the estimate is ${percent(yearly)}.`,
    breakEven.lossFactor === undefined
      ? "The option avoids no loss, so no infestation cost would make it pay."
      : `It turns if an infestation costs ${factorText(breakEven.lossFactor)} of what is estimated here.`,
    breakEven.programPerYear === undefined
      ? "No budget above zero is carried by the losses avoided."
      : `It turns if the program costs ${format.money(breakEven.programPerYear)} a year; it costs ${format.money(requested.result.programPerYear)}.`,
  ];
  return lines;
}

function factorText(factor: number): string {
  return factor > 2
    ? `${new Intl.NumberFormat("en-US", { maximumSignificantDigits: 2 }).format(factor)} times`
    : percent(factor);
}
