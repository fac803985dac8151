import { counted } from "../../../counted.js";
import type { Money } from "../../../model/money/decimal.js";
import type { TracedSchedule } from "../../../study/levels/traced-schedule.js";
import { type ReportContext, tracedOf } from "../../document/context.js";
import { pays, signOf } from "../../words/balance-signs.js";
import { factorText, percent } from "../../words/format.js";
import { accountsTable } from "../accounts-table.js";
import { balancePicture } from "../balance-picture.js";
import type { BoardCase, BoardView } from "../board.js";
import { bridgeText, headlineChances, intervalText, likelihoodText } from "../headline-words.js";
import { boardName } from "../motion.js";
import { rankedSentences, rankedTable } from "../ranked-options.js";
import { answerText, bestText, chanceAtEnd, ratioFigure } from "../weighing.js";

type Figures = BoardView["figures"];

/** Page 1 for an option whose only effect is that of other levels. */
export function scheduleBoard(context: ReportContext): BoardCase {
  const isWorth = pays(context.weighed(context.requested));
  return {
    question: scheduleQuestion(context),
    answer: answerText(context, context.headline && likelihoodText(context.headline, context.confidence)),
    certainty: scheduleOdds(context),
    bridge: bridgeText(context),
    pays: isWorth,
    balance: balancePicture(context),
    figures: scheduleFigures(context),
    accounts: accountsTable(context),
    ranked: rankedTable(context),
    findings: [...rankedSentences(context), ...(context.headline ? [] : bestText(context))],
    asked: scheduleAsked(context, isWorth),
    changes: scheduleChanges(context),
  };
}

function scheduleQuestion({ run, requested, horizon, infestedSince }: ReportContext): string {
  const { name } = requested.result.schedule;
  const lake = run.document.lake.name;
  return infestedSince === undefined
    ? `Once mussels are established in ${lake}, would following “${name}” save more than it costs, over ${counted(horizon, "year")}?`
    : `${lake} has been infested since ${infestedSince}: would following “${name}” save more of its upkeep than it costs, over ${counted(horizon, "year")}?`;
}

/** What a schedule leaves of the chance of infestation: all of it. */
function scheduleOdds(context: ReportContext): string {
  const { comparison, horizon, infestedSince, headline } = context;
  if (headline) {
    const { without } = headlineChances(headline);
    return `It is followed only once mussels are established, and leaves the chance that they are within ${counted(horizon, "year")} at ${percent(without.everInfested)}. ${intervalText(headline, context)}`;
  }
  return infestedSince === undefined
    ? `It is followed only once mussels are established, and leaves the chance of infestation within ${counted(horizon, "year")} at ${percent(chanceAtEnd(comparison.baseline))}.`
    : "It is followed from now on.";
}

/** The schedule of the requested option. */
function followed({ traced, requested }: ReportContext): TracedSchedule {
  const found = traced.schedules.find(({ schedule }) => schedule === requested.result.schedule);
  if (!found) throw new Error(`no traced schedule ${requested.result.schedule.name}`);
  return found;
}

function scheduleFigures(context: ReportContext): Figures {
  const { comparison, requested, format, horizon, headline, infestedSince } = context;
  const { baseline } = comparison;
  const without = headline && headlineChances(headline).without;
  const cost = requested.result.schedulePerYear;
  const saved = followed(context).matureSaving;
  return [
    {
      label: cost.isNegative() ? "Gained by following it, per year" : "Following it, per year",
      value: format.money(cost.abs()),
      note:
        infestedSince === undefined ? "from the year of infestation on" : "against the levels as operated",
    },
    {
      label: saved < 0 ? "Added upkeep, per year" : "Upkeep saved, per year",
      value: format.money(Math.abs(saved)),
      note: "and losses, in a mature infestation, before what following it costs",
    },
    {
      label:
        infestedSince === undefined
          ? "Damage without it, expected per year"
          : "Upkeep and losses without it, per year",
      value: format.money(without?.infestationPerYear ?? baseline.equivalentYearly.infestation),
      note: `${infestedSince === undefined ? "probability-weighted, " : ""}annual equivalent over ${counted(horizon, "year")}`,
    },
    chanceFigure(context),
    ratioFigure(context),
  ];
}

function chanceFigure({ comparison, requested, format, horizon, infestedSince, headline }: ReportContext) {
  if (infestedSince !== undefined) {
    return {
      label: "Net benefit",
      value: format.money(requested.netBenefit),
      note: `present value over ${counted(horizon, "year")}`,
    };
  }
  if (headline) {
    const { without } = headlineChances(headline);
    return {
      label: `Mussels establish within ${counted(horizon, "year")}`,
      value: percent(without.everInfested),
      note: `with it and without it; infested at the end of them: ${percent(without.infestedAtEnd)}`,
    };
  }
  return {
    label: `Infested after ${counted(horizon, "year")}`,
    value: percent(chanceAtEnd(comparison.baseline)),
    note: `at central values; ${percent(comparison.baseline.hazard)} a year, with it and without it`,
  };
}

function scheduleAsked(context: ReportContext, isWorth: boolean): string {
  const { run, requested, format, infestedSince } = context;
  const { schedule, schedulePerYear } = requested.result;
  const board = boardName(run.document.study);
  const size = format.money(schedulePerYear.abs());
  const amount = {
    [-1]: `bringing in about ${size} a year`,
    0: "at no cost",
    1: `at about ${size} a year`,
  }[signOf(schedulePerYear)];
  const when = infestedSince === undefined ? "once mussels are established" : "from now on";
  return isWorth
    ? `The ${board} is asked to plan that “${schedule.name}” be followed ${when}, ${amount}, as far as the dam's operating rules and the permits named inside allow.`
    : `These figures do not support planning on “${schedule.name}”, ${amount}, on infrastructure grounds alone. Other grounds are listed under “What the estimate leaves out”.`;
}

/** Where the answer turns: the saving, the cost of following it, and the chance. */
function scheduleChanges(context: ReportContext): string[] {
  const { addedProgramCost, avoidedLoss, result } = context.requested;
  const loss = lossText(avoidedLoss.toNumber(), addedProgramCost.toNumber());
  const turn = tracedOf(context, result.option.id).scheduleTurn;
  return turn ? [loss, carriedText(turn.carried, context), chanceText(context, turn.otherCost)] : [loss];
}

/** @param avoided infestation cost avoided, negative where it is added @param added cost of the option, negative where it gains */
function lossText(avoided: number, added: number): string {
  if (avoided <= 0 && added >= 0)
    return "It saves no upkeep, so no cost of an infestation would make it pay.";
  if (avoided >= 0 && added <= 0) return "It costs no more than the levels as operated, whatever it saves.";
  return `The answer changes if it ${avoided < 0 ? "adds" : "saves"} ${factorText(added / avoided)} the estimate.`;
}

/** @param carried yearly cost of following the schedule at which it neither pays nor loses */
function carriedText(carried: Money, { requested, format }: ReportContext): string {
  const cost = requested.result.schedulePerYear;
  const size = format.money(carried.abs());
  const estimate = cost.isNegative()
    ? `the estimate is a gain of ${format.money(cost.abs())}.`
    : `the estimate is ${format.money(cost)}.`;
  if (carried.greaterThan(0)) return `The answer changes if following it costs ${size} a year; ${estimate}`;
  return cost.isNegative()
    ? `The answer changes if following it brings in no more than ${size} a year; ${estimate}`
    : "What it saves would cover no yearly cost above zero.";
}

function chanceText({ comparison, infestedSince }: ReportContext, otherCost: Money): string {
  if (infestedSince !== undefined) {
    return "The price of cleaning and the limits of each part decide what it saves; the plans of each part are in the appendix.";
  }
  return otherCost.abs().lessThan(1)
    ? "The chance of infestation changes how much is at stake, not whether it pays."
    : `It has other costs than the schedule's; the chance of infestation, ${percent(comparison.baseline.hazard)} a year, decides how they weigh.`;
}
