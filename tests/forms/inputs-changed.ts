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
import type { StructureResult } from "../../src/model/structures/structure.js";

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
type OptionChange = (option: Mutable<ProgramOption>, to: number, name: string) => void;
type Mutable<T> = { -readonly [Key in keyof T]: T[Key] };

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

/** Fewer years, with the plans chosen for all of them. */
const setHorizon: Change = (basis, to) => {
  basis.input = { ...basis.input, money: { ...basis.input.money, horizon: to } };
  withStructures(basis, (structure) => ({ ...structure, years: structure.years.slice(0, to) }));
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
    /^Part of a year/,
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

const steps =
  (key: string): OptionChange =>
  (option, to) => {
    if (option.steps) option.steps = { ...option.steps, [key]: to };
  };

/** The element of a list that a name begins with, changed. */
function named<Item extends { readonly name: string }>(
  list: readonly Item[],
  name: string,
  change: (item: Item) => Item,
): Item[] {
  return list.map((item) =>
    name.startsWith(`${item.name}:`) || name.startsWith(`${item.name},`) ? change(item) : item,
  );
}

const staff =
  (
    change: (line: ProgramOption["staff"][number], to: number) => ProgramOption["staff"][number],
  ): OptionChange =>
  (option, to, name) => {
    option.staff = named(option.staff, name, (line) => change(line, to));
  };
const equipment =
  (key: "count" | "price" | "life" | "yearlyCost"): OptionChange =>
  (option, to, name) => {
    option.equipment = named(option.equipment, name, (line) => ({ ...line, [key]: to }));
  };
const yearly =
  (key: "cost" | "count" | "unitCost"): OptionChange =>
  (option, to, name) => {
    option.yearly = named(option.yearly, name, (line) => (key in line ? { ...line, [key]: to } : line));
  };
const fees =
  (key: "countPerYear" | "fee"): OptionChange =>
  (option, to, name) => {
    option.fees = named(option.fees, name, (line) => ({ ...line, [key]: to }));
  };
const growth =
  (key: "reach" | "cost"): OptionChange =>
  (option, to, name) => {
    const place = Number(/(\d+)$/.exec(name)?.[1]) - 1;
    option.rampUp = option.rampUp.map((each, year) => (year === place ? { ...each, [key]: to } : each));
  };
const response =
  (key: "cost" | "chance" | "latestYear"): OptionChange =>
  (option, to) => {
    if (option.response) option.response = { ...option.response, [key]: to };
  };

const ofOption: ReadonlyArray<readonly [RegExp, OptionChange]> = [
  [
    /^Share of its cost that goes on/,
    (option, to) => {
      option.afterInfestation = { share: to };
    },
  ],
  [/^Share of its reach in year/, growth("reach")],
  [/^Share of its cost in year/, growth("cost")],
  [/^Launches in open hours/, steps("coverage")],
  [/^Fouled boats kept away/, steps("deterrence")],
  [/^Risky boats that declare/, steps("declaration")],
  [/^Risky boats not declared/, steps("quickCheck")],
  [/^Mussels that the full inspection/, steps("inspection")],
  [/^Mussels that the hot wash/, steps("hotWash")],
  [/^Fouled boats held that are turned/, steps("refusal")],
  [
    /^Boats held that must dry/,
    (option, to) => {
      if (option.steps) option.steps = { ...option.steps, hold: { ...option.steps.hold, share: to } };
    },
  ],
  [
    /: boats with a seal$/,
    (option, to) => {
      if (option.steps)
        option.steps = { ...option.steps, seals: option.steps.seals.map((seal) => ({ ...seal, share: to })) };
    },
  ],
  [
    /: Mussels that the hot wash/,
    (option, to) => {
      if (option.steps)
        option.steps = {
          ...option.steps,
          byClass: option.steps.byClass.map((own) => ({ ...own, hotWash: to })),
        };
    },
  ],
  [/: cost of one attempt$/, response("cost")],
  [/: chance that it succeeds$/, response("chance")],
  [/: last year of an infestation/, response("latestYear")],
  [/: hours paid$/, staff((line, to) => ({ ...line, hoursPerYear: to }))],
  [/: wage an hour$/, staff((line, to) => ({ ...line, wage: to }))],
  [/: benefits over wage$/, staff((line, to) => ({ ...line, loading: to }))],
  [/: overtime$/, staff((line, to) => ({ ...line, overtime: { pay: 1, ...line.overtime, hours: to } }))],
  [
    /: overtime, times/,
    staff((line, to) => ({ ...line, overtime: { hours: 0, ...line.overtime, pay: to } })),
  ],
  [/: number$/, equipment("count")],
  [/: price of one$/, equipment("price")],
  [/: life$/, equipment("life")],
  [/: running cost/, equipment("yearlyCost")],
  [/: number a year$/, yearly("count")],
  [/: cost of one$/, yearly("unitCost")],
  [
    /, received a year$/,
    (option, to, name) => {
      option.otherRevenue = named(option.otherRevenue ?? [], name, (line) => ({ ...line, amount: to }));
    },
  ],
  [/, a year$/, yearly("cost")],
  [/: payments a year/, fees("countPerYear")],
  [/: fee$/, fees("fee")],
  [
    /^Fee for which the loss/,
    (option, to) => {
      if (option.demandLoss) option.demandLoss = { ...option.demandLoss, fee: to };
    },
  ],
  [
    /^Loss of demand/,
    (option, to) => {
      if (option.demandLoss) option.demandLoss = { ...option.demandLoss, loss: to };
    },
  ],
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
    (structure, schedule) => ({
      ...structure,
      years: structure.years.map((lines) => lines.map((line) => changed(line, schedule))),
    }),
    changed,
  );
}

/** Schedules whose structures cost something else: their sums by the product's own functions. */
function withStructures(
  basis: Basis,
  change: (structure: StructureResult, schedule: ScheduleResult) => StructureResult,
  changeOperating: (line: CostLine, schedule: ScheduleResult) => CostLine = (line) => line,
): void {
  const groups = new Set(basis.input.money.escalation?.map(({ group }) => group));
  const schedules = basis.schedules.map((schedule) => {
    const structures = schedule.structures.map((structure) => change(structure, schedule));
    return {
      ...schedule,
      structures,
      infestation: infestationCost(structures, 0, groups),
      operating: schedule.operating.map((line) => changeOperating(line, schedule)),
    };
  });
  basis.schedules = [at(schedules, 0), ...schedules.slice(1)];
}
