import type { MoneySettings, ProgramOption } from "../inputs.js";
import { type BudgetLine, type FiscalTable, fiscalTable } from "../money/fiscal-years.js";
import { amountOf, type CostLine } from "../money/line.js";
import { purchaseYears } from "../money/residual.js";
import { programLines } from "./cost.js";

/** Most fiscal years that a budget shows. */
export const budgetYears = 5;

/**
 * What an option's program takes from the budgets of the next fiscal years while the lake stays clean, in money of each
 * calendar year. Wages, yearly lines and fees are the same each year at constant prices; equipment is paid in full in
 * the years in which it is bought, not at its yearly capital recovery. Absent where the option has no program, or the
 * horizon fills no fiscal year.
 */
export function programBudget(option: ProgramOption, money: MoneySettings): FiscalTable | undefined {
  const startsMidYear = money.fiscalYearStart > 1;
  const calendarYears = Math.min(money.horizon, budgetYears + (startsMidYear ? 1 : 0));
  const level = (part: Partial<ProgramOption>) =>
    programLines({ ...option, staff: [], equipment: [], yearly: [], fees: [], ...part }, money).map((line) =>
      levelLine(line, calendarYears),
    );
  const lines = [
    ...level({ staff: option.staff }),
    ...option.equipment.map((each) => purchases(each, calendarYears)),
    ...level({ yearly: option.yearly }),
    ...level({ fees: option.fees }),
  ];
  if (lines.length === 0 || (startsMidYear && calendarYears < 2)) return undefined;
  return fiscalTable(lines, { ...money, startMonth: money.fiscalYearStart, years: budgetYears });
}

function levelLine(line: CostLine, calendarYears: number): BudgetLine {
  return { name: line.what, byYear: Array<number>(calendarYears).fill(amountOf(line).toNumber()) };
}

function purchases(
  { name, count, price, life }: ProgramOption["equipment"][number],
  calendarYears: number,
): BudgetLine {
  const years = purchaseYears({ price, life, firstYear: 1 }, calendarYears);
  const bought = (year: number) => years.filter((each) => each === year).length;
  return {
    name,
    byYear: Array.from({ length: calendarYears }, (_, index) => bought(index + 1) * count * price),
  };
}
