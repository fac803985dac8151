import { describe, expect, it } from "vitest";
import { reportView } from "../../src/report/document/report-view.js";
import { dryOut, smallRun, withSchedule } from "./edited.js";
import { exampleRun } from "./runs.js";

const paying = exampleRun("sorrel-bend");
const notPaying = exampleRun("ninemoss");

const rowsOf = (run: typeof paying) =>
  reportView(run).comparison.breakEvenTable?.rows.map(({ cells }) => cells.map(({ text }) => text)) ?? [];

describe("the table of values at which the answer turns", () => {
  it("agrees with the first page and the balance", () => {
    const { board, comparison } = reportView(paying);
    const at = paying.comparison.options.findIndex(
      ({ result }) => result.option.id === paying.document.study.requestedOption,
    );
    const [chance, stopped, budget] = rowsOf(paying);
    // Printed to three figures here, to two on the first page: they may differ by half of its last digit.
    const printed = Number.parseFloat(/(?:from|between) ([\d.]+)%/.exec(chance?.[2] ?? "")?.[1] ?? "");
    expect(Math.abs(printed - Number.parseFloat(board.figures[4]?.value ?? ""))).toBeLessThan(0.0501);
    expect(budget?.[2]).toContain(comparison.balance?.rows[at]?.cells.at(-1)?.text);
    // 1 less the boats that slip through over those without a program, as the first page's chance rests on.
    const { baseline, options } = paying.comparison;
    const share = 1 - (options[at]?.result.arrivals.slipThrough ?? 0) / baseline.arrivals.slipThrough;
    // Printed to three figures.
    expect(Math.abs(Number.parseFloat(stopped?.[1] ?? "") - 100 * share)).toBeLessThanOrEqual(0.05);
  });

  it("has a row for each quantity, and says of each whether there are others", () => {
    for (const run of [paying, notPaying]) {
      const rows = rowsOf(run);
      expect(rows).toHaveLength(5);
      for (const [, , pays, others] of rows) {
        expect(pays).toMatch(/^(between|from|up to|not from|no such value)/);
        expect(others).toMatch(/^none( found)?$/);
      }
    }
  });

  it("has no number of boats stopped at which an option without steps pays", () => {
    const run = smallRun([...withSchedule, ["study.requestedOption", dryOut.id]], dryOut);
    expect(rowsOf(run)[1]?.[2]).toBe("no such value; searched: none to all of them");
  });

  it("is left out for a lake that is infested", () => {
    expect(reportView(smallRun([["lake.infestedSince", 2024]])).comparison.breakEvenTable).toBeUndefined();
  });
});
