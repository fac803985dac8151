import { counted } from "../../../counted.js";
import { columnReader } from "../../../units/quantity.js";
import type { WorkColumnsMapped } from "../../format/export-schema.js";
import type { RecordProblem } from "../../reading/contradiction.js";
import { describe } from "../../reading/problems.js";
import { orderOf } from "../export-dates.js";
import { decimalsOf } from "../export-numbers.js";
import { columnName, type ExportRow, type ExportTable, exportTable, sameName } from "../export-table.js";
import { headUnit, isUnitOf } from "../head-unit.js";
import { droppedTold, type LogAsked, wordsAsked } from "../log-words.js";
import { readRows } from "../read-rows.js";
import { workNames } from "./work-kinds.js";
import { amountKeys, type WorkReading, workLine } from "./work-lines.js";
import { type WorkSums, workSums } from "./work-sums.js";

/** A file of work orders and outages, summed. */
export interface WorkFile {
  /** Absent where nothing could be read. */
  readonly sums: WorkSums | undefined;
  readonly told: readonly string[];
  readonly asked: readonly LogAsked[];
  /** Lines that are in no sum, in their order. */
  readonly refused: readonly RecordProblem[];
}

const columnKeys = ["date", "structure", "work", "order", ...amountKeys] as const;
type ColumnKey = (typeof columnKeys)[number];

/** Reads a file of work orders and keeps sums alone. @param structureIds the structures of the study */
export function readWork(
  text: string,
  mapping: WorkColumnsMapped,
  structureIds: readonly string[],
): WorkFile {
  const keys = columnKeys.filter((key) => mapping[key] !== undefined);
  const mapped = keys.flatMap((key) => mapping[key] ?? []);
  const table = exportTable(text, mapped);
  if ("allowed" in table) return askedOnly([{ about: "columns", problem: table }]);
  const how = howToRead(table, keys, mapping, structureIds);
  if ("asked" in how) return askedOnly(how.asked);
  const read = (row: ExportRow) => workLine(row, how);
  const { lines, refused } = readRows(table, read, { one: "order", needs: "a date and a structure" });
  return {
    sums: workSums(lines),
    told: [`${counted(lines.length, "line")} read.`, ...droppedTold(table, mapped)],
    asked: [],
    refused,
  };
}

const askedOnly = (asked: readonly LogAsked[]): WorkFile => ({
  ...{ sums: undefined, told: [], asked, refused: [] },
});

function howToRead(
  table: ExportTable,
  keys: readonly ColumnKey[],
  mapping: WorkColumnsMapped,
  structureIds: readonly string[],
): WorkReading | { readonly asked: readonly LogAsked[] } {
  const place = new Map<string, number>(keys.map((key, index) => [key, index]));
  const order = mapping.dates ? { order: mapping.dates } : orderOf(table.rows, 0);
  const amounts = amountKeys.flatMap((key) => place.get(key) ?? []);
  const decimals = mapping.decimals
    ? { decimals: mapping.decimals }
    : decimalsOf(table.rows, amounts, table.separator);
  const unit = mapping.energyUnit ?? headUnit(columnName(table.head, mapping.energy ?? ""), "energy");
  const isKnownUnit = mapping.energy === undefined || (unit !== undefined && isUnitOf(unit, "energy"));
  const words = {
    structures: new Map([
      ...[...structureIds, "other"].map((id) => [id, id] as const),
      ...Object.entries(mapping.structures).map(([word, id]) => [sameName(word), id] as const),
    ]),
    works: new Map([
      ...workNames.map((name) => [name, name] as const),
      ...Object.entries(mapping.works).map(([word, name]) => [sameName(word), name] as const),
    ]),
  };
  const asked: LogAsked[] = [
    ...(isKnownUnit
      ? []
      : [{ about: "unit" as const, problem: noUnit(table, unit ?? mapping.energy ?? "") }]),
    ...("asked" in order ? [{ about: "dates" as const, problem: order.asked }] : []),
    ...("asked" in decimals ? [{ about: "decimals" as const, problem: decimals.asked }] : []),
    ...unknownWords(table, place, { ...words, structureIds, all: mapping.all, unmapped: mapping.unmapped }),
  ];
  if (asked.length > 0 || "asked" in order || "asked" in decimals) return { asked };
  return {
    ...{ order: order.order, decimals: decimals.decimals, ...words },
    ...{ all: mapping.all, unmapped: mapping.unmapped },
    energyUnit: mapping.energy === undefined ? 1 : columnReader(unit ?? "kWh", "energy")("1"),
    at: (key) => place.get(key),
  };
}

const noUnit = ({ head }: ExportTable, found: string): RecordProblem => ({
  line: head.line,
  found: `${describe(found)}, no unit of energy`,
  allowed: "kWh, MWh or another unit of energy, in the column’s name or chosen",
  remedy: "Say in which unit the energy lost is.",
});

interface Words extends Pick<WorkReading, "structures" | "works" | "all" | "unmapped"> {
  readonly structureIds: readonly string[];
}

function unknownWords(
  { rows, head }: ExportTable,
  place: ReadonlyMap<string, number>,
  { structures, works, structureIds, all, unmapped }: Words,
): LogAsked[] {
  const structure = wordsAsked(rows, {
    ...{ about: "structures", column: 1 },
    isKnown: (word) => [...structureIds, "other"].includes(structures.get(word) ?? unmapped ?? ""),
    allowed: `words that are mapped to a structure of the study, ${structureIds.join(", ")}, or to other`,
    remedy: "Say which structure each word means, or let all words that are not mapped mean other.",
  });
  const allowed = `words that are mapped to ${workNames.join(", ")}`;
  const remedy = "Say which kind of work each word means.";
  const column = place.get("work");
  const noColumn = {
    ...{ line: head.line, found: "no column of kinds of work", allowed: "a column, or the one kind of all" },
    remedy: "Say which kind the orders are.",
  };
  const work =
    column === undefined
      ? all === undefined
        ? { about: "works" as const, problem: noColumn }
        : undefined
      : wordsAsked(rows, {
          ...{ about: "works", noun: "kinds of work", column, allowed, remedy },
          isKnown: (word) => works.has(word),
        });
  return [...(structure ? [structure] : []), ...(work ? [work] : [])];
}
