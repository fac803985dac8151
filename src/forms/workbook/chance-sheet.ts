import { at } from "../../lists.js";
import type { OptionResult } from "../../model/option.js";
import type { ReportContext } from "../../report/document/context.js";
import type { ChanceInputs, WayInputs } from "./chance-inputs.js";
import type { Clock } from "./clock.js";
import {
  either,
  isAbove,
  isSame,
  minus,
  number,
  oneLess,
  over,
  plus,
  power,
  times,
  type Worked,
  when,
} from "./formula.js";
import { grid } from "./grid.js";
import type { OptionInputs } from "./option-inputs.js";
import { type SheetDraft, text, value } from "./sheet.js";
import { type Through, writeThrough } from "./through-rows.js";

/** What the chances of the options rest on, year by year. */
export interface ChanceSheet {
  readonly draft: SheetDraft;
  /** Chance to stay clean by the ways that no check stops, and by those that stations check, without a program. */
  readonly unchecked: (year: number) => Worked;
  readonly checked: (year: number) => Worked;
  /** What an option lets through in a year. */
  readonly through: (option: OptionResult, year: number) => Through;
}

const headRow = 3;
const firstRow = headRow + 1;
const sums = { unchecked: 1, checked: 2 };
const firstWay = 3;

export function chanceSheet(
  context: ReportContext,
  parts: {
    readonly chances: ChanceInputs;
    readonly clock: Clock;
    readonly options: ReadonlyMap<string, OptionInputs>;
    readonly used: Parameters<typeof writeThrough>[2]["used"];
  },
): ChanceSheet {
  const sheet = grid("Chances");
  const { chances, clock } = parts;
  sheet.put(0, 0, text("Where the yearly chances come from", "title"));
  sheet.put(1, 0, text(introduction, "note"));
  const heads = ["Year", "Clean by ways that no check stops", "Clean by ways that stations check"];
  const ways = chances.ways.map(({ way }) => `Clean: ${way.name}`);
  sheet.putRow(
    headRow,
    [...heads, ...ways].map((each) => text(each, "head")),
  );
  for (let year = 0; year < clock.years; year++) {
    const row = firstRow + year;
    sheet.put(row, 0, value(clock.year(year), "whole"));
    const clean = chances.ways.map((way, index) =>
      sheet.put(row, firstWay + index, value(cleanBy(way, clock.year(year), chances, clock), "factor")),
    );
    const of = (isChecked: boolean) =>
      clean.filter((_, index) => at(chances.ways, index).way.checked === isChecked);
    sheet.put(row, sums.unchecked, value(productOf([...of(false), ...typical(chances)]), "factor"));
    sheet.put(row, sums.checked, value(productOf(of(true)), "factor"));
  }
  const through = writeThrough(sheet, context, { ...parts, row: firstRow + clock.years + 1 });
  return {
    draft: sheet.draft({ widths: [44, 18, 18, ...Array.from({ length: 8 }, () => 18)], headRows: 0 }),
    unchecked: (year) => sheet.at(firstRow + year, sums.unchecked),
    checked: (year) => sheet.at(firstRow + year, sums.checked),
    through,
  };
}

const introduction =
  "Chance that the lake stays clean in a year for each way in other than boats, and below it the share of fouled boats that each option lets through. Shares of the classes are computed by the program.";

const productOf = (factors: readonly Worked[]) => (factors.length === 0 ? number(1) : times(...factors));

/** Where no ways are named they are a share φ of all foundings: φ/(1−φ) of the boats’ rate. */
const typical = ({ boats, otherShare }: ChanceInputs): Worked[] =>
  otherShare ? [power(oneLess(boats), over(otherShare, oneLess(otherShare)))] : [];

/** (1−p) to the power of the chance that the source is infested by then, and of what clean years taught. */
function cleanBy(
  { chance, from, sourceChance }: WayInputs,
  year: Worked,
  { learned }: ChanceInputs,
  clock: Clock,
): Worked {
  const since = plus(minus(year, from ?? clock.year(0)), number(1));
  const ofSource = sourceChance && oneLess(power(oneLess(sourceChance), since));
  const exponents = [ofSource, learned].filter((each) => each !== undefined);
  const clean = exponents.length === 0 ? oneLess(chance) : power(oneLess(chance), times(...exponents));
  const notYet = from && isAbove(from, year);
  const never = sourceChance && isSame(sourceChance, number(0));
  if (!notYet) return never ? when(never, number(1), clean) : clean;
  return when(never ? either(notYet, never) : notYet, number(1), clean);
}
