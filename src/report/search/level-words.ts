import { counted } from "../../counted.js";
import type { LevelSearch, SearchedSchedule } from "../../study/levels/level-result.js";
import { dayText } from "../../study/reading/level-dates.js";
import { type Formatter, listedWithin, percent } from "../words/format.js";

/** What the words on levels are made from. */
export interface LevelContext {
  readonly levels: LevelSearch;
  readonly format: Formatter;
  readonly horizon: number;
  /** Set where the lake is infested already. */
  readonly infestedSince: number | undefined;
}

/** A schedule by its name, or by its depth and dates. */
export function scheduleText({ name, drawdown }: SearchedSchedule, { format }: LevelContext): string {
  if (name !== undefined || !drawdown) return `“${name ?? ""}”`;
  const { lowest, from, days } = drawdown;
  return `${format.quantity(lowest, "elevation")} by ${dayText(from)}, held for ${counted(days, "day")}`;
}

/** The same in a sentence. */
export function scheduleWords(schedule: SearchedSchedule, context: LevelContext): string {
  const { name, drawdown } = schedule;
  const text = scheduleText(schedule, context);
  if (name !== undefined || !drawdown) return text;
  return `a drawdown to ${text} and refilled by ${dayText(drawdown.refilled)},`;
}

/** The schedule that costs least and what it saves, or that none pays. */
export function levelLead(context: LevelContext): string[] {
  const { levels, infestedSince } = context;
  const { best, tried, typed } = levels;
  const when = infestedSince === undefined ? "once the lake is infested" : "from now on";
  const all = counted(tried + typed.length, "other schedule");
  if (tried + typed.length === 0)
    return [`No other levels could be tried. ${leftOutText(context)}`.trim(), ...storageText(context)];
  const found = best ? savingText(best, context) : nearestText(context);
  const answer = best
    ? `Of ${all} of levels, ${scheduleWords(best, context)} costs least ${when}. ${found}`
    : `None pays: of ${all} of levels, none costs less than the levels as operated ${when}. ${found}`;
  return [answer, ...simulatedText(context), ...storageText(context)];
}

/** The same in a sentence or two for the board. */
export function boardLevelText(context: LevelContext): string {
  const { levels, infestedSince, format, horizon } = context;
  const { best, tried, typed } = levels;
  const when = infestedSince === undefined ? "once the lake is infested" : "from now on";
  if (tried + typed.length === 0) return "";
  if (!best)
    return `Levels: none of the other schedules that were tried costs less than the levels as operated ${when}; a drawdown does not pay.`;
  const cautions = "Dam safety, fish and permits come first; see the cautions.";
  return `Levels: of the schedules that were tried, ${scheduleWords(best, context)} costs least ${when}; it saves ${format.money(best.saved)} over ${counted(horizon, "year")} against the levels as operated. ${[...storageText(context), cautions].join(" ")}`;
}

function savingText(best: SearchedSchedule, { format, horizon, infestedSince }: LevelContext): string {
  const weighed = infestedSince === undefined ? ", allowing for the chance of infestation" : "";
  return `${yearText(best, format)} Over ${counted(horizon, "year")} it saves ${format.money(best.saved)} against the levels as operated (present value at central values${weighed}).`;
}

function yearText({ upkeepSaved, following }: SearchedSchedule, format: Formatter): string {
  const upkeep =
    upkeepSaved < 0
      ? `adds ${format.money(-upkeepSaved)} to upkeep and losses`
      : `saves ${format.money(upkeepSaved)} of upkeep and losses`;
  const cost =
    following < 0 ? `brings in ${format.money(-following)}` : `costs ${format.money(following)} to follow`;
  return `In a year of a mature infestation it ${upkeep}, and ${cost}.`;
}

function nearestText(context: LevelContext): string {
  const { byDepth, typed } = context.levels;
  const [first, ...others] = [...typed, ...byDepth];
  if (!first) return "";
  const nearest = others.reduce((one, other) => (other.cost < one.cost ? other : one), first);
  const { format, horizon } = context;
  if (-nearest.saved < 1) return `The nearest, ${scheduleWords(nearest, context)} costs as much.`;
  return `The nearest, ${scheduleWords(nearest, context)} costs ${format.money(-nearest.saved)} more over ${counted(horizon, "year")}. ${yearText(nearest, format)}`;
}

function simulatedText({ levels: { simulated }, format }: LevelContext): string[] {
  if (!simulated) return [];
  const { saved, savesIn } = simulated;
  const mean = saved < 0 ? `it costs ${format.money(-saved)} more` : `it saves ${format.money(saved)}`;
  return [
    `On average over all that is uncertain ${mean}; it saves under ${percent(savesIn)} of the assumption sets.`,
  ];
}

function storageText({ levels }: LevelContext): string[] {
  const lower = [levels.best, ...levels.byDepth].some((each) => (each?.storageGivenUp ?? 0) > 0);
  if (levels.storageIsPriced || !lower) return [];
  return [
    "The study sets no value on stored water, so that what is given up in store counts for nothing: enter the value of stored water before such a schedule is relied on.",
  ];
}

/** What ruled out drawdowns of the grid. */
export function leftOutText({ levels: { leftOut, rules }, format }: LevelContext): string {
  const reasons = [
    [leftOut.refill, `${isOrAre(leftOut.refill)} still drawn down on ${dayText(rules.refilled)}`],
    [leftOut.rise, `would have to be refilled faster than ${format.quantity(rules.rise ?? 0, "levelRate")}`],
    [leftOut["not-below"], `would be below a level that is to be kept (${reasonsOf(rules)})`],
    [leftOut.present, `${isOrAre(leftOut.present)} no other than the levels as operated`],
  ] as const;
  const told = reasons.filter(([count]) => count > 0).map(([count, why]) => `${count} ${why}`);
  return told.length === 0 ? "" : `Left out: ${told.join("; ")}.`;
}

const isOrAre = (count: number) => (count === 1 ? "is" : "are");

const reasonsOf = ({ notBelow }: LevelSearch["rules"]) =>
  listedWithin([...new Set(notBelow.map(({ reason }) => reason))], 3);

/** What is tried and what binds it. */
export function ruleText({ levels: { rules }, format }: LevelContext): string {
  const rate = `${format.quantity(rules.fall, "levelRate")}${rules.fallIsStated ? "" : ", as the levels as operated do"}`;
  const rise =
    rules.rise === undefined
      ? ""
      : `, is refilled no faster than ${format.quantity(rules.rise, "levelRate")}`;
  return `Each falls no faster than ${rate}${rise}, goes no lower than ${format.quantity(rules.minimumPool, "elevation")} and reaches the levels as operated again by ${dayText(rules.refilled)}. Where it is not lower, it follows them.`;
}
