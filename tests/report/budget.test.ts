import { describe, expect, it } from "vitest";
import { reportView } from "../../src/report/document/report-view.js";
import { absent } from "../study/example.js";
import { amount, type Edit, smallRun } from "./edited.js";

const inflated: readonly Edit[] = [
  ["money.fiscalYearStart", "oct"],
  ["money.inflation", "2.3 %/yr"],
  ["money.inflationOrigin", "Invented forecast"],
];
const budgetOf = (edits: readonly Edit[]) => reportView(smallRun(edits)).program.budget;
const cents = (text: string | undefined) => Math.round(100 * amount(text));

describe("the table of fiscal years", () => {
  it("adds up to the cent in rows and columns, as printed", () => {
    const table = budgetOf(inflated);
    if (!table?.total) throw new Error("no budget");
    const { total } = table;
    const rows = table.rows.filter(({ subtotal }) => !subtotal);
    for (const { cells } of [...rows, total]) {
      const years = cells.slice(3, -1).map(({ text }) => cents(text));
      expect(cents(cells.at(-1)?.text)).toBe(years.reduce((sum, each) => sum + each, 0));
    }
    total.cells.slice(2).forEach(({ text }, column) => {
      const printed = rows.map(({ cells }) => cents(cells[column + 2]?.text));
      expect(cents(text)).toBe(printed.reduce((sum, each) => sum + each, 0));
    });
  });

  it("stands in groups with subtotals where it has more than eight lines, without them where it has fewer", () => {
    const table = budgetOf(inflated);
    let group = 0;
    for (const { cells, subtotal } of table?.rows ?? []) {
      const [name, line = ""] = cells.map(({ text }) => text);
      const printed = cents(cells.at(-1)?.text);
      if (subtotal) {
        expect(line).toMatch(/ together$/);
        expect(printed).toBe(group);
      } else group = name === "" ? group + printed : printed;
    }
    const short = budgetOf([
      ["options[full-season].yearly", []],
      ["options[full-season].otherRevenue", []],
      ["options[full-season].fees", []],
      ["options[full-season].demandLoss", absent],
    ]);
    // Inspectors, supervisor, two kinds of equipment and what one of them costs to run.
    expect(short?.rows).toHaveLength(5);
    expect(short?.head[0]?.text).toBe("Line");
    expect(short?.rows.some(({ subtotal }) => subtotal)).toBe(false);
  });

  it("has what equipment costs to run in every year", () => {
    const found = budgetOf([])?.rows.find(({ cells }) => cells[1]?.text === "Hot-wash unit, running cost");
    // As entered: two units at 1,500 a year.
    expect(found?.cells.slice(2, 7).map(({ text }) => text)).toEqual(Array<string>(5).fill("3,000.00"));
  });

  it("says what its money is, how years are split, and that the lake stays clean", () => {
    const { head, note, caption } = budgetOf(inflated) ?? {};
    // The example's start year is 2027: from October, the first whole fiscal year is 2028.
    expect(head?.map(({ text }) => text).slice(2, 4)).toEqual(["Before", "FY 2028"]);
    expect(caption).toContain("while the lake stays clean, USD of each year");
    expect(note).toContain("Prices of 2025, raised by 2.3% a year (Invented forecast)");
    expect(note).toContain("Fiscal years start in October");
    expect(note).toContain("January to September 2027");
  });

  it("has calendar years and no inflation where the study says nothing", () => {
    const { head, note } = budgetOf([]) ?? {};
    expect(head?.map(({ text }) => text).slice(2, 4)).toEqual(["FY 2027", "FY 2028"]);
    expect(note).toContain("Prices of 2025, without inflation.");
    expect(note).toContain("Fiscal years are calendar years");
  });

  it("is left out for a lake that is infested", () => {
    expect(budgetOf([["lake.infestedSince", 2024]])).toBeUndefined();
  });
});
