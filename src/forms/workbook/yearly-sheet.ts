import { counted } from "../../counted.js";
import type { OptionResult } from "../../model/option.js";
import { allOptions, type ReportContext } from "../../report/document/context.js";
import { type Clock, writeClock } from "./clock.js";
import type { Course } from "./course-sheet.js";
import { over, plus, sum, sumOfProducts, sumUpTo, valueAtNumber, type Worked } from "./formula.js";
import { type Grid, grid } from "./grid.js";
import type { MoneyInputs } from "./money-inputs.js";
import { type SheetDraft, strong, text, value } from "./sheet.js";

/** Where an option's sums stand, for sheets that link to them. */
export interface OptionCells {
  readonly result: OptionResult;
  readonly chanceAtEnd: Worked;
  readonly presentValue: Record<Part, Worked>;
  readonly equalYearly: Record<Part, Worked>;
}

export interface YearlySheet {
  readonly clock: Clock;
  /** Writes the options beside the years. */
  readonly write: (courses: readonly Course[]) => OptionCells[];
  readonly draft: () => SheetDraft;
}

const parts = ["program", "infestation", "total"] as const;
type Part = (typeof parts)[number];

const headRow = 4;
const firstYearRow = headRow + 1;
const columnsPerOption = 4;

/** Every year of every option: present values are sums of products with the discount factors. */
export function yearlySheet(context: ReportContext, money: MoneyInputs): YearlySheet {
  const sheet = grid("Cost by year");
  sheet.put(0, 0, text("Expected cost of each year", "title"));
  sheet.put(1, 0, text(introduction(context), "note"));
  const clock = writeClock(sheet, headRow, context, money);
  const place = { sheet, clock, money };
  return {
    clock,
    write: (courses) => {
      ["Undiscounted", "Present value", "Equal amount a year"].forEach((label, index) => {
        sheet.put(firstYearRow + clock.years + index, 0, strong(text(label)));
      });
      return courses.map((course, index) =>
        writeOption(place, course, clock.columns + index * columnsPerOption),
      );
    },
    draft: () =>
      sheet.draft({
        widths: [
          ...[22, 10, 14, ...[...money.rises].map(() => 14)],
          ...allOptions(context).flatMap(() => [12, 16, 16, 16]),
        ],
        headRows: firstYearRow,
        joined: allOptions(context).map((_, index) => {
          const from = clock.columns + index * columnsPerOption;
          return { row: headRow - 1, from, to: from + columnsPerOption - 1 };
        }),
      }),
  };
}

const columnHeads = ["Chance so far", "Program", "Infestation", "Together"];

function introduction({ run, priceYear, horizon }: ReportContext): string {
  return `${run.document.money.currency} of ${priceYear}. Program and infestation are expected values over ${counted(horizon, "year")}, each weighed by the chance that the lake is clean or infested. Past a shorter horizon of the inputs the discount factor is 0.`;
}

interface Place {
  readonly sheet: Grid;
  readonly clock: Clock;
  readonly money: MoneyInputs;
}

function writeOption({ sheet, clock, money }: Place, course: Course, column: number): OptionCells {
  sheet.put(headRow - 1, column, text(course.result.option.name, "head"));
  sheet.putRow(
    headRow,
    columnHeads.map((each) => text(each, "head")),
    column,
  );
  for (let year = 0; year < clock.years; year++) {
    const row = firstYearRow + year;
    sheet.put(row, column, value(course.infested(year), "percent"));
    const [program, infestation] = [course.program(year), course.infestation(year)].map((cost, part) =>
      sheet.put(row, column + 1 + part, value(cost, "cents")),
    );
    if (program && infestation) sheet.put(row, column + 3, value(plus(program, infestation), "cents"));
  }
  const last = firstYearRow + clock.years - 1;
  const of = (part: Part) => sheet.down(column + 1 + parts.indexOf(part), firstYearRow, last);
  const put = (row: number, part: Part, formula: Worked) =>
    sheet.put(last + row, column + 1 + parts.indexOf(part), strong(value(formula, "cents")));
  const each = (formulaOf: (part: Part) => Worked): Record<Part, Worked> => ({
    program: formulaOf("program"),
    infestation: formulaOf("infestation"),
    total: formulaOf("total"),
  });
  each((part) => put(1, part, sumUpTo(clock.numbers, money.horizon, of(part))));
  const presentValue = each((part) => put(2, part, sumOfProducts(clock.factors(), of(part))));
  return {
    result: course.result,
    chanceAtEnd: valueAtNumber(clock.numbers, money.horizon, sheet.down(column, firstYearRow, last)),
    presentValue,
    equalYearly: each((part) => put(3, part, over(presentValue[part], sum(clock.factors())))),
  };
}
