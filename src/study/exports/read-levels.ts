import { counted } from "../../counted.js";
import type { LevelColumnsMapped } from "../format/export-schema.js";
import type { RecordProblem } from "../reading/contradiction.js";
import { type DateOrder, exportDate, orderOf } from "./export-dates.js";
import { type Decimals, decimalsOf, plainNumber } from "./export-numbers.js";
import {
  columnName,
  type ExportRow,
  type ExportTable,
  exportTable,
  nothingRead,
  sameName,
} from "./export-table.js";
import { headUnit, isUnitOf } from "./head-unit.js";
import { dailyLevels, type Reading } from "./level-days.js";
import type { Asked, LevelExport } from "./level-export.js";
import { unknownWords } from "./level-words.js";

const [dateColumn, levelColumn] = [0, 1];

/** Reads an exported file of levels by its mapped columns. */
export function readLevelExport(text: string, mapping: LevelColumnsMapped): LevelExport {
  const table = exportTable(text, [mapping.date, mapping.level]);
  if ("allowed" in table) return askedOnly([{ about: "columns", problem: table }]);
  const how = howToRead(table, mapping);
  if ("asked" in how) return askedOnly(how.asked, how.told);
  const { readings, refused, empty } = readingsOf(table.rows, mapping, how);
  const days = dailyLevels(readings, mapping);
  const faults = [...table.faults, ...refused, ...days.refused].sort(byLine);
  if (days.asked) return { ...askedOnly([days.asked], how.told), refused: faults };
  const lines = days.levels.map(({ date, level }) => `${date},${level}\n`);
  return {
    csv: lines.length === 0 ? undefined : `date,elevation (${how.unit})\n${lines.join("")}`,
    told: [...how.told, ...days.told, ...emptyTold(empty)],
    asked: [],
    refused:
      lines.length === 0 && faults.length === 0
        ? [nothingRead(table, "level", "a date and a level")]
        : faults,
  };
}

const byLine = (one: RecordProblem, other: RecordProblem) => (one.line ?? 0) - (other.line ?? 0);

const askedOnly = (asked: readonly Asked[], told: readonly string[] = []): LevelExport => ({
  ...{ csv: undefined, told, asked, refused: [] },
});

interface How {
  readonly unit: string;
  readonly order: DateOrder | undefined;
  readonly decimals: Decimals;
  readonly told: readonly string[];
}

/** Unit, dates, decimals and words, as mapped or as the file shows them; what neither says is asked. */
function howToRead(
  { head, rows, separator }: ExportTable,
  mapping: LevelColumnsMapped,
): How | { readonly asked: readonly Asked[]; readonly told: readonly string[] } {
  const name = columnName(head, mapping.level);
  const inHead = headUnit(name, "elevation");
  const unit = mapping.unit ?? inHead;
  const order = mapping.dates ? { order: mapping.dates, told: undefined } : orderOf(rows, dateColumn);
  const decimals = mapping.decimals
    ? { decimals: mapping.decimals, told: undefined }
    : decimalsOf(rows, [levelColumn], separator);
  const words = unknownWords(rows, levelColumn, mapping.missing);
  const asked: Asked[] = [
    ...(unit === undefined || !isUnitOf(unit, "elevation")
      ? [{ about: "unit" as const, problem: noUnit(head.line, unit ?? name) }]
      : []),
    ...("asked" in order ? [{ about: "dates" as const, problem: order.asked }] : []),
    ...("asked" in decimals ? [{ about: "decimals" as const, problem: decimals.asked }] : []),
    ...(words ? [words] : []),
  ];
  const told = [
    ...(unit === undefined
      ? []
      : [`Levels are in ${unit}, ${mapping.unit ? "as chosen" : "as the column’s name says"}.`]),
    ...("told" in order && order.told ? [order.told] : []),
    ...("told" in decimals && decimals.told ? [decimals.told] : []),
    ...(mapping.gaugeZero === undefined
      ? []
      : [`${mapping.gaugeZero} ${unit ?? ""} of the gauge’s zero is added to each.`]),
  ];
  if (asked.length > 0 || "asked" in order || "asked" in decimals || unit === undefined)
    return { asked, told };
  return { unit, order: order.order, decimals: decimals.decimals, told };
}

const noUnit = (line: number, found: string): RecordProblem => ({
  line,
  found: `"${found}", which has no unit of an elevation`,
  allowed: "a unit such as ft or m, in the column’s name or chosen",
  remedy: "Say in which unit the levels are.",
});

interface Empty {
  blank: number;
  readonly words: Map<string, number>;
}

function readingsOf(rows: readonly ExportRow[], { missing }: LevelColumnsMapped, { order, decimals }: How) {
  const known = new Set(missing.map(sameName));
  const empty: Empty = { blank: 0, words: new Map() };
  const readings: Reading[] = [];
  const refused: RecordProblem[] = [];
  for (const { line, cells } of rows) {
    const [dateText = "", level = ""] = cells;
    const date = exportDate(dateText, order);
    if ("allowed" in date) {
      refused.push(refusedCell(line, dateText, date.allowed, "Correct the date in the file."));
      continue;
    }
    if (level === "") empty.blank += 1;
    else if (known.has(sameName(level))) empty.words.set(level, (empty.words.get(level) ?? 0) + 1);
    else {
      const number = plainNumber(level, decimals);
      if (number === undefined)
        refused.push(refusedCell(line, level, numberAllowed(decimals), "Correct it."));
      else readings.push({ line, ...date, level: number });
    }
  }
  return { readings, refused, empty };
}

const numberAllowed = (decimals: Decimals) =>
  `a number with a decimal ${decimals}, such as ${decimals === "point" ? "1240.5" : "1240,5"}`;

const refusedCell = (line: number, text: string, allowed: string, remedy: string): RecordProblem => ({
  ...{ line, found: text === "" ? "nothing" : JSON.stringify(text.slice(0, longestFound)), allowed, remedy },
});
const longestFound = 60;

function emptyTold({ blank, words }: Empty): string[] {
  const parts = [
    ...(blank > 0 ? [`${counted(blank, "blank line")}`] : []),
    ...[...words].map(([word, count]) => `${counted(count, "line")} with “${word}”`),
  ];
  return parts.length === 0 ? [] : [`No level in ${parts.join(", ")}.`];
}
