import { at, sumOf } from "../../lists.js";
import { growthFactors } from "./escalation.js";

/** A line of a budget: its amount in calendar years `startYear`, the next, …, in prices of the price year. */
export interface BudgetLine {
  readonly name: string;
  readonly byYear: readonly number[];
}

export interface FiscalSettings {
  /** Month in which the fiscal year starts, 1 January to 12 December. */
  readonly startMonth: number;
  /** Most fiscal years shown. */
  readonly years: number;
  readonly priceYear: number;
  /** Calendar year of the first amount. */
  readonly startYear: number;
  /** General inflation a year, by which amounts become money of their calendar year. */
  readonly inflation: number;
}

/** A fiscal year, called by the calendar year in which it ends. */
interface FiscalYear {
  readonly endYear: number;
  readonly startYear: number;
}

/** Whole cents by fiscal year, with what the amounts hold before the first and after the last of them. */
export interface FiscalRow {
  readonly name: string;
  readonly cents: readonly number[];
  readonly total: number;
  readonly before: number;
  readonly after: number;
}

export interface FiscalTable {
  readonly years: readonly FiscalYear[];
  readonly rows: readonly FiscalRow[];
  /** Sum of the rows. */
  readonly totals: FiscalRow;
}

/** Flows that fill no fiscal year, or a setting that makes no fiscal year. */
export class FiscalYearError extends Error {}

const monthsPerYear = 12;

/**
 * Budget table of the next fiscal years: those that start in or after the first calendar year and that the amounts
 * cover whole. Each amount is put in money of its calendar year, rounded to the cent, and spread evenly over its twelve
 * months; a fiscal year takes the months that it holds. Nothing is lost: before + fiscal years + after is the sum of
 * the rounded amounts.
 * @throws FiscalYearError
 */
export function fiscalTable(lines: readonly BudgetLine[], settings: FiscalSettings): FiscalTable {
  checkSettings(settings);
  const calendarYears = Math.max(0, ...lines.map(({ byYear }) => byYear.length));
  const years = fiscalYears(calendarYears, settings);
  const rows = lines.map((line) => fiscalRow(line, years.length, settings));
  return { years, rows, totals: sumOfRows("Total", rows) };
}

/** One row for several of a table, at least one: whole cents, so that sums are exact. */
export function sumOfRows(name: string, rows: readonly FiscalRow[]): FiscalRow {
  const sum = (pick: (row: FiscalRow) => number) => rows.reduce((total, row) => total + pick(row), 0);
  return {
    name,
    cents: (rows[0]?.cents ?? []).map((_, index) => sum(({ cents }) => at(cents, index))),
    total: sum(({ total }) => total),
    before: sum(({ before }) => before),
    after: sum(({ after }) => after),
  };
}

function checkSettings({ startMonth, years }: FiscalSettings): void {
  if (!Number.isInteger(startMonth) || startMonth < 1 || startMonth > monthsPerYear) {
    throw new FiscalYearError(`a fiscal year from month ${startMonth}; allowed: 1 to ${monthsPerYear}`);
  }
  if (!Number.isInteger(years) || years < 1) {
    throw new FiscalYearError(`${years} fiscal years; allowed: a whole number from 1`);
  }
}

function fiscalYears(calendarYears: number, { startMonth, startYear, years }: FiscalSettings): FiscalYear[] {
  const overlap = startMonth === 1 ? 0 : 1;
  const covered = Math.min(years, calendarYears - overlap);
  if (covered < 1) {
    throw new FiscalYearError(
      `amounts of ${calendarYears} calendar years; allowed: at least ${overlap + 1}, to fill a fiscal year`,
    );
  }
  return Array.from({ length: covered }, (_, index) => ({
    startYear: startYear + index,
    endYear: startYear + index + overlap,
  }));
}

function fiscalRow({ name, byYear }: BudgetLine, years: number, settings: FiscalSettings): FiscalRow {
  const monthsBefore = settings.startMonth - 1;
  const levels = growthFactors(byYear.length, settings.inflation, { ...settings, timing: "mid-year" });
  const whole = byYear.map((amount, index) => centsOf(name, amount * at(levels, index)));
  const early = (index: number) => centsInMonths(whole[index] ?? 0, monthsBefore);
  const late = (index: number) => (whole[index] ?? 0) - early(index);
  const cents = Array.from({ length: years }, (_, index) => late(index) + early(index + 1));
  const total = sumOf(cents);
  const all = sumOf(whole);
  return { name, cents, total, before: early(0), after: all - total - early(0) };
}

/** What of a year's cents falls in so many of its months, in whole cents, half a cent up in size. */
function centsInMonths(cents: number, months: number): number {
  const size = Math.abs(cents);
  const perMonth = Math.floor(size / monthsPerYear);
  const part = perMonth * months + Math.round(((size - perMonth * monthsPerYear) * months) / monthsPerYear);
  return cents < 0 && part > 0 ? -part : part;
}

function centsOf(name: string, amount: number): number {
  const cents = Math.sign(amount) * Math.round(Math.abs(amount) * 100);
  if (!Number.isSafeInteger(cents)) throw new FiscalYearError(`${name}: ${amount} is no amount of money`);
  return cents;
}
