import type { RecordProblem } from "../../reading/contradiction.js";
import { describe } from "../../reading/problems.js";
import { type DateOrder, exportDate } from "../export-dates.js";
import { type Decimals, plainNumber, withoutMoneySign } from "../export-numbers.js";
import { type ExportRow, sameName } from "../export-table.js";
import type { WorkName } from "./work-kinds.js";

/** Amounts of an order, as far as it tells them; energy in kWh. */
export const amountKeys = ["hours", "laborCost", "parts", "outage", "energy"] as const;
export type AmountKey = (typeof amountKeys)[number];

/** What a line of a file of work orders and outages says. */
export interface WorkLine {
  readonly year: number;
  /** Lines of one number are one order. */
  readonly order: string;
  /** Id of a structure, or "other". */
  readonly structure: string;
  readonly work: WorkName;
  readonly amounts: Readonly<Partial<Record<AmountKey, number>>>;
}

export interface WorkReading {
  readonly order: DateOrder | undefined;
  readonly decimals: Decimals;
  readonly structures: ReadonlyMap<string, string>;
  /** What a structure is whose word is not mapped; absent where each is asked about. */
  readonly unmapped: "other" | undefined;
  readonly works: ReadonlyMap<string, WorkName>;
  /** Kind of all orders, where no column tells it. */
  readonly all: WorkName | undefined;
  /** kWh in one of the column. */
  readonly energyUnit: number;
  readonly at: (column: string) => number | undefined;
}

const most: Readonly<Record<AmountKey, number>> = {
  hours: 100_000,
  laborCost: 1e9,
  parts: 1e9,
  outage: 366 * 24,
  energy: 1e12,
};

/** What a line says, or its first fault. */
export function workLine(row: ExportRow, how: WorkReading): WorkLine | RecordProblem {
  const cell = (column: string) => row.cells[how.at(column) ?? -1] ?? "";
  const date = exportDate(cell("date"), how.order);
  if ("allowed" in date) return fault(row, "date", cell("date"), date.allowed);
  const structure = how.structures.get(sameName(cell("structure"))) ?? how.unmapped;
  if (structure === undefined || cell("structure") === "")
    return fault(row, "structure", cell("structure"), "a word for a structure");
  const work = how.at("work") === undefined ? how.all : how.works.get(sameName(cell("work")));
  if (work === undefined) return fault(row, "work", cell("work"), "a word for a kind of work");
  const amounts: Partial<Record<AmountKey, number>> = {};
  for (const key of amountKeys) {
    if (cell(key) === "") continue;
    const amount = Number(plainNumber(withoutMoneySign(cell(key)), how.decimals) ?? Number.NaN);
    if (!(amount >= 0 && amount <= most[key])) return fault(row, names[key], cell(key), allowed[key]);
    amounts[key] = key === "energy" ? amount * how.energyUnit : amount;
  }
  const year = Number(date.date.slice(0, 4));
  return { year, order: cell("order") || `line ${row.line}`, structure, work, amounts };
}

const names: Readonly<Record<AmountKey, string>> = {
  hours: "hours of work",
  laborCost: "labor cost",
  parts: "cost of parts",
  outage: "hours out of service",
  energy: "energy lost",
};

const moneyAllowed = "an amount of 0 or more, or nothing";
const allowed: Readonly<Record<AmountKey, string>> = {
  hours: `hours from 0 to ${most.hours.toLocaleString("en-US")}, or nothing`,
  laborCost: moneyAllowed,
  parts: moneyAllowed,
  outage: `hours from 0 to ${most.outage.toLocaleString("en-US")} (a year), or nothing`,
  energy: "an energy of 0 or more, or nothing",
};

const fault = ({ line }: ExportRow, name: string, text: string, can: string): RecordProblem => ({
  ...{ line, found: `${name} ${text === "" ? "nothing" : describe(text)}`, allowed: can },
  remedy: "Correct it in the file, or leave the line out.",
});
