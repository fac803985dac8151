import { describe, expect, it } from "vitest";
import { renderReport } from "../../src/report/document/html.js";
import { reportView } from "../../src/report/document/report-view.js";
import type { TableView } from "../../src/report/words/view-types.js";
import { absent } from "../study/example.js";
import { amount, type Edit, smallRun } from "./edited.js";

const station = "options[station].station";

function staffed(...edits: readonly Edit[]) {
  const run = smallRun(edits);
  const [view] = reportView(run).program.stations;
  const [found] = run.staffing;
  if (!view || !found) throw new Error("the example has no station");
  return { run, view, ...found };
}

const cells = (table: TableView) => table.rows.map((row) => row.cells.map(({ text }) => text));
/** The rows of days, without the names of sites and their sums. */
const dayRows = (table: TableView) => cells(table).filter(([, days]) => (days ?? "") !== "");
const rounded = (value: number) => Math.round(value * 10) / 10;
const example = staffed();

describe("the staffing tables", () => {
  it("print for each day type what staffing found", () => {
    const rows = dayRows(example.view.needs);
    expect(rows).toHaveLength(example.staffing.dayTypes.length);
    for (const [index, each] of example.staffing.dayTypes.entries()) {
      const [day, days, boats, inspectors, wait, over, method, hours, cost] = rows[index] ?? [];
      const found = each.waits[each.inspectors - 1];
      expect(day).toContain(each.dayType.name);
      expect(amount(days)).toBe(each.dayType.daysPerYear);
      const boatsADay = each.dayType.arrivalsByHour.reduce((sum, hour) => sum + hour, 0);
      expect(amount(boats)).toBe(Number(boatsADay.toPrecision(3)));
      expect(inspectors).toBe(String(each.inspectors));
      expect(Number.parseFloat(wait ?? "")).toBe(rounded((found?.meanWaitHours.mean ?? 0) * 60));
      expect(Number.parseFloat(over ?? "")).toBe(rounded((found?.shareOverTarget.mean ?? 0) * 100));
      if ((found?.meanWaitHours.standardError ?? 0) * 60 >= 0.05) expect(wait).toContain("±");
      expect(method).toBe("simulation");
      const staffHours = each.staffHoursPerDay * each.dayType.daysPerYear;
      expect(Math.abs(amount(hours) / staffHours - 1)).toBeLessThan(1e-3);
      expect(amount(cost)).toBe(Math.round(staffHours * example.input.wagePerHour));
    }
    expect(rows[0]?.[0]).toContain("07:00–20:00");
  });

  it("are ordered by site, and add up to each and to all", () => {
    const rows = example.view.needs.rows.filter(({ group }) => group);
    expect(rows.map((row) => row.cells[0]?.text)).toEqual(["North ramp", "Dam ramp", "Willow Cove"]);
    const sums = cells(example.view.needs).filter(([name]) => name === "Sum");
    const hours = sums.map((row) => amount(row[7]));
    // each printed to four figures
    expect(
      Math.abs(hours.reduce((sum, each) => sum + each, 0) - example.staffing.staffHoursPerYear),
    ).toBeLessThan(2);
    expect(example.view.needs.total?.cells[0]?.text).toBe("All sites");
  });

  it("print a row for each budget, and nothing past the last", () => {
    const rows = cells(example.view.curve);
    expect(rows.map(([inspectors]) => inspectors)).toEqual(["1", "2", "3", "4", "5", "6"]);
    for (const [index, point] of example.staffing.curve.entries()) {
      expect(amount(rows[index]?.[4])).toBe(Math.round(point.costPerYear));
      expect(rows[index]?.[7]).toBe(
        point.oneMore ? `$${Math.round(point.oneMore.costAdded).toLocaleString("en-US")}` : "",
      );
    }
  });

  it("add up: the cost of the next row is that of the one before and what one more costs", () => {
    const rows = cells(example.view.curve);
    for (const [index, row] of rows.slice(0, -1).entries()) {
      // each of the three amounts is rounded to the unit
      expect(Math.abs(amount(row[4]) + amount(row[7]) - amount(rows[index + 1]?.[4]))).toBeLessThanOrEqual(
        1.5,
      );
    }
  });
});

describe("what is said of a station", () => {
  it("holds the hours that the target needs against those of the staff list", () => {
    const needed = Math.round(example.staffing.staffHoursPerYear).toLocaleString("en-US");
    expect(example.view.notes.join(" ")).toContain(
      `The staff list pays 5,000 h a year (Inspectors 4,300 h by 6 people and Supervisor 700 h by 1 person), 4,300 h of it inspectors; the target needs ${needed} h`,
    );
    const missing = Math.round(example.staffing.staffHoursPerYear - 4300).toLocaleString("en-US");
    expect(example.view.notes.join(" ")).toContain(`The list is ${missing} h of inspectors short.`);
    const enough = staffed(["options[station].staff[0].hoursPerYear", 20_000]);
    expect(enough.view.notes.join(" ")).not.toContain("short.");
  });

  it("names the day types on which the target is kept by less than two standard errors, and no others", () => {
    const close = example.days.filter((_, index) => {
      const { waits = [], inspectors = 0 } = example.staffing.dayTypes[index] ?? {};
      const { mean, standardError } = waits[inspectors - 1]?.shareOverTarget ?? { mean: 1, standardError: 0 };
      return mean + 2 * standardError > 1 - 0.9;
    });
    expect(close).toHaveLength(1);
    expect(example.view.notes[0]).toContain(
      `On “${close[0]?.name}” at ${close[0]?.siteName} the target is kept by less than`,
    );
    // 11 boats in the peak hour take 11 × (1 min + 3 % × 25 min) = 19.3 min: hardly any waits two hours
    const easy = staffed([`${station}.service.quickCheck`, "1 min"], [`${station}.target.wait`, "2 h"]);
    expect(easy.view.notes.join(" ")).not.toContain("standard errors:");
  });

  it("heads the chart with the step that first keeps the target", () => {
    const [one, two] = example.staffing.curve;
    const minutes = (hours = 0) => (hours * 60).toFixed(1);
    expect(example.view.chart.title).toContain(
      `A second inspector at each site cuts the mean wait from ${minutes(one?.meanWaitHours.mean)} to ${minutes(two?.meanWaitHours.mean)} minutes for $`,
    );
    expect(amount(/for (.*) a year/.exec(example.view.chart.title)?.[1])).toBeCloseTo(
      Number((one?.oneMore?.costAdded ?? 0).toPrecision(3)),
      6,
    );
  });

  it("says where no number allowed keeps the target", () => {
    const { view } = staffed([`${station}.mostInspectors`, 1]);
    expect(view.needs.rows[1]?.failed).toBe(true);
    expect(dayRows(view.needs)[0]?.[3]).toBe("1, too few");
    expect(view.notes[0]).toContain("Even 1 inspector, the most allowed at a site,");
    expect(view.notes[0]).toContain("“Fri–Sun, Jun–Aug” at North ramp");
  });

  it("says that Erlang C judged, without a standard error, where service is exponential and settles at once", () => {
    // at the peak, 11 boats an hour: a = 11 × 0.5/60 = 0.09, settles in 0.5 min/(1 − √0.09)² = 1 min, under 6 min
    const { view } = staffed(
      [`${station}.service.setAsideShare`, "0 %"],
      [`${station}.service.quickCheck`, "0.5 min"],
    );
    expect(new Set(dayRows(view.needs).map((row) => row[6]))).toEqual(new Set(["Erlang C"]));
    for (const row of cells(view.needs)) expect(row.join("")).not.toContain("±");
    expect(view.notes.join(" ")).toContain("Judged by Erlang C, hour by hour");
    expect(view.chart.title).toContain("One inspector at each site on all days keeps");
  });

  it("names both methods on a day whose peak does not settle", () => {
    // 53 % of 32 × 26,600/26,119 launches, less 39.1 % with a seal: a = 10.5 × 2/60 = 0.35, settles in
    // 2 min/(1 − √0.35)² = 12 min, more than a tenth of the hour; the first hour, 4.6 boats, in 2 min/(1 − √0.15)² = 5.4
    const { view } = staffed(
      [`${station}.service.setAsideShare`, "0 %"],
      [`${station}.service.quickCheck`, "2 min"],
    );
    expect(dayRows(view.needs)[0]?.[6]).toBe("Erlang C and simulation");
    expect(view.notes.join(" ")).toContain("a queue does not settle within a tenth of its hour");
  });

  it("tells one queue from queues of their own", () => {
    const ownQueues = "Each site has a queue of its own";
    expect(example.view.notes.join(" ")).toContain(ownQueues);
    const { view } = staffed(
      ["boats.sites", absent],
      ["options[weekends].open", [{ from: "07:00", to: "20:00" }]],
    );
    expect(view.notes.join(" ")).not.toContain(ownQueues);
    expect(view.notes.join(" ")).toContain("serve one queue");
    expect(view.needs.rows.some(({ group }) => group)).toBe(false);
    expect(view.chart.title).not.toContain("site");
  });

  it("is left out where no option has a station", () => {
    const run = smallRun([[station, absent]]);
    expect(reportView(run).program.stations).toEqual([]);
    expect(renderReport(run, { inline: false })).not.toContain("staffing");
  });
});
