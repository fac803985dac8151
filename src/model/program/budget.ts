import { at } from "../../lists.js";
import type { EquipmentLine, MoneySettings, ProgramOption } from "../inputs.js";
import {
  type BudgetLine,
  type FiscalRow,
  type FiscalTable,
  fiscalTable,
  sumOfRows,
} from "../money/fiscal-years.js";
import { amountOf } from "../money/line.js";
import { priceGroupOf } from "../money/price-group.js";
import { type Rises, riseIn, risesOf } from "../money/price-rises.js";
import { purchaseYears } from "../money/residual.js";
import { everyYearLines, type ProgramLine } from "./cost.js";
import { byGroup, type LineGroup } from "./groups.js";
import { costShare } from "./ramp-up.js";

/** Most fiscal years that a budget shows, where nobody asks for more. */
const budgetYears = 5;

/** A fiscal table whose rows stand in groups. */
export interface ProgramBudget extends FiscalTable {
  /** Each row of the table in one of them. */
  readonly groups: ReadonlyArray<{
    readonly group: LineGroup;
    readonly rows: readonly (FiscalRow & { readonly part: BudgetPart })[];
    readonly subtotal: FiscalRow;
  }>;
  /** The same rows by what a board decides on: bought in a year, spent each year, and what comes in. */
  readonly parts: Readonly<Record<BudgetPart, FiscalRow>>;
}

/** Capital, what is paid once to start, what goes on every year, and what comes in. */
export const budgetParts = ["purchases", "once", "ongoing", "revenue"] as const;
export type BudgetPart = (typeof budgetParts)[number];

/**
 * What an option's program takes from the budgets of the next fiscal years while the lake stays clean, in money of each
 * calendar year. Wages, running costs, yearly lines and revenue are the same each year but for the rises of their
 * groups, or their share of that while a program grows; equipment is paid in full in the years in which it is bought, not at its yearly capital
 * recovery. Absent where the option has no
 * program, or the horizon fills no fiscal year.
 * @param years most fiscal years
 */
export function programBudget(
  option: ProgramOption,
  money: MoneySettings,
  years: number = budgetYears,
): ProgramBudget | undefined {
  const calendarYears = calendarYearsOf(money, years);
  const rises = risesOf(money.escalation ?? [], calendarYears, money);
  const lines = byGroup([
    ...option.equipment.map((each) => purchases(each, calendarYears, rises)),
    ...everyYearLines(option, money).map((line) => levelLine(line, option, calendarYears, rises)),
  ]);
  if (lines.length === 0 || (money.fiscalYearStart > 1 && calendarYears < 2)) return undefined;
  const table = fiscalTable(
    lines.flatMap((each) => each.lines),
    fiscalSettings(money, years),
  );
  const rows = [...table.rows];
  const groups = lines.map(({ group, lines: own }) => {
    const ownRows = rows.splice(0, own.length).map((each, index) => ({ ...each, part: at(own, index).part }));
    return { group, rows: ownRows, subtotal: sumOfRows(group, ownRows) };
  });
  const parts = lines.flatMap((each) => each.lines.map(({ part }) => part));
  const partRow = (part: BudgetPart) =>
    sumOfRows(part, [
      { ...table.totals, cents: table.totals.cents.map(() => 0), total: 0, before: 0, after: 0 },
      ...table.rows.filter((_, index) => parts[index] === part),
    ]);
  const [purchased, once] = [partRow("purchases"), partRow("once")];
  return {
    ...table,
    groups,
    parts: { purchases: purchased, once, ongoing: partRow("ongoing"), revenue: partRow("revenue") },
  };
}

const calendarYearsOf = ({ horizon, fiscalYearStart }: MoneySettings, years: number): number =>
  Math.min(horizon, years + (fiscalYearStart > 1 ? 1 : 0));

const fiscalSettings = (money: MoneySettings, years: number) => ({
  ...money,
  startMonth: money.fiscalYearStart,
  years,
});

/** A yearly amount of the price year in the fiscal years of a budget, whole cents: raised as they are by inflation. */
export const yearlyInBudget = (amount: number, money: MoneySettings): readonly number[] =>
  at(
    fiscalTable(
      [{ name: "A yearly amount", byYear: Array<number>(calendarYearsOf(money, budgetYears)).fill(amount) }],
      fiscalSettings(money, budgetYears),
    ).rows,
    0,
  ).cents;

type GroupedLine = BudgetLine & { readonly group: LineGroup; readonly part: BudgetPart };

function levelLine(
  line: ProgramLine,
  option: ProgramOption,
  calendarYears: number,
  rises: Rises,
): GroupedLine {
  const group = priceGroupOf(line);
  return {
    name: line.what,
    group: line.group,
    part: line.type === "revenue" ? "revenue" : "ongoing",
    byYear: Array.from(
      { length: calendarYears },
      (_, year) => amountOf(line).toNumber() * costShare(option, year) * riseIn(group, year, rises),
    ),
  };
}

function purchases(
  { name, group = "equipment", count, price, life, oneTime }: EquipmentLine,
  calendarYears: number,
  rises: Rises,
): GroupedLine {
  const years = purchaseYears({ price, life, firstYear: 1 }, calendarYears);
  const bought = (year: number) => years.filter((each) => each === year).length;
  return {
    name,
    group,
    part: oneTime ? "once" : "purchases",
    byYear: Array.from(
      { length: calendarYears },
      (_, year) => bought(year + 1) * count * price * riseIn("equipment", year, rises),
    ),
  };
}
