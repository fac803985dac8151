import { expect, it } from "vitest";
import { renderReport } from "../../src/report/document/html.js";
import { reportView } from "../../src/report/document/report-view.js";
import type { PrintedOdds } from "../../src/report/odds/odds-words.js";
import { resultsJson } from "../../src/report/results/results.js";
import { editedRun } from "./edited.js";
import { sampleTold } from "./sample-odds.js";

const run = editedRun([["lake.infestedSince", 2024]]);
const { odds } = sampleTold("sorrel-bend");
/** Nothing moves a net benefit where no loss can be avoided. */
const told: PrintedOdds = {
  odds: { ...odds, information: [], matters: { netBenefit: 0, tornado: [], ranks: [] } },
  sensitivitySentences: [],
};
const view = reportView(run, told);

it("an infested lake's report keeps its own answer, with no headline of a chance", () => {
  expect(view.board.answer).toContain("This is a maintenance budget");
  expect([view.board.bridge, view.board.ranked, view.board.accounts, view.comparison.headline]).toEqual([
    undefined,
    undefined,
    undefined,
    undefined,
  ]);
  expect(resultsJson(run, told.odds)).toHaveProperty("headline", null);
});

it("an infested lake's report has no empty picture of what matters and no table without rows", () => {
  expect(view.odds?.pictures.tornado).toBeUndefined();
  expect(view.odds?.tables.filter(({ rows }) => rows.length === 0)).toEqual([]);
  expect(renderReport(run, { inline: false }, {}, told)).not.toContain("table-tornado");
});

it("an infested lake's tables have no column of a chance that is 100% in every row", () => {
  for (const { head, rows } of [view.comparison.options, view.comparison.yearly]) {
    head.forEach((_, place) => {
      expect(rows.every(({ cells }) => cells[place]?.text === "100%")).toBe(false);
    });
    for (const { cells } of rows) expect(cells).toHaveLength(head.length);
  }
});
