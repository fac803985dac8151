import { at } from "../../src/lists.js";
import type { Assumed } from "../../src/model/assumed.js";
import { type Comparison, compare } from "../../src/model/compare.js";
import { infestationCost } from "../../src/model/infestation-cost.js";
import type { ProgramOption, StudyInput } from "../../src/model/inputs.js";
import { discountFactors } from "../../src/model/money/interest.js";
import { type CostLine, costLine } from "../../src/model/money/line.js";
import { risesOf } from "../../src/model/money/price-rises.js";
import { type OptionResult, optionResult } from "../../src/model/option.js";
import type { FoundingRates } from "../../src/model/risk/hazard.js";
import { namedWays } from "../../src/model/risk/other-ways.js";
import type { ScheduleResult } from "../../src/model/schedules.js";
import { tableOf } from "../../src/model/structures/plans/year-table.js";
import type { StructureResult } from "../../src/model/structures/structure.js";
import { type Mutable, ofOption } from "./options-changed.js";

/** What the product computes from, and may be changed before it does. */
export interface Basis {
  readonly comparison: Comparison;
  readonly source: Assumed;
  input: StudyInput;
  rates: FoundingRates;
  schedules: Comparison["schedules"];
  /** Whether the lake and its structures are worked out anew. */
  isAnew: boolean;
}

type Change = (basis: Basis, to: number) => void;

/** Every option's results, by the product's own functions. */
export function optionsOf({ input, source, rates, schedules, isAnew }: Basis): OptionResult[] {
  if (isAnew) {
    const { baseline, options } = compare(input, source);
    return [baseline, ...options.map(({ result }) => result)];
  }
  const { money } = input;
  const settings = {
    ...{ schedules, rates },
    factors: discountFactors(money.horizon, money.discountRate, money.timing),
    rises: risesOf(money.escalation ?? [], money.horizon, money),
  };
  return input.options.map((option) => optionResult(option, input, source, settings));
}

/** Years of an infestation before the first year of the study. */
const yearsBefore = ({ comparison: { schedules, input } }: Basis) =>
  Math.max(0, ...schedules[0].structures.map(({ years }) => years.length - input.money.horizon));

/** Fewer years, with the plans chosen for all of them. */
const setHorizon: Change = (basis, to) => {
  const last = yearsBefore(basis) + to;
  basis.input = { ...basis.input, money: { ...basis.input.money, horizon: to } };
  withStructures(basis, ({ years }) => years.slice(0, last));
};

const setMoney =
  (key: "discountRate" | "inflation", isAnew: boolean): Change =>
  (basis, to) => {
    basis.input = { ...basis.input, money: { ...basis.input.money, [key]: to } };
    basis.isAnew = isAnew;
  };

const setRise =
  (group: string): Change =>
  (basis, to) => {
    const { money } = basis.input;
    const escalation = money.escalation?.map((each) => (each.group === group ? { ...each, rate: to } : each));
    basis.input = { ...basis.input, money: { ...money, escalation } };
  };

const setWay =
  (place: number, key: "chance" | "fromYear" | "sourceChance"): Change =>
  (basis, to) => {
    const { input, comparison } = basis;
    const value = key === "fromYear" ? to - input.money.startYear : to;
    const ways = (input.boats.otherWays ?? []).map((way, index) =>
      index === place ? { ...way, [key]: value } : way,
    );
    const entered = namedWays(input.boats.otherWays ?? [], input.money.horizon);
    const changed = namedWays(ways, input.money.horizon);
    const factor = at(comparison.rates.unchecked, 0) / at(entered.unchecked, 0);
    const scaled = (rates: readonly number[]) => rates.map((rate) => rate * factor);
    basis.rates = {
      ...basis.rates,
      unchecked: scaled(changed.unchecked),
      checked: scaled(changed.checked),
    };
  };

const setBoats: Change = (basis, to) => {
  const { foundings } = basis.comparison.baseline.arrivals;
  basis.rates = { ...basis.rates, ofBoats: -Math.log1p(-to) / foundings };
};

const general: ReadonlyArray<readonly [RegExp, Change]> = [
  [/^Discount rate/, setMoney("discountRate", true)],
  [
    /^Share of a year by which payments precede/,
    (basis, to) => {
      const timing = to === 0 ? "end-of-year" : "mid-year";
      basis.input = { ...basis.input, money: { ...basis.input.money, timing } };
      basis.isAnew = true;
    },
  ],
  [/^Horizon/, setHorizon],
  [/^General inflation/, setMoney("inflation", false)],
  [/^Rise above inflation of energy/, setRise("energy")],
  [/^Rise above inflation of wages/, setRise("wages")],
  [/^Chance of infestation through boats/, setBoats],
  [/^Gear and aircraft: chance/, setWay(0, "chance")],
  [/^Canal: chance while/, setWay(1, "chance")],
  [/^Canal: its source is infested from/, setWay(1, "fromYear")],
  [/^Ditch: chance while/, setWay(2, "chance")],
  [/^Ditch: chance that its source/, setWay(2, "sourceChance")],
];

/**
 * Changes what the product computes from as the input of that name says.
 * @param options names of the options that the input is of; all others stay as they are
 * @returns whether an input of that name is known
 */
export function change(basis: Basis, name: string, to: number, options: readonly string[]): boolean {
  const found = general.find(([pattern]) => pattern.test(name));
  if (found && options.length === 0) {
    found[1](basis, to);
    return true;
  }
  const own = ofOption.find(([pattern]) => pattern.test(name));
  if (!own || options.length === 0) return false;
  basis.input = {
    ...basis.input,
    options: basis.input.options.map((option) => {
      const changed: Mutable<ProgramOption> = { ...option };
      if (options.includes(option.name)) own[1](changed, to, name);
      return changed;
    }),
  };
  return true;
}

/** The same with the unit rates of some lines times a factor. @param isMeant lines of structures, and of following a schedule */
export function changeRates(
  basis: Basis,
  factor: number,
  isMeant: (line: CostLine, schedule: ScheduleResult) => boolean,
): void {
  const changed = (line: CostLine, schedule: ScheduleResult) =>
    isMeant(line, schedule) ? costLine({ ...line, unitRate: line.unitRate * factor }) : line;
  withStructures(
    basis,
    ({ years }, schedule) => years.map((lines) => lines.map((line) => changed(line, schedule))),
    changed,
  );
}

/** Schedules whose structures cost something else: their sums by the product's own functions. @param linesOf by year */
function withStructures(
  basis: Basis,
  linesOf: (structure: StructureResult, schedule: ScheduleResult) => readonly (readonly CostLine[])[],
  changeOperating: (line: CostLine, schedule: ScheduleResult) => CostLine = (line) => line,
): void {
  const groups = new Set(basis.input.money.escalation?.map(({ group }) => group));
  const schedules = basis.schedules.map((schedule) => {
    const structures = schedule.structures.map((structure) => {
      const years = linesOf(structure, schedule);
      const told = { count: years.length, origins: [{ part: undefined, table: tableOf(years) }] };
      return { ...structure, years, told };
    });
    return {
      ...schedule,
      structures,
      infestation: infestationCost(structures, yearsBefore(basis), groups),
      operating: schedule.operating.map((line) => changeOperating(line, schedule)),
    };
  });
  basis.schedules = [at(schedules, 0), ...schedules.slice(1)];
}
