import { parse } from "csv-parse/sync";
import { strFromU8, unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { tableFiles, tablesZip } from "../../src/forms/tables.js";
import { reportView } from "../../src/report/document/report-view.js";
import { amount, editedRun } from "../report/edited.js";

const hostile = "=cmd|' /C calc'!A0";
const view = reportView(editedRun([["options.1.name", hostile]]));
const files = tableFiles(view);
const read = (csv: string) => parse(csv, { bom: true, relax_column_count: true }) as string[][];

describe("the report's tables as CSV", () => {
  it("have each table once, among them the comparison, the budget and the assumptions", () => {
    const names = files.map(({ fileName }) => fileName);
    expect(new Set(names).size).toBe(names.length);
    expect(names).toEqual(
      expect.arrayContaining(["options.csv", "balance.csv", "budget.csv", "assumptions.csv", "lines.csv"]),
    );
  });

  it("hold what the report prints, with a minus before an amount kept", () => {
    const balance = files.find(({ fileName }) => fileName === "balance.csv");
    const rows = read(balance?.csv ?? "");
    const printed = view.comparison.balance?.rows.map(({ cells }) => cells[3]?.text);
    expect(rows.slice(2, -1).map((row) => row[3])).toEqual(printed?.map((text) => text?.replace("−", "-")));
    expect(printed?.some((text) => text?.startsWith("−") && amount(text) < 0)).toBe(true);
  });

  it("have no cell that a spreadsheet program takes for a formula", () => {
    const cells = files.flatMap(({ csv }) => read(csv).flat());
    expect(cells.some((cell) => cell.includes(hostile))).toBe(true);
    expect(cells.filter((cell) => /^[=+@\t\r]/.test(cell))).toEqual([]);
    expect(cells.filter((cell) => /^-/.test(cell) && !/^-\p{Sc}?[\d,.]+%?$/u.test(cell))).toEqual([]);
  });

  it("come in one zip, which is the same for the same tables", () => {
    const zip = tablesZip(files);
    const entries = unzipSync(zip);
    expect(Object.keys(entries)).toHaveLength(files.length);
    expect(strFromU8(entries["budget.csv"] ?? new Uint8Array())).toContain("FY 20");
    expect(Buffer.compare(zip, tablesZip(files))).toBe(0);
  });
});
