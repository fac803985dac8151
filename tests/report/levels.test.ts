import { describe, expect, it } from "vitest";
import { renderReport } from "../../src/report/document/html.js";
import { reportView } from "../../src/report/document/report-view.js";
import { absent } from "../study/example.js";
import { csvOf, datesFrom } from "../study/records.js";
import { amount, editedRun } from "./edited.js";
import { exampleRun } from "./runs.js";

/**
 * Days of low water from 1 January: 31 in 2011, 59 in 2012 (a leap year, 29 February left out), 90 in 2013: to the
 * end of January, February and March by the calendar.
 */
const lastLowMonth: Record<string, string> = { "2011": "01", "2012": "02", "2013": "03" };
const low = (date: string) => date.slice(5, 7) <= (lastLowMonth[date.slice(0, 4)] ?? "00");
const csv = csvOf(
  datesFrom("2010-11-01", "2013-12-31"),
  (date) => (low(date) ? '"2,100"' : '"2,130"'),
  "date,elevation (ft)",
).replace(/^2011-07-0[1-3].*\n/gm, "");

const run = editedRun([
  ["lake.drawdown", absent],
  ["lake.record", { csv, fillGapsUpTo: 3, origin: "invented <gauge>" }],
]);

describe("the levels of a record", () => {
  const { lake, charts } = reportView(run);
  const text = lake.facts.join(" ");

  it("are told with their years, what was left out and joined, and the weight of a year", () => {
    expect(text).toContain("3 years, 2011 to 2013");
    expect(text).toContain("2010 (from 1 Nov)");
    expect(text).toContain("3 days in 2011");
    expect(text).toContain("all equally likely");
  });

  it("give days dry and the longest run with its dates, as the calendar has them", () => {
    const intake = lake.dryRuns?.rows.find(({ cells }) => cells[0]?.text.includes("irrigation"));
    const [, elevation, mean, range, longest, dates] = intake?.cells.map((each) => each.text) ?? [];
    expect(elevation).toBe("2,109.0");
    expect(mean).toBe(String((31 + 59 + 90) / 3));
    expect(range).toBe("31–90");
    expect(longest).toBe("90");
    expect(dates).toBe("1 Jan to 31 Mar in 2013");
  });

  it("show the lowest and highest year beside the mean", () => {
    // February: under low water in two of the three years
    const february = lake.levels.rows[1]?.cells.map((each) => amount(each.text)) ?? [];
    expect(february.slice(1, 4)).toEqual([2110, 2100, 2130]);
    expect(charts.levels.json).toContain("Lowest to highest year");
  });

  it("are nowhere called a drawdown schedule, and their origin is no markup", () => {
    const html = renderReport(run, { inline: false });
    const own = html.slice(0, html.indexOf("How it is computed"));
    expect(own).not.toMatch(/drawdown schedule|operating schedule/i);
    expect(html).not.toContain("<gauge>");
  });
});

describe("the levels of a schedule", () => {
  it("say so, with the dry run of each structure in the band", () => {
    const { lake, charts } = reportView(exampleRun("sorrel-bend"));
    expect(lake.facts[0]).toContain("The operating schedule moves the lake");
    expect(charts.levels.json).not.toContain("Lowest to highest year");
    // 2,109 ft lies between 2,126 ft on 15 September and 2,104 ft on 1 December, and between 2,100 ft on 1 February
    // and 2,136 ft on 1 June: by straight lines the level is lower from 59.5 days after 15 September to 30.0 days after 1 February.
    const intake = lake.dryRuns?.rows.find(({ cells }) => cells[0]?.text.includes("irrigation"));
    expect(intake?.cells.at(-1)?.text).toBe("14 Nov to 2 Mar");
  });
});
