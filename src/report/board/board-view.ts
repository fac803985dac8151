import { counted } from "../../counted.js";
import type { ProgramOption } from "../../model/inputs.js";
import { appendixLetter } from "../../study/format/report-schema.js";
import type { Confidences } from "../../study/traced/confidence.js";
import { checkRows, isOpen } from "../document/check-rows.js";
import type { ReportContext } from "../document/context.js";
import type { Headline } from "../document/headline.js";
import { pays, signOf } from "../words/balance-signs.js";
import { percent } from "../words/format.js";
import { onlyFollows, scheduleNameOf } from "../words/option-kind.js";
import { accountsTable, reversedText } from "./accounts-table.js";
import { noMoneyText } from "./answer-words.js";
import { askView } from "./ask-view.js";
import { balancePicture } from "./balance-picture.js";
import type { BoardCase, BoardView } from "./board.js";
import { boardChanges, chanceCell, chanceNote, changesBasis } from "./board-changes.js";
import { confidenceText } from "./confidence-words.js";
import { estimateText } from "./estimate-text.js";
import { bridgeText, headlineChances, intervalText, likelihoodText } from "./headline-words.js";
import { incrementText } from "./increments-view.js";
import { infestedBoard } from "./infested-board.js";
import { boardName, motionText, notFundedText } from "./motion.js";
import { rankedSentences, rankedTable } from "./ranked-options.js";
import { scheduleBoard } from "./schedules/schedule-board.js";
import { answerText, bestText, chanceAtEnd, ratioFigure } from "./weighing.js";

/** Page 1: the question, the answer, both accounts, all options, what is asked and what would change the answer. */
export function boardView(context: ReportContext): BoardView {
  const failedChecks = checkRows(context.run)
    .filter(isOpen)
    .map(({ what, found, allowed, remedy }) =>
      [`${what}: ${found}; expected ${allowed}.`, remedy].filter(Boolean).join(" "),
    );
  const told = [...alteredText(context), ...failedChecks];
  const { infestedSince } = context;
  const board =
    infestedSince === undefined ? preventionBoard(context) : infestedBoard(context, infestedSince);
  return {
    ...board,
    ask: askView(context),
    motion: motionText(context),
    notFunded: notFundedText(context),
    increment: incrementText(context),
    failed: failedText(told.length),
    failedChecks: told.length > mostFailed ? [...told.slice(0, mostFailed), moreFailed(told.length)] : told,
  };
}

const mostFailed = 2;
const moreFailed = (all: number) => `${all - mostFailed} more are in appendix ${appendixLetter("checks")}.`;

/** Page 1 names no check, so that its length is that of the answer. */
function failedText(count: number): string {
  if (count === 0) return "";
  return `${counted(count, "check")} did not pass. Before deciding, read “Checks that did not pass”.`;
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

function preventionBoard(context: ReportContext): BoardCase {
  if (onlyFollows(context.requested.result)) return scheduleBoard(context);
  const isWorth = pays(context.weighed(context.requested));
  const { headline } = context;
  return {
    question: question(context),
    answer: answerText(context, headline && likelihoodText(headline, context.confidence)),
    certainty: headline ? oddsText(headline, context) : chanceText(context),
    bridge: bridgeText(context),
    pays: isWorth,
    balance: balancePicture(context),
    figures: headline ? [] : figures(context),
    accounts: accountsTable(context),
    ranked: rankedTable(context),
    findings: findings(context),
    asked: asked(context, isWorth),
    changes: boardChanges(context),
    changesBasis: changesBasis(context),
    estimate: estimateText(context),
  };
}

function question({ requested, run, horizon }: ReportContext): string {
  const { name } = requested.result.option;
  const followed = scheduleNameOf(requested.result);
  const then = followed === undefined ? "" : `, with “${followed}” once mussels are established,`;
  return `Would “${name}” at ${run.document.lake.name}${then} cost less than the mussel damage avoided, over ${counted(horizon, "year")}?`;
}

/** How far the net benefit goes, and the chance that mussels establish with how firm it is. */
function oddsText(headline: Headline, context: ReportContext): string {
  const { confidence, horizon } = context;
  const { without, withIt } = headlineChances(headline);
  const firm = confidence ? ` (${chanceConfidence(confidence)})` : "";
  return `${intervalText(headline, context)} The chance that mussels establish within ${counted(horizon, "year")} is ${percent(without.everInfested)} without it and ${percent(withIt.everInfested)} with it${firm}.${drivenText(context.run)}`;
}

/** A reason that the answer has given already is not given again. */
function chanceConfidence({ pays: answered, chance }: Confidences): string {
  const text = confidenceText(chance);
  return text === confidenceText(answered) ? `${chance.level} confidence as well` : text;
}

/** What drives the chance where its author chose one of the two ways to it. */
function drivenText({ document }: ReportContext["run"]): string {
  const { drivenBy, ownRate } = document.boats.chance;
  const lakes = ownRate ? "the yearly chance that staff entered" : "comparable lakes alone";
  const texts = { both: "", launches: "fouled launches alone", lakes };
  return drivenBy === "both" ? "" : ` It rests on ${texts[drivenBy]}.`;
}

function chanceText({ comparison, requested, horizon }: ReportContext): string {
  return `The chance of infestation within ${counted(horizon, "year")} is ${percent(chanceAtEnd(comparison.baseline))} without it and ${percent(chanceAtEnd(requested.result))} with it.`;
}

const findings = (context: ReportContext): string[] => [
  ...rankedSentences(context),
  ...reversedText(context),
  ...(context.headline ? [] : bestText(context)),
];

/** At central values, where no odds are drawn yet. */
function figures(context: ReportContext) {
  const { comparison, requested, format, horizon } = context;
  const { baseline } = comparison;
  return [
    {
      label: `${signOf(requested.result.programPerYear) < 0 ? "Surplus of the program" : "Program"}, per year`,
      value: format.money(requested.result.programPerYear.abs()),
      note: `${revenueText(requested.result.option)}while the lake stays clean${thenText(context)}`,
    },
    {
      label: "Damage without it, expected per year",
      value: format.money(baseline.equivalentYearly.infestation),
      note: `probability-weighted, annual equivalent over ${counted(horizon, "year")}`,
    },
    {
      label: `Infested after ${counted(horizon, "year")}`,
      value: `${percent(chanceAtEnd(baseline))} → ${percent(chanceAtEnd(requested.result))}`,
      note: `at central values; ${percent(baseline.hazard)} a year without, ${percent(requested.result.hazard)} with the program`,
    },
    ratioFigure(context),
    { label: "Break-even yearly chance", value: chanceCell(requested), note: chanceNote(requested) },
  ];
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
  const text = isWorth
    ? `The ${boardName(run.document.study)} is asked to approve ${name}.`
    : `These figures do not support approving ${name} on infrastructure grounds alone. Other grounds are listed under “What the estimate leaves out”.`;
  return [text, noMoneyText(requested.result.programPerYear, format.money)].filter(Boolean).join(" ");
}
