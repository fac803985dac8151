import { expect } from "vitest";
import { workbook } from "../../src/forms/workbook/workbook.js";
import type { CostLine } from "../../src/model/money/line.js";
import type { ScheduleResult } from "../../src/model/schedules.js";
import type { StudyRun } from "../../src/study/prepare/compute.js";
import { prepareStudy } from "../../src/study/prepare/prepared.js";
import { assumptions } from "../report/runs.js";
import { type Basis, change, changeRates } from "./inputs-changed.js";
import { type Listed, listOf } from "./listed-inputs.js";
import { keyOf, type LiveBook, liveBook } from "./recalculated.js";

/** The workbook of a study, with the product's own results beside it. */
export interface LiveInputs {
  readonly book: LiveBook;
  readonly listed: readonly Listed[];
  /** Inputs that may be changed. */
  readonly own: readonly Listed[];
  /** The product's own results with an input changed. */
  readonly productWith: (input: Listed, to: number) => Basis;
  /** Present values of the options on the first sheet, as an outside program has them. */
  readonly presentValues: (moved: ReadonlyMap<string, unknown>) => Map<string, number[]>;
}

/** Sheets of a workbook but the one that takes the longest. */
export const withoutSearch = (sheet: string): boolean => sheet !== "Break-even";

export async function liveInputs(run: StudyRun): Promise<LiveInputs> {
  const book = await liveBook(await workbook(run));
  const listed = listOf(book);
  const inputs = new Set(book.typed.flatMap(({ color, place }) => (color === "input" ? [keyOf(place)] : [])));
  const { options } = run.comparison.input;
  return {
    book,
    listed,
    own: listed.filter(({ place, formula }) => formula === undefined && inputs.has(keyOf(place))),
    productWith: productOf(run, book, listed),
    presentValues: (moved) => {
      const found = new Map<string, number[]>();
      book.rows("The answer").forEach(([name, program], index) => {
        const isOption = options.some((option) => option.name === name);
        if (typeof name !== "string" || !isOption || typeof program !== "number") return;
        const at = (col: number) => {
          const place = { sheet: "The answer", row: index + 1, col };
          return Number(moved.get(keyOf(place)) ?? book.valueAt(place));
        };
        found.set(name, [at(2), at(3)]);
      });
      return found;
    },
  };
}

function productOf(run: StudyRun, book: LiveBook, listed: readonly Listed[]): LiveInputs["productWith"] {
  const { comparison } = run;
  const { assumed } = prepareStudy(run.document, assumptions);
  return (input, to) => {
    const basis: Basis = {
      ...{
        comparison,
        source: assumed,
        input: comparison.input,
        isAnew: false,
      },
      ...{ rates: comparison.rates, schedules: comparison.schedules },
    };
    const isRate = /^Unit rates|schedule costs$/.test(input.section);
    if (isRate) changeRates(basis, to / input.value, linesAt(input, run, book));
    else {
      const options = optionsWith(input, run, listed);
      expect([input.name, change(basis, input.name, to, options)]).toEqual([input.name, true]);
    }
    return basis;
  };
}

/** Names of the options that an input is of: its own, and those that link to it. */
function optionsWith(
  { name, section, place }: Listed,
  { comparison }: StudyRun,
  listed: readonly Listed[],
): string[] {
  const optionOf = (title: string) =>
    comparison.input.options.find((option) => title.startsWith(`“${option.name}”:`));
  const linked = listed.filter((each) => each.name === name && each.formula === `B${place.row}`);
  return [section, ...linked.map((each) => each.section)].flatMap((each) => optionOf(each)?.name ?? []);
}

/** Lines whose unit rate is a formula of an input, by the words of their rows. */
function linesAt({ place }: Listed, { comparison }: StudyRun, book: LiveBook) {
  const { schedules, input } = comparison;
  const isOf = (key: string) => new RegExp(`'Inputs'!B${place.row}\\b`).test(book.formulas.get(key) ?? "");
  const rowsOf = (sheet: string, column: number) =>
    book.rows(sheet).filter((_, index) => isOf(keyOf({ sheet, row: index + 1, col: column })));
  const own = (sheet: string) => new Set(rowsOf(sheet, 7).map(([structure, what]) => `${structure} ${what}`));
  const sheets = ["Infestation lines", "Infestation lines 2"].map(own);
  const followed = new Set(rowsOf("Program lines", 7).map(([, , what]) => String(what).toLowerCase()));
  const nameOf = (id: string) => input.structures.find((each) => each.id === id)?.name ?? id;
  return (line: CostLine, schedule: ScheduleResult) => {
    if (schedule.operating.includes(line)) return followed.has(line.what.toLowerCase());
    const sheet = schedules.indexOf(schedule);
    return sheets[sheet]?.has(`${nameOf(line.structure)} ${line.what}`) ?? false;
  };
}
