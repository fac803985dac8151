import type { ProgramOption } from "../model/inputs.js";
import { type BalancePicture, balancePicture } from "./balance-picture.js";
import { checkRows } from "./check-rows.js";
import type { ReportContext } from "./context.js";
import { factorText, percent, ratio, ratioNote } from "./format.js";
import { incrementText } from "./increments-view.js";
import { infestedBoard } from "./infested-board.js";
import { onlyFollows, scheduleNameOf } from "./option-kind.js";
import { scheduleBoard } from "./schedule-board.js";
import { answerText, bestText, chanceAtEnd, ratioRange } from "./weighing.js";

export interface BoardView {
  readonly question: string;
  readonly answer: string;
  readonly pays: boolean;
  /** Absent where there is nothing to weigh. */
  readonly balance: BalancePicture | undefined;
  readonly figures: readonly { readonly label: string; readonly value: string; readonly note: string }[];
  readonly asked: string;
  /** What the option requested adds to the program in force; absent where the study names none. */
  readonly increment?: string | undefined;
  readonly changes: readonly string[];
  readonly failedChecks: readonly string[];
}

/** Page 1: the question, the answer, five figures, what is asked and what would change it. */
export function boardView(context: ReportContext): BoardView {
  const failedChecks = checkRows(context.run)
    .filter((check) => !check.passed)
    .map(({ what, found, allowed, remedy }) =>
      [`${what}: ${found}; expected ${allowed}.`, remedy].filter(Boolean).join(" "),
    );
  const { infestedSince } = context;
  const board =
    infestedSince === undefined ? preventionBoard(context) : infestedBoard(context, infestedSince);
  return { ...board, increment: incrementText(context), failedChecks };
}

function preventionBoard(context: ReportContext): Omit<BoardView, "failedChecks"> {
  if (onlyFollows(context.requested.result)) return scheduleBoard(context);
  const pays = context.requested.netBenefit.greaterThan(0);
  return {
    question: question(context),
    answer: answerText(context, pays, odds(context)),
    pays,
    balance: balancePicture(context),
    figures: figures(context),
    asked: asked(context, pays),
    changes: changes(context),
  };
}

function question({ requested, run, horizon }: ReportContext): string {
  const name = requested.result.option.name.toLowerCase();
  const followed = scheduleNameOf(requested.result);
  const then = followed === undefined ? "" : `, and following “${followed}” if they come in,`;
  return `Does keeping mussels out of ${run.document.lake.name} by “${name}”${then} cost less than letting them in, over ${horizon} years?`;
}

function odds(context: ReportContext): string {
  const { comparison, requested, horizon } = context;
  return `The chance of infestation within ${horizon} years is ${percent(chanceAtEnd(comparison.baseline))} without it and ${percent(chanceAtEnd(requested.result))} with it.${bestText(context)}`;
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
      note: `${revenueText(requested.result.option)}while the lake stays clean${thenText(context)}`,
    },
    {
      label: "Infestation without it, expected per year",
      value: format.money(baseline.equivalentYearly.infestation),
      note: `weighed by its chance, spread evenly over ${horizon} years`,
    },
    {
      label: `Chance of infestation in ${horizon} years`,
      value: `${percent(chanceAtEnd(baseline))} → ${percent(chanceAtEnd(requested.result))}`,
      note: `${percent(baseline.hazard)} a year without, ${percent(requested.result.hazard)} with the program`,
    },
    {
      label: "Benefit–cost ratio",
      value: requested.benefitCostRatio === undefined ? "no added cost" : ratio(requested.benefitCostRatio),
      note: spread ? ratioNote(spread) : "",
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

function revenueText({ fees, otherRevenue = [] }: ProgramOption): string {
  const kinds = [...(fees.length > 0 ? ["fees"] : []), ...(otherRevenue.length > 0 ? ["other revenue"] : [])];
  return kinds.length === 0 ? "" : `net of ${kinds.join(" and ")}, `;
}

/** What comes after the program where the option follows a schedule as well. */
function thenText({ requested, format }: ReportContext): string {
  const { option, schedulePerYear } = requested.result;
  return option.schedule === undefined
    ? ""
    : `; then ${format.money(schedulePerYear)} for following its schedule`;
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
