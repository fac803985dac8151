import { describe, expect, it } from "vitest";
import { reportView } from "../../src/report/report-view.js";
import { amount, type Edit, editedRun } from "./edited.js";

const inflated: readonly Edit[] = [
  ["money.fiscalYearStart", "oct"],
  ["money.inflation", "2.3 %/yr"],
  ["money.inflationOrigin", "Invented forecast"],
];
const budgetOf = (edits: readonly Edit[]) => reportView(editedRun(edits)).program.budget;
const cents = (text: string | undefined) => Math.round(100 * amount(text));

describe("the table of fiscal years", () => {
  it("adds up to the cent in rows and columns, as printed", () => {
    const table = budgetOf(inflated);
    if (!table?.total) throw new Error("no budget");
    const { rows, total } = table;
    for (const { cells } of [...rows, total]) {
      const years = cells.slice(2, -1).map(({ text }) => cents(text));
      expect(cents(cells.at(-1)?.text)).toBe(years.reduce((sum, each) => sum + each, 0));
    }
    total.cells.slice(1).forEach(({ text }, column) => {
      const printed = rows.map(({ cells }) => cents(cells[column + 1]?.text));
      expect(cents(text)).toBe(printed.reduce((sum, each) => sum + each, 0));
    });
  });

  it("says what its money is, how years are split, and that the lake stays clean", () => {
    const { head, note, caption } = budgetOf(inflated) ?? {};
    // The example's start year is 2027: from October, the first whole fiscal year is 2028.
    expect(head?.map(({ text }) => text).slice(1, 3)).toEqual(["Before", "FY 2028"]);
    expect(caption).toContain("while the lake stays clean, USD of each year");
    expect(note).toContain("Prices of 2025, raised by 2.3% a year (Invented forecast)");
    expect(note).toContain("Fiscal years start in October");
    expect(note).toContain("January to September 2027");
  });

  it("has calendar years and no inflation where the study says nothing", () => {
    const { head, note } = budgetOf([]) ?? {};
    expect(head?.map(({ text }) => text).slice(1, 3)).toEqual(["FY 2027", "FY 2028"]);
    expect(note).toContain("raised by 0% a year (none is assumed in the study)");
    expect(note).toContain("Fiscal years are calendar years");
  });

  it("is left out for a lake that is infested", () => {
    expect(budgetOf([["lake.infestedSince", 2024]])).toBeUndefined();
  });
});
