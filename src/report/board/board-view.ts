import { counted } from "../../counted.js";
import type { ProgramOption } from "../../model/inputs.js";
import { appendixLetter } from "../../study/format/report-schema.js";
import { checkRows } from "../document/check-rows.js";
import type { ReportContext } from "../document/context.js";
import { pays, signOf } from "../words/balance-signs.js";
import { percent } from "../words/format.js";
import { onlyFollows, scheduleNameOf } from "../words/option-kind.js";
import { askOf } from "./answer-words.js";
import { balancePicture } from "./balance-picture.js";
import type { BoardView } from "./board.js";
import { boardChanges, chanceCell, chanceNote } from "./board-changes.js";
import { bridgeText, headlineChances, intervalText } from "./headline-words.js";
import { incrementText } from "./increments-view.js";
import { infestedBoard } from "./infested-board.js";
import { scheduleBoard } from "./schedule-board.js";
import { answerText, bestText, chanceAtEnd, ratioFigure } from "./weighing.js";

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
  return {
    ...board,
    increment: incrementText(context),
    failedChecks: [...failedChecks, ...alteredText(context)],
  };
}

/** Whoever alters the program's own assumptions is not the author of a study who overrides them with a reason. */
function alteredText({ run }: ReportContext): string[] {
  const [first, ...more] = run.assumptions.alterations;
  if (!first) return [];
  const others = more.length === 0 ? "" : ` and ${more.length} more`;
  return [
    `Assumptions: found altered in the program’s own folder, ${first.what}${others}; expected as the program ships them, or replaced by the study with a reason (appendix ${appendixLetter("assumptions")}).`,
  ];
}

function preventionBoard(context: ReportContext): Omit<BoardView, "failedChecks"> {
  if (onlyFollows(context.requested.result)) return scheduleBoard(context);
  const isWorth = pays(context.weighed(context.requested));
  return {
    question: question(context),
    answer: answerText(context, chances(context)),
    bridge: bridgeText(context),
    pays: isWorth,
    balance: balancePicture(context),
    figures: figures(context),
    asked: asked(context, isWorth),
    changes: boardChanges(context),
  };
}

function question({ requested, run, horizon }: ReportContext): string {
  const name = requested.result.option.name.toLowerCase();
  const followed = scheduleNameOf(requested.result);
  const then = followed === undefined ? "" : `, and following “${followed}” if they come in,`;
  return `Does keeping mussels out of ${run.document.lake.name} by “${name}”${then} cost less than letting them in, over ${counted(horizon, "year")}?`;
}

function chances(context: ReportContext): string {
  const { comparison, requested, horizon, headline } = context;
  if (headline) {
    const { without, withIt } = headlineChances(headline);
    return `The chance that the lake is ever infested within ${counted(horizon, "year")} is ${percent(without.everInfested)} without it and ${percent(withIt.everInfested)} with it.${intervalText(headline, context)}${bestText(context)}`;
  }
  return `The chance of infestation within ${counted(horizon, "year")} is ${percent(chanceAtEnd(comparison.baseline))} without it and ${percent(chanceAtEnd(requested.result))} with it.${bestText(context)}`;
}

function figures(context: ReportContext) {
  const { comparison, requested, format, horizon, headline } = context;
  const { baseline } = comparison;
  const without = headline && headlineChances(headline).without;
  return [
    {
      label: `${signOf(requested.result.programPerYear) < 0 ? "Surplus of the program" : "Program"}, per year`,
      value: format.money(requested.result.programPerYear.abs()),
      note: `${revenueText(requested.result.option)}while the lake stays clean${thenText(context)}`,
    },
    {
      label: "Infestation without it, expected per year",
      value: format.money(without?.infestationPerYear ?? baseline.equivalentYearly.infestation),
      note: `weighed by its chance, spread evenly over ${counted(horizon, "year")}`,
    },
    chanceFigure(context),
    ratioFigure(context),
    {
      label: "Break-even yearly chance",
      value: chanceCell(requested),
      note: `${chanceNote(requested)}${headline ? ", at central values" : ""}`,
    },
  ];
}

function chanceFigure({ run, comparison: { baseline }, requested, horizon, headline }: ReportContext) {
  if (headline) {
    const { without, withIt } = headlineChances(headline);
    return {
      label: `Ever infested within ${counted(horizon, "year")}`,
      value: `${percent(without.everInfested)} → ${percent(withIt.everInfested)}`,
      note: `infested at the end of them: ${percent(without.infestedAtEnd)} → ${percent(withIt.infestedAtEnd)}${drivenText(run)}`,
    };
  }
  return {
    label: `Infested after ${counted(horizon, "year")}`,
    value: `${percent(chanceAtEnd(baseline))} → ${percent(chanceAtEnd(requested.result))}`,
    note: `at central values; founded ${percent(baseline.hazard)} a year without, ${percent(requested.result.hazard)} with the program`,
  };
}

/** What drives the chance where its author chose one of the two ways to it. */
function drivenText({ document }: ReportContext["run"]): string {
  const { drivenBy, ownRate } = document.boats.chance;
  const lakes = ownRate ? "by the yearly chance that its author entered" : "by comparable lakes alone";
  const texts = { both: "", launches: "; by fouled launches alone", lakes: `; ${lakes}` };
  return texts[drivenBy];
}

function revenueText({ fees, otherRevenue = [] }: ProgramOption): string {
  const kinds = [...(fees.length > 0 ? ["fees"] : []), ...(otherRevenue.length > 0 ? ["other revenue"] : [])];
  return kinds.length === 0 ? "" : `net of ${kinds.join(" and ")}, `;
}

/** What comes after the program where the option follows a schedule as well. */
function thenText({ requested, format }: ReportContext): string {
  const { option, schedulePerYear } = requested.result;
  if (option.schedule === undefined) return "";
  const amount = format.money(schedulePerYear.abs());
  return signOf(schedulePerYear) < 0
    ? `; then ${amount} gained by following its schedule`
    : `; then ${amount} for following its schedule`;
}

function asked({ run, requested, format }: ReportContext, isWorth: boolean): string {
  const name = `“${requested.result.option.name}”`;
  const { amount, words } = askOf(requested.result.programPerYear, format.money);
  const { board } = run.document.study;
  const what = amount === undefined ? name : `${amount} for ${name}`;
  const text = isWorth
    ? `The ${board} is asked to approve ${what}, to be reviewed each budget year.`
    : `On these figures the ${board} is not advised to approve ${what} on infrastructure grounds alone. Other grounds are listed under what the estimate leaves out.`;
  return [text, words].filter(Boolean).join(" ");
}
