import { at } from "../../lists.js";
import type { LineGroup } from "../../model/program/groups.js";
import type { ReportContext } from "../../report/document/context.js";
import type { Clock } from "./clock.js";
import {
  isAbove,
  minus,
  most,
  number,
  over,
  plus,
  power,
  roundedUp,
  times,
  toTheCent,
  type Worked,
  when,
} from "./formula.js";
import type { Rising } from "./infestation-sheet.js";
import type { MoneyInputs } from "./money-inputs.js";
import type { OptionInputs } from "./option-inputs.js";
import type { EquipmentInputs, ProgramInputs } from "./program-inputs.js";
import type { ProgramCells } from "./program-sheet.js";

/** What a row of a budget rests on: a line of every year, or things that are bought. */
export interface BudgetAmount {
  readonly group: LineGroup;
  readonly rising: Rising;
  readonly from: { readonly yearly: Worked } | { readonly bought: EquipmentInputs };
}

/** Rows of the requested option: what is bought first, then what is paid every year alike. */
export function budgetAmounts(
  { requested, traced }: ReportContext,
  { equipment }: ProgramInputs,
  { amounts }: Pick<ProgramCells, "amounts">,
): BudgetAmount[] {
  const { programLines } = requested.result;
  return [
    ...equipment.map((bought, index): BudgetAmount => {
      const line = at(programLines, index);
      return { group: line.group, rising: traced.rising({ ...line, group: "equipment" }), from: { bought } };
    }),
    ...programLines.slice(equipment.length).map(
      (line, index): BudgetAmount => ({
        group: line.group,
        rising: traced.rising(line),
        from: { yearly: at(amounts, equipment.length + index) },
      }),
    ),
  ];
}

interface Parts {
  readonly clock: Clock;
  readonly money: MoneyInputs;
  readonly inputs: OptionInputs;
}

/** The amount of a calendar year, counted from 0, in money of that year. */
export function calendarAmounts(
  { from, rising }: BudgetAmount,
  year: number,
  { clock, money, inputs }: Parts,
): Worked {
  const { inflation, priceYear } = money;
  const level = power(plus(number(1), inflation), minus(clock.year(year), priceYear));
  const rise = clock.rise(rising, year);
  if ("yearly" in from) {
    return times(from.yearly, inputs.growth[year]?.cost ?? number(1), rise, level);
  }
  const { count, price } = from.bought;
  return times(bought(from.bought, clock.number(year)), count, price, rise, level);
}

/** Sums of lives may miss a whole number of years by rounding. */
const roundingError = number(1e-9);

/** How often a thing is bought in a year: first in year 1, and again whenever its life is over. */
function bought({ life }: EquipmentInputs, year: Worked): Worked {
  const until = (end: Worked) => most(number(0), roundedUp(minus(over(end, life), roundingError)));
  const before = minus(year, number(1));
  return minus(until(year), when(isAbove(before, number(0)), until(before), number(0)));
}

/** Of an amount in whole cents, what falls in the months before the fiscal year starts; half a cent falls there. */
export function earlyPart(amount: Worked, monthsBefore: number): Worked {
  const part = over(times(amount, number(monthsBefore)), number(12));
  const away = number(1e-6);
  return toTheCent(when(isAbove(number(0), amount), minus(part, away), plus(part, away)));
}
