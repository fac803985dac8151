import { describe, expect, it } from "vitest";
import { comparisonText } from "../../src/cli/comparison-text.js";
import { renderPage } from "../../src/report/document/render-page.js";
import { reportView } from "../../src/report/document/report-view.js";
import type { TableView } from "../../src/report/words/view-types.js";
import { absent } from "../study/example.js";
import { amount, smallRun } from "./edited.js";
import { exampleRun } from "./runs.js";

const run = smallRun([]);
const { program } = reportView(run);
const cells = (table: TableView | undefined) =>
  (table?.rows ?? []).map((row) => row.cells.map(({ text }) => text));
const sum = (values: readonly number[]) => values.reduce((total, each) => total + each, 0);

describe("the table of open hours against launches", () => {
  const [weekends, fullSeason] = program.coverage;

  it("stands for each option with open hours, and ends with its coverage", () => {
    expect(program.coverage.map(({ caption }) => caption)).toEqual([
      "Hours open against launches: Weekend stations",
      "Hours open against launches: Full-season stations",
    ]);
    for (const [index, table] of program.coverage.entries()) {
      const printed = amount(table.total?.cells.at(-1)?.text) / 100;
      expect(Math.abs(printed - (run.coverage[index]?.coverage ?? 0))).toBeLessThan(0.0005);
    }
  });

  it("has rows that add up to the launches and to those met", () => {
    for (const table of [weekends, fullSeason]) {
      const rows = cells(table);
      // each row printed to three figures
      expect(Math.abs(sum(rows.map((row) => amount(row[4]))) / 26_600 - 1)).toBeLessThan(0.005);
      const met = amount(table?.total?.cells[5]?.text);
      expect(Math.abs(sum(rows.map((row) => amount(row[5]))) / met - 1)).toBeLessThan(0.01);
    }
  });

  it("tells sites with the same hours together, and where none is open", () => {
    expect(
      cells(weekends)
        .slice(0, 3)
        .map((row) => row.slice(0, 3)),
    ).toEqual([
      ["Fri–Sun, Jun–Aug", "North ramp and Dam ramp", "07:00–20:00"],
      ["Fri–Sun, Jun–Aug", "Willow Cove", "closed"],
      ["Mon–Thu, Jun–Aug", "All sites", "closed"],
    ]);
    expect(cells(fullSeason)).toHaveLength(5);
  });
});

describe("the table of the traffic", () => {
  it("brings the launches of the year", () => {
    // 26,600 launches entered
    expect(amount(program.traffic?.total?.cells.at(-1)?.text)).toBe(26_600);
    expect(program.traffic?.note).toContain(
      "North ramp 53%, Dam ramp 30%, and Willow Cove 17% of the launches",
    );
    // 32 of 26,119 launches a year, scaled to 26,600
    expect(cells(program.traffic)[0]?.[3]).toBe("32.6 from 09:00");
  });

  it("says of counts what was counted, what was not, and that holidays are not known", () => {
    const csv = "date,hour,launches\n2024-07-06,8,12\n2024-07-06,9,9\n2024-07-08,8,5\n2024-07-08,9,5\n";
    const monthGroups = [{ id: "summer", name: "Jun–Aug", months: ["jun", "jul", "aug"] }];
    const always = [{ from: "07:00", to: "20:00" }];
    const counted = smallRun([
      ["boats.traffic", { csv, monthGroups, origin: "gate counter" }],
      ["options[weekends].open", always],
      ["options[full-season].open", always],
      ["options[full-season].station", absent],
    ]);
    const { traffic } = reportView(counted).program;
    expect(cells(traffic).map((row) => row.at(-1))).toEqual(["1", "1"]);
    expect(traffic?.note).toContain("No date was counted in jun and aug");
    expect(traffic?.note).toContain("public holidays are not known");
    // counts of the summer alone against launches from February to November
    expect(counted.comparison.checks.find(({ what }) => what.includes("by month"))?.passed).toBe(false);
  });
});

describe("the lines at the ramp", () => {
  it("say of each option its coverage, where it comes from and what its stations need", () => {
    const needed = Math.round(run.staffing[0]?.staffing.staffHoursPerYear ?? 0).toLocaleString("en-US");
    expect(program.atTheRamp).toHaveLength(2);
    expect(program.atTheRamp[0]).toMatch(
      /^Weekend stations: coverage 47\.4% of launches, computed .*; waiting time not assessed/,
    );
    expect(program.atTheRamp[1]).toContain(`inspectors needed ${needed} h a year, paid 4,300 h`);
    expect(program.atTheRamp[1]).toContain("the waiting-time target is met every day");
  });

  it("say where the target is not kept", () => {
    const few = reportView(smallRun([["options[station].station.mostInspectors", 1]])).program;
    expect(few.atTheRamp[1]).toMatch(/the waiting-time target is missed on \d+ of 15 types of day and site/);
  });

  it("stand in the text for a terminal and on the page of the comparison", () => {
    const text = comparisonText(run);
    const page = renderPage("partials/results-body", { ...reportView(run), links: { report: "/r" } });
    for (const line of program.atTheRamp) {
      expect(text).toContain(line);
      expect(page).toContain(line);
    }
    expect(text).toContain("Hours open against launches: Full-season stations");
    expect(page).toContain("Hours open against launches: Full-season stations");
  });

  it("tell a coverage that was entered from one that was computed", () => {
    const { atTheRamp, coverage, traffic } = reportView(exampleRun("ninemoss")).program;
    expect(atTheRamp).toEqual([
      "Signs and self-declaration: coverage 100% of launches, as entered; waiting time not assessed.",
      "Staffed summer checks: coverage 80% of launches, as entered; waiting time not assessed.",
    ]);
    expect(coverage).toEqual([]);
    expect(traffic).toBeUndefined();
  });
});
