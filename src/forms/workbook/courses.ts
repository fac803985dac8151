import { at } from "../../lists.js";
import type { OptionResult } from "../../model/option.js";
import type { ScheduleResult } from "../../model/schedules.js";
import { allOptions, type ReportContext } from "../../report/document/context.js";
import type { AssumptionSheet } from "./assumption-sheets.js";
import { type ChanceInputs, chanceInputs, otherShareId } from "./chance-inputs.js";
import { type ChanceSheet, chanceSheet } from "./chance-sheet.js";
import { type Course, courseSheet } from "./course-sheet.js";
import { number, over, type Worked } from "./formula.js";
import { type InfestationSheets, infestationSheets, type Rising } from "./infestation-sheet.js";
import { type InputList, inputList } from "./input-sheet.js";
import { type MoneyInputs, moneyInputs } from "./money-inputs.js";
import { type OptionInputs, optionInputs } from "./option-inputs.js";
import { type ProgramInputs, programInputs } from "./program-inputs.js";
import { type ProgramSheet, programSheet } from "./program-sheet.js";
import { type RateInputs, rateInputs } from "./rate-inputs.js";
import { type OptionCells, type YearlySheet, yearlySheet } from "./yearly-sheet.js";

interface OwnInputs {
  readonly works: OptionInputs;
  readonly program: ProgramInputs;
}

/** All sheets between the inputs and the answer, written in the order in which one rests on another. */
export interface Linked {
  readonly inputs: InputList;
  readonly money: MoneyInputs;
  readonly optionInputs: (optionId: string) => OwnInputs;
  readonly yearly: YearlySheet;
  readonly program: ProgramSheet;
  /** Under the lake's own levels first. */
  readonly lines: readonly InfestationSheets[];
  readonly chances: ChanceSheet | undefined;
  readonly courses: readonly Course[];
  readonly baseline: Course;
  readonly requested: Course;
  /** The option without a program first. */
  readonly cells: readonly OptionCells[];
  readonly infestationSum: Worked;
}

export function linkedCourses(context: ReportContext, assumptions: AssumptionSheet): Linked {
  const inputs = inputList();
  const money = moneyInputs(inputs, context);
  const chances = chanceInputs(inputs, context);
  const own = ownInputs(inputs, context, money);
  const yearly = yearlySheet(context, money);
  const groups: readonly Rising[] = [undefined, ...money.rises.keys()];
  const { lines, rates } = lineSheets(inputs, context, { money, assumptions, groups });
  const program = programSheet(context, {
    programs: new Map([...own].map(([id, each]) => [id, each.program])),
    inputs,
    rateOf: rates.ofStructure,
  });
  if (chances?.otherShare) assumptions.link(otherShareId, chances.otherShare);
  const options = new Map([...own].map(([id, { works }]) => [id, works]));
  const chance = chances && {
    inputs: chances,
    sheet: chanceSheet(context, { chances, clock: yearly.clock, options, used: assumptions.used }),
  };
  const courses = writeCourses(context, { own, yearly, program, lines, chance, groups });
  const baseline = at(courses, 0);
  const requested = courses.find(({ result }) => result === context.requested.result) ?? baseline;
  const [ownLines] = lines.values();
  if (!ownLines) throw new Error("no lines under the lake's own levels");
  const attempts = baseline.attemptsPresentValue;
  return {
    ...{ inputs, money, yearly, program, courses, baseline, requested, chances: chance?.sheet },
    lines: [...lines.values()],
    optionInputs: (id) => found(own, id),
    cells: yearly.write(courses),
    infestationSum: ownLines.weigh(
      baseline.weight,
      attempts && { name: baseline.result.option.response?.name ?? "", presentValue: attempts },
    ),
  };
}

function found<Value>(map: ReadonlyMap<string, Value>, id: string): Value {
  const value = map.get(id);
  if (!value) throw new Error(`no option ${id}`);
  return value;
}

function ownInputs(inputs: InputList, context: ReportContext, money: MoneyInputs): Map<string, OwnInputs> {
  const { comparison } = context;
  const { classes } = comparison.input.boats;
  const isInfested = context.infestedSince !== undefined;
  const className = (id: string) => classes.find((each) => each.id === id)?.name ?? id;
  return new Map(
    allOptions(context).map(({ option, arrivals: { outlivesHold } }) => [
      option.id,
      {
        works: optionInputs(inputs, option, { outlivesHold, className, isInfested }),
        program: programInputs(inputs, option, {
          rate: money.rate,
          currency: comparison.input.money.currency,
        }),
      },
    ]),
  );
}

type LinesOf = ReadonlyMap<ScheduleResult, InfestationSheets>;

function lineSheets(
  inputs: InputList,
  context: ReportContext,
  {
    money,
    assumptions,
    groups,
  }: { money: MoneyInputs; assumptions: AssumptionSheet; groups: readonly Rising[] },
): { lines: LinesOf; rates: RateInputs } {
  const lines = context.traced.lines();
  const rates = rateInputs(inputs, [...lines.values()].flat(), context, {
    rate: money.rate,
    used: assumptions.used,
    scheduleOf: (line) => [...lines].slice(1).find(([, own]) => own.includes(line))?.[0].name,
  });
  for (const [id, { cell, perUnit }] of rates.byAssumption) {
    assumptions.link(id, perUnit === 1 ? cell : over(cell, number(perUnit)));
  }
  const sheets = new Map<ScheduleResult, InfestationSheets>();
  for (const [schedule, own] of lines) {
    const [first] = sheets.values();
    const suffix = first ? ` ${sheets.size + 1}` : "";
    const parts = { lines: own, rateOf: rates.of, suffix, schedule: schedule.name, groups, own: first };
    sheets.set(schedule, infestationSheets(context, parts));
  }
  return { lines: sheets, rates };
}

interface CourseSources {
  readonly own: ReadonlyMap<string, OwnInputs>;
  readonly yearly: YearlySheet;
  readonly program: ProgramSheet;
  readonly lines: LinesOf;
  readonly chance: { readonly inputs: ChanceInputs; readonly sheet: ChanceSheet } | undefined;
  readonly groups: readonly Rising[];
}

function writeCourses(
  context: ReportContext,
  { own, yearly, program, lines, chance, groups }: CourseSources,
): Course[] {
  const [ownLines] = lines.values();
  const courses: Course[] = [];
  allOptions(context).forEach((result, index) => {
    const followed = lines.get(result.schedule) ?? ownLines;
    if (!ownLines || !followed) throw new Error(`no lines of ${result.schedule.name}`);
    const course = courseSheet(index, result, context, {
      ...{ clock: yearly.clock, groups, own: ownLines, followed },
      inputs: found(own, result.option.id).works,
      cells: program.of(result.option.id),
      chance: chance && chanceOf(chance, result),
      detected: courses.find((each) => isDetectedLike(each.result, result))?.detected,
    });
    courses.push(course);
  });
  return courses;
}

const chanceOf = ({ inputs, sheet }: NonNullable<CourseSources["chance"]>, result: OptionResult) => ({
  boats: inputs.boats,
  unchecked: sheet.unchecked,
  checked: sheet.checked,
  through: (year: number) => sheet.through(result, year),
});

const isDetectedLike = (one: OptionResult, other: OptionResult) =>
  one.detection.chanceByAge.join() === other.detection.chanceByAge.join();
