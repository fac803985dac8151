import type { OptionResult } from "../../model/option.js";
import type { ReportContext } from "../../report/document/context.js";
import type { Clock } from "./clock.js";
import {
  isAbove,
  isSame,
  minus,
  number,
  oneLess,
  plus,
  power,
  sumOfProducts,
  times,
  toTheCent,
  type Worked,
  when,
} from "./formula.js";
import type { Grid } from "./grid.js";
import type { InfestationSheets, Rising } from "./infestation-sheet.js";
import type { OptionInputs } from "./option-inputs.js";
import { inYear, type ProgramCells } from "./program-sheet.js";
import { text, value } from "./sheet.js";
import type { Through } from "./through-rows.js";

/** When an infestation is detected, by the years of it, where another option is watched alike. */
export type Detected = (age: number) => Worked;

export interface CourseParts {
  readonly clock: Clock;
  readonly inputs: OptionInputs;
  readonly cells: ProgramCells;
  readonly own: InfestationSheets;
  /** Under the option's schedule of levels. */
  readonly followed: InfestationSheets;
  readonly groups: readonly Rising[];
  /** Absent where the lake is infested already. */
  readonly chance:
    | {
        readonly boats: Worked;
        readonly unchecked: (year: number) => Worked;
        readonly checked: (year: number) => Worked;
        readonly through: (year: number) => Through;
      }
    | undefined;
}

/** Columns of the sheet, counted from 0. */
export const columns = {
  ...{ year: 0, foundings: 1, launches: 2, others: 3, chance: 4, newly: 5, clean: 6, infested: 7 },
  ...{ knownAfter: 8, known: 9, attempts: 10, full: 11, share: 12, schedule: 13, attempt: 14 },
  ...{ program: 15, infestation: 16, reversed: 17 },
  ...{
    age: 19,
    detected: 20,
    unnoticed: 21,
    found: 22,
    tried: 23,
    noticed: 24,
    left: 25,
    kept: 26,
    cost: 27,
  },
};

export const yearHeads = [
  ...["Year", "Foundings through boats", "Launches through", "Clean by other ways", "Chance in the year"],
  ...[
    "Newly infested",
    "Clean at the end",
    "Infested at the end",
    "Known to be at the end",
    "Known in the year",
  ],
  ...["Attempts", "Program in a clean year", "Share of it", "Following its schedule", "One attempt"],
  ...["Program, expected", "Infestation, expected", "Newly infested, last year first"],
];
export const ageHeads = [
  ...["Year of the infestation", "Detected, if not before", "Undetected", "Found", "Of it tried", "Known"],
  ...["Known after attempts", "Program beside it"],
];
export const headRow = 3;
export const first = headRow + 1;

export interface Place {
  readonly sheet: Grid;
  readonly result: OptionResult;
  readonly context: ReportContext;
  readonly parts: CourseParts;
}

/** Cells of a column, by years counted from 0. */
export const stretch = ({ sheet, parts }: Place, column: number, from = 0, to = parts.clock.years - 1) =>
  sheet.down(column, first + from, first + to);

export function writeAge(place: Place, age: number, alike: Detected | undefined): void {
  const { sheet, result, parts } = place;
  const row = first + age;
  const before = (column: number) => sheet.at(row - 1, column);
  const put = (column: number, formula: Worked, look: "factor" | "cents" = "factor") =>
    sheet.put(row, column, value(formula, look));
  sheet.put(row, columns.age, text(`Year ${age + 1}`));
  const detected = alike
    ? put(columns.detected, alike(age))
    : sheet.put(row, columns.detected, value(result.detection.chanceByAge[age] ?? 1, "factor"));
  const undetected = age === 0 ? number(1) : before(columns.unnoticed);
  const unnoticed = put(columns.unnoticed, times(undetected, oneLess(detected)));
  const found = put(columns.found, times(undetected, detected));
  const { attempt } = parts.inputs;
  const tried = put(
    columns.tried,
    attempt ? when(isAbove(parts.clock.number(age), attempt.latestYear), number(0), found) : number(0),
  );
  const noticed = put(columns.noticed, age === 0 ? found : plus(before(columns.left), found));
  put(columns.left, attempt ? minus(noticed, times(attempt.chance, tried)) : noticed);
  put(columns.kept, keptIn(place, age));
  parts.groups.forEach((group, index) => {
    const { own, followed } = parts;
    const known = plus(followed.cost("losses", group, age), followed.cost("work", group, age));
    const cost = plus(times(known, noticed), times(own.cost("losses", group, age), unnoticed));
    put(columns.cost + index, cost, "cents");
  });
}

/** Of the program's cost, what goes on in a year of an infestation. */
function keptIn({ sheet, context, parts }: Place, age: number): Worked {
  const { keptShare } = parts.inputs;
  if (age === 0) return context.infestedSince === undefined ? number(1) : keptShare;
  const row = first + age - 1;
  return plus(sheet.at(row, columns.unnoticed), times(sheet.at(row, columns.left), keptShare));
}

export function writeYear(place: Place, year: number): void {
  const { sheet, parts } = place;
  const { clock } = parts;
  const row = first + year;
  const last = clock.years - 1;
  sheet.put(row, columns.year, value(clock.year(year), "whole"));
  const put = (column: number, formula: Worked, look: "factor" | "percent" | "cents" = "factor") =>
    sheet.put(row, column, value(formula, look));
  const chance = put(columns.chance, chanceIn(place, year), "percent");
  const cleanBefore = year === 0 ? number(1) : sheet.at(row - 1, columns.clean);
  const newly = put(columns.newly, times(cleanBefore, chance), "percent");
  sheet.put(first + last - year, columns.reversed, value(newly, "percent"));
  const met = (column: number) =>
    sumOfProducts(stretch(place, columns.reversed, last - year, last), stretch(place, column, 0, year));
  const attempts = put(columns.attempts, met(columns.tried));
  const { attempt } = parts.inputs;
  const stays = times(cleanBefore, oneLess(chance));
  const clean = put(columns.clean, attempt ? plus(stays, times(attempt.chance, attempts)) : stays, "percent");
  put(columns.infested, oneLess(clean), "percent");
  put(columns.knownAfter, met(columns.left), "percent");
  put(columns.known, met(columns.noticed), "percent");
  writeCosts(place, year, met);
}

function chanceIn({ sheet, parts, context }: Place, year: number): Worked {
  const { chance } = parts;
  if (!chance || context.infestedSince !== undefined) return number(Number(year === 0));
  const row = first + year;
  const through = chance.through(year);
  const foundings = sheet.put(row, columns.foundings, value(through.foundings, "percent"));
  const launches = sheet.put(row, columns.launches, value(through.launches, "percent"));
  const raised = (base: Worked, exponent: Worked) =>
    when(isSame(exponent, number(0)), number(1), power(base, exponent));
  const others = sheet.put(
    row,
    columns.others,
    value(times(chance.unchecked(year), raised(chance.checked(year), launches)), "factor"),
  );
  return oneLess(times(raised(oneLess(chance.boats), foundings), others));
}

function writeCosts(place: Place, year: number, met: (column: number) => Worked): void {
  const { sheet, result, context, parts } = place;
  const { clock, inputs, cells, groups } = parts;
  const row = first + year;
  const put = (column: number, formula: Worked) => sheet.put(row, column, value(formula, "cents"));
  const rising = groups.filter((group) => group !== undefined);
  const riseOf = (group: Rising) => clock.rise(group, year);
  const full = put(columns.full, inYear(cells.program, rising, riseOf));
  const share = sheet.put(row, columns.share, value(inputs.growth[year]?.cost ?? number(1), "percent"));
  const following = put(
    columns.schedule,
    cells.schedule ? inYear(cells.schedule, rising, riseOf) : number(0),
  );
  const line = result.containment?.line;
  const attempt = put(
    columns.attempt,
    inputs.attempt && line
      ? times(toTheCent(inputs.attempt.cost), riseOf(context.traced.rising(line)))
      : number(0),
  );
  const knownBefore =
    year === 0 ? number(context.infestedSince === undefined ? 0 : 1) : sheet.at(row - 1, columns.knownAfter);
  const going = plus(oneLess(knownBefore), times(knownBefore, inputs.keptShare));
  put(columns.program, plus(times(full, share, going), times(following, sheet.at(row, columns.known))));
  const damage = groups.map((group, index) => {
    const cost = met(columns.cost + index);
    return group === undefined ? cost : times(riseOf(group), cost);
  });
  put(columns.infestation, plus(...damage, times(attempt, sheet.at(row, columns.attempts))));
}
