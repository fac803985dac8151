import type { OptionResult } from "../../model/option.js";
import type { ReportContext } from "../../report/document/context.js";
import {
  ageHeads,
  type CourseParts,
  columns,
  type Detected,
  first,
  headRow,
  type Place,
  stretch,
  writeAge,
  writeYear,
  yearHeads,
} from "./course-rows.js";
import { plus, type Stretch, sumOfProducts, times, type Worked } from "./formula.js";
import { grid } from "./grid.js";
import type { Rising } from "./infestation-sheet.js";
import { groupWords } from "./money-inputs.js";
import { type SheetDraft, text } from "./sheet.js";

/** How an option's lake may go, year by year, and what that costs. */
export interface Course {
  readonly result: OptionResult;
  readonly draft: SheetDraft;
  /** Chance that an infestation is detected in a year of it if it was not before. */
  readonly detected: Detected;
  readonly chance: (year: number) => Worked;
  readonly infested: (year: number) => Worked;
  /** Expected cost of a year. */
  readonly program: (year: number) => Worked;
  readonly infestation: (year: number) => Worked;
  /** Present value of what following its schedule costs, and of its attempts. */
  readonly schedulePresentValue: Worked;
  readonly attemptsPresentValue: Worked | undefined;
  /** What a year of an infestation, counted from 0, weighs in the present value. */
  readonly weight: (part: "losses" | "work", rising: Rising, age: number) => Worked;
  readonly columns: CourseColumns;
  /** Chance that an attempt succeeds; absent where none is made. */
  readonly containedChance: Worked | undefined;
}

/** What a search of the break-even chance rests on. */
export interface CourseColumns {
  readonly through: (year: number) => Worked;
  /** Chance to stay clean by the other ways. */
  readonly others: (year: number) => Worked;
  /** v g G: present value of the program in a clean year. */
  readonly clean: (year: number) => Worked;
  /** D: present value of all that an infestation costs which begins in a year, with the program beside it. */
  readonly established: (year: number) => Worked;
  /** Share of an infestation that is found and tried in a year of it. */
  readonly tried: (age: number) => Worked;
}

/** @param index of the option, which names the sheet */
export function courseSheet(
  index: number,
  result: OptionResult,
  context: ReportContext,
  parts: CourseParts & { readonly detected: Detected | undefined },
): Course {
  const sheet = grid(`Course ${index + 1}`);
  const place = { sheet, result, context, parts };
  sheet.put(0, 0, text(`What may become of the lake under “${result.option.name}”`, "title"));
  sheet.put(1, 0, text(introduction, "note"));
  const costHeads = parts.groups.map((group) =>
    group === undefined ? "Cost, expected" : `Of it ${groupWords[group]}`,
  );
  sheet.putRow(
    headRow,
    [...yearHeads, "", ...ageHeads, ...costHeads].map((each) => text(each, "head")),
  );
  for (let age = 0; age < parts.clock.years; age++) writeAge(place, age, parts.detected);
  for (let year = 0; year < parts.clock.years; year++) writeYear(place, year);
  return courseOf(place);
}

const introduction =
  "On the left, the years of the horizon; on the right, the years of an infestation. A clean lake becomes infested with the chance of the year; an infestation is detected according to its age and may be contained. Columns of both sides are multiplied for the expected cost, the newly infested with the last year first.";

function courseOf(place: Place): Course {
  const { sheet, result, parts } = place;
  const { clock, groups } = parts;
  const last = clock.years - 1;
  const yearly = (column: number) => (year: number) => sheet.at(first + year, column);
  const present = (...of: readonly number[]) =>
    sumOfProducts(clock.factors(), ...of.map((column) => stretch(place, column)));
  const risesFrom = (group: Rising, from: number) => clock.rises(group, from, last);
  return {
    result,
    draft: sheet.draft({
      widths: [10, ...Array.from({ length: columns.cost + groups.length - 1 }, () => 14)],
      headRows: headRow + 1,
    }),
    detected: yearly(columns.detected),
    infested: yearly(columns.infested),
    chance: yearly(columns.chance),
    program: yearly(columns.program),
    infestation: yearly(columns.infestation),
    schedulePresentValue: present(columns.schedule, columns.known),
    attemptsPresentValue: result.containment && present(columns.attempt, columns.attempts),
    weight: (part, rising, age) => {
      const since = sumOfProducts(
        clock.factors(age, last),
        ...risesFrom(rising, age),
        stretch(place, columns.newly, 0, last - age),
      );
      const known = sheet.at(first + age, columns.noticed);
      return times(since, part === "work" ? known : plus(known, sheet.at(first + age, columns.unnoticed)));
    },
    containedChance: parts.inputs.attempt?.chance,
    columns: {
      through: yearly(columns.foundings),
      others: yearly(columns.others),
      clean: (year) =>
        times(
          clock.factor(year),
          sheet.at(first + year, columns.full),
          sheet.at(first + year, columns.share),
        ),
      established: (year) => establishedIn(place, year),
      tried: yearly(columns.tried),
    },
  };
}

function establishedIn(place: Place, year: number): Worked {
  const { parts } = place;
  const { clock, groups } = parts;
  const last = clock.years - 1;
  const from = (column: number) => stretch(place, column, year, last);
  const ages = (column: number) => stretch(place, column, 0, last - year);
  const present = (...others: readonly Stretch[]) => sumOfProducts(clock.factors(year, last), ...others);
  return plus(
    present(from(columns.full), from(columns.share), ages(columns.kept)),
    present(from(columns.schedule), ages(columns.noticed)),
    present(from(columns.attempt), ages(columns.tried)),
    ...groups.map((group, index) => present(...clock.rises(group, year, last), ages(columns.cost + index))),
  );
}
