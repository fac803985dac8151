import type { RecordProblem } from "../reading/contradiction.js";
import { describe } from "../reading/problems.js";
import { type DateOrder, exportDate } from "./export-dates.js";
import { type Decimals, plainNumber } from "./export-numbers.js";
import { type ExportRow, sameName } from "./export-table.js";

/** What a line of a log adds to the sums. */
export interface BoatLine {
  readonly season: number;
  readonly vesselClass: string;
  readonly screened: number;
  readonly setAside: number;
  readonly fouled: number;
  readonly quickCheck: number | undefined;
  readonly fullInspection: number | undefined;
}

type Column = "date" | "class" | "fouled" | "setAside" | "screened" | "quickCheck" | "fullInspection";

/** How lines are read. */
export interface LogReading {
  readonly order: DateOrder | undefined;
  readonly decimals: Decimals;
  readonly classes: ReadonlyMap<string, string>;
  readonly yes: ReadonlySet<string>;
  readonly no: ReadonlySet<string>;
  /** Where in a row a column is; absent where it is not mapped. */
  readonly at: (column: Column) => number | undefined;
}

const seasonText = /^(?:19|20)\d\d$/;
const mostBoats = 1_000_000;
const mostMinutes = 24 * 60;

/** What a line says, or its first fault. */
export function boatLine(row: ExportRow, how: LogReading): BoatLine | RecordProblem {
  const cell = (column: Column) => row.cells[how.at(column) ?? -1] ?? "";
  const season = seasonOf(cell("date"), how.order);
  const orSeason = how.at("screened") === undefined ? "" : ", or a season such as 2027";
  if (typeof season !== "number") return fault(row, "date", cell("date"), season.allowed + orSeason);
  const counts = countsOf(row, how);
  if ("allowed" in counts) return counts;
  const [quickCheck, fullInspection] = [
    minutes(cell("quickCheck"), how),
    minutes(cell("fullInspection"), how),
  ];
  if (quickCheck === "wrong") return fault(row, "quickCheck", cell("quickCheck"), minutesAllowed);
  if (fullInspection === "wrong") return fault(row, "fullInspection", cell("fullInspection"), minutesAllowed);
  const vesselClass = how.classes.get(sameName(cell("class")));
  if (vesselClass === undefined) return fault(row, "class", cell("class"), "a word for a class of boats");
  return { season, vesselClass, ...counts, quickCheck, fullInspection };
}

const minutesAllowed = "minutes, from 0 to a day, or nothing";

function seasonOf(text: string, order: DateOrder | undefined): number | { readonly allowed: string } {
  if (seasonText.test(text)) return Number(text);
  const date = exportDate(text, order);
  return "allowed" in date ? date : Number(date.date.slice(0, 4));
}

function countsOf(row: ExportRow, how: LogReading) {
  const cell = (column: Column) => row.cells[how.at(column) ?? -1] ?? "";
  const isSum = how.at("screened") !== undefined;
  const count = (text: string) => wholeNumber(text, how.decimals);
  const read = isSum ? count : (text: string) => yesNo(text, how);
  const allowed = isSum ? "a whole number of boats" : answersAllowed(how);
  const screened = isSum ? count(cell("screened")) : 1;
  if (screened === undefined) return fault(row, "screened", cell("screened"), allowed);
  const [setAside, fouled] = [read(cell("setAside")), read(cell("fouled"))];
  if (setAside === undefined) return fault(row, "setAside", cell("setAside"), allowed);
  if (fouled === undefined) return fault(row, "fouled", cell("fouled"), allowed);
  const most = Math.max(setAside, fouled);
  if (most > screened)
    return fault(row, "screened", cell("screened"), `no fewer than were held or had mussels, ${most}`);
  return { screened, setAside, fouled };
}

function yesNo(text: string, { yes, no }: LogReading): number | undefined {
  const word = sameName(text);
  if (yes.has(word)) return 1;
  return word === "" || no.has(word) ? 0 : undefined;
}

const answersAllowed = ({ yes, no }: LogReading): string =>
  `a word that means yes (${[...yes].join(", ")}) or no (${[...no].join(", ")}; more can be listed), or nothing`;

/** "1,200", or "1.200" where decimals have a comma; a number with decimals is none of boats. */
function wholeNumber(text: string, decimals: Decimals): number | undefined {
  const plain = plainNumber(text, decimals);
  if (plain === undefined || !/^\d+$/.test(plain)) return undefined;
  return Number(plain) <= mostBoats ? Number(plain) : undefined;
}

function minutes(text: string, { decimals }: LogReading): number | undefined | "wrong" {
  if (text === "") return undefined;
  const number = Number(plainNumber(text, decimals) ?? Number.NaN);
  return number >= 0 && number <= mostMinutes ? number : "wrong";
}

const fault = ({ line }: ExportRow, column: Column, text: string, allowed: string): RecordProblem => ({
  ...{ line, found: `${columnNames[column]} ${text === "" ? "nothing" : describe(text)}`, allowed },
  remedy: "Correct it in the file, or leave the line out.",
});

const columnNames: Readonly<Record<Column, string>> = {
  date: "date",
  class: "class",
  fouled: "boats with mussels",
  setAside: "boats held",
  screened: "boats screened",
  quickCheck: "minutes of the quick check",
  fullInspection: "minutes of the full inspection",
};
