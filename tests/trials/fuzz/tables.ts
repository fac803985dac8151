import fc from "fast-check";
import type { Writing } from "#product/editor/amounts/units-offered.js";
import { draftOf } from "#product/editor/draft.js";
import { childOf, itemsOf } from "#product/editor/form-values.js";
import { columnsOf, headOf } from "#product/editor/table/structure-columns.js";
import { readStructureTable } from "#product/editor/table/structure-table.js";
import { type Fault, longestMilliseconds, processorMilliseconds } from "./fault.js";
import type { Hunt, Verdict } from "./hunt.js";
import { changedLines } from "./mutation.js";
import { smallLakes } from "./studies.js";
import { anyText, anyValue } from "./values.js";

/** A pasted table of structures of one kind. */
export interface PastedTable {
  readonly kind: string;
  readonly csv: string;
}

/** Tables of sound lines and of lines whose cells are anything, some of them lost, cut or overwritten. */
export function tableHunt(): Hunt<PastedTable> {
  const [lake] = smallLakes();
  const { document, writing } = draftOf(JSON.stringify(lake), "lake.json");
  const structures = smallLakes().flatMap((each) => itemsOf(childOf(each, "structures")));
  const sound = structures.map((structure) => soundTable(structure, writing));
  const row = fc.array(fc.oneof(anyValue, anyText), { maxLength: 14 });
  const changes = fc.array(fc.tuple(fc.nat(100_000), anyText), { maxLength: 3 });
  const cases = fc
    .tuple(fc.constantFrom(...sound), fc.array(row, { maxLength: 3 }), changes)
    .map(([{ kind, csv }, rows, edits]): PastedTable => {
      const whole = [csv, ...rows.map((cells) => cells.map(cellText).join(","))].join("\n");
      return { kind, csv: edits.reduce((text, [choice, piece]) => changedLines(text, choice, piece), whole) };
    });
  return { name: "pasted tables", cases, judge: (table) => judgeTable(table, document) };
}

/** A structure as a table of one line. */
function soundTable(structure: unknown, writing: Writing): PastedTable {
  const kind = String(childOf(structure, "kind"));
  const cells = columnsOf(kind)
    .map((column) => ({ column, value: column.at.reduce<unknown>(below, structure) }))
    .filter(({ value }) => typeof value === "string" || typeof value === "number");
  const head = cells.map(({ column }) => cellText(headOf(column, writing).replace(/ \(.*$/, "")));
  return {
    kind,
    csv: [head, cells.map(({ value }) => cellText(value))].map((each) => each.join(",")).join("\n"),
  };
}

const below = (value: unknown, key: string | number): unknown =>
  typeof key === "number" ? itemsOf(value)[key] : childOf(value, key);

const cellText = (value: unknown): string =>
  `"${String(typeof value === "object" ? JSON.stringify(value) : value).replaceAll('"', '""')}"`;

function judgeTable({ csv, kind }: PastedTable, document: unknown): Verdict {
  const start = processorMilliseconds();
  const faults: Fault[] = [];
  let ending = "refused";
  try {
    const table = readStructureTable(csv, kind, document);
    const messages = [...table.problems, ...table.lines.flatMap(({ problems }) => problems)];
    const silent = messages.find(
      (message) => message.trim() === "" || /\bundefined\b|\[object/.test(message),
    );
    if (silent !== undefined) faults.push({ what: "message without its parts", detail: silent });
    if (table.lines.some(({ problems }) => problems.length === 0)) ending = "some taken";
    if (table.lines.length === 0 && table.problems.length === 0)
      faults.push({ what: "refused without a reason", detail: csv.slice(0, 80) });
  } catch (error) {
    faults.push({
      what: "crash",
      detail:
        error instanceof Error ? (error.stack ?? "").split("\n").slice(0, 5).join(" | ") : String(error),
    });
  }
  const milliseconds = processorMilliseconds() - start;
  if (milliseconds > longestMilliseconds)
    faults.push({ what: "slow", detail: `${milliseconds.toFixed(0)} ms` });
  return { faults, milliseconds, ending };
}

const months = ["01", "02", "03", "04", "05", "06", "07", "08", "09", "10", "11", "12"];

const levels = [
  "date,elevation (m)",
  ...months.map((month) => `2019-${month},411.8`),
  ...months.map((month) => `2020-${month},412.1`),
].join("\n");
const counts = [
  "date,hour,launches",
  ...["05", "06", "07"].flatMap((day) => [8, 9, 10].map((hour) => `2024-07-${day},${hour},12`)),
  "2024-07-08,8,5",
].join("\n");
const seasons = [
  "season,class,screened,setAside,fouled",
  "2024,infested-30-days,140,112,4",
  "2025,infested-30-days,155,126,5",
].join("\n");

/** Studies whose records of levels, boats and seasons have broken lines. */
export function recordTexts(): fc.Arbitrary<string> {
  const [lake] = smallLakes();
  const put: readonly (readonly [readonly string[], object, string])[] = [
    [["lake", "record"], { origin: "invented", fillGapsUpTo: 5 }, levels],
    [
      ["boats", "traffic"],
      { origin: "invented", monthGroups: [{ id: "all", name: "All", months: ["jul"] }] },
      counts,
    ],
    [["boats", "seasons"], { origin: "invented" }, seasons],
  ];
  const changes = fc.array(fc.tuple(fc.nat(100_000), anyText), { maxLength: 3 });
  return fc.tuple(fc.constantFrom(...put), changes).map(([[at, other, csv], edits]) => {
    const copy: unknown = structuredClone(lake);
    const [section = "", key = ""] = at;
    const broken = edits.reduce((text, [choice, piece]) => changedLines(text, choice, piece), csv);
    Reflect.set(Object(Reflect.get(Object(copy), section)), key, { ...other, csv: broken });
    return JSON.stringify(copy);
  });
}
