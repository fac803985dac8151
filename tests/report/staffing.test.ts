import { describe, expect, it } from "vitest";
import { renderReport } from "../../src/report/html.js";
import { reportView } from "../../src/report/report-view.js";
import type { TableView } from "../../src/report/view-types.js";
import { absent } from "../study/example.js";
import { amount, type Edit, editedRun } from "./edited.js";

const station = "options[station].station";

function staffed(...edits: readonly Edit[]) {
  const run = editedRun(edits);
  const [view] = reportView(run).program.stations;
  const [found] = run.staffing;
  if (!view || !found) throw new Error("the example has no station");
  return { run, view, ...found };
}

const cells = (table: TableView) => table.rows.map((row) => row.cells.map(({ text }) => text));
const rounded = (value: number) => Math.round(value * 10) / 10;
const example = staffed();

describe("the staffing tables", () => {
  it("print for each day type what staffing found", () => {
    const rows = cells(example.view.needs);
    expect(rows).toHaveLength(example.staffing.dayTypes.length);
    for (const [index, each] of example.staffing.dayTypes.entries()) {
      const [day, days, boats, inspectors, wait, over, method, hours, cost] = rows[index] ?? [];
      const found = each.waits[each.inspectors - 1];
      expect(day).toContain(each.dayType.name);
      expect(amount(days)).toBe(each.dayType.daysPerYear);
      expect(amount(boats)).toBe(each.dayType.arrivalsByHour.reduce((sum, hour) => sum + hour, 0));
      expect(inspectors).toBe(String(each.inspectors));
      expect(Number.parseFloat(wait ?? "")).toBe(rounded((found?.meanWaitHours.mean ?? 0) * 60));
      expect(Number.parseFloat(over ?? "")).toBe(rounded((found?.shareOverTarget.mean ?? 0) * 100));
      expect(wait).toContain("±");
      expect(method).toBe("simulation");
      const staffHours = each.staffHoursPerDay * each.dayType.daysPerYear;
      expect(Math.abs(amount(hours) / staffHours - 1)).toBeLessThan(1e-3);
      expect(amount(cost)).toBe(Math.round(staffHours * example.input.wagePerHour));
    }
    expect(rows[0]?.[0]).toContain("07:00–20:00");
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
      `The staff list pays 5,000 h a year (Inspectors 4,300 h and Supervisor 700 h); the target needs ${needed} h`,
    );
    const short = staffed(["options[station].staff[0].hoursPerYear", 1000]);
    const missing = Math.round(example.staffing.staffHoursPerYear - 1700).toLocaleString("en-US");
    expect(short.view.notes.join(" ")).toContain(`The list is ${missing} h short.`);
  });

  it("names the day types on which the target is kept by less than two standard errors, and no others", () => {
    const close = example.staffing.dayTypes.filter(({ waits, inspectors }) => {
      const { mean, standardError } = waits[inspectors - 1]?.shareOverTarget ?? { mean: 1, standardError: 0 };
      return mean + 2 * standardError > 1 - 0.9;
    });
    expect(close).toHaveLength(1);
    expect(example.view.notes[0]).toContain(`On “${close[0]?.dayType.name}” the target is kept by less than`);
    // 22 boats in the peak hour take 22 × (1 min + 3 % × 25 min) = 38.5 min: hardly any waits two hours
    const easy = staffed([`${station}.service.quickCheck`, "1 min"], [`${station}.target.wait`, "2 h"]);
    expect(easy.view.notes.join(" ")).not.toContain("standard errors:");
  });

  it("heads the chart with the step that first keeps the target", () => {
    const [one, two] = example.staffing.curve;
    const minutes = (hours = 0) => (hours * 60).toFixed(1);
    expect(example.view.chart.title).toContain(
      `One more inspector than 1 cuts the mean wait from ${minutes(one?.meanWaitHours.mean)} to ${minutes(two?.meanWaitHours.mean)} minutes for $`,
    );
    expect(amount(/for (.*) a year/.exec(example.view.chart.title)?.[1])).toBeCloseTo(
      Number((one?.oneMore?.costAdded ?? 0).toPrecision(3)),
      6,
    );
  });

  it("says where no number allowed keeps the target", () => {
    const { view } = staffed([`${station}.mostInspectors`, 1]);
    expect(view.needs.rows[0]?.failed).toBe(true);
    expect(cells(view.needs)[0]?.[3]).toBe("1, too few");
    expect(view.notes[0]).toContain("do not keep the target on “Weekend, Jun–Aug”");
    expect(view.chart.title).toContain("With one inspector on all days");
  });

  it("says that Erlang C judged, without a standard error, where service is exponential and settles at once", () => {
    // at the peak, 22 boats an hour: a = 22 × 0.5/60 = 0.18, settles in 0.5 min/(1 − √0.18)² = 1.5 min, under 6 min
    const { view } = staffed(
      [`${station}.service.setAsideShare`, "0 %"],
      [`${station}.service.quickCheck`, "0.5 min"],
    );
    expect(new Set(cells(view.needs).map((row) => row[6]))).toEqual(new Set(["Erlang C"]));
    for (const row of cells(view.needs)) expect(row.join("")).not.toContain("±");
    expect(view.notes.join(" ")).toContain("Judged by Erlang C, hour by hour");
    expect(view.chart.title).toContain("One inspector on all days keeps");
  });

  it("names both methods on a day whose peak does not settle", () => {
    // a = 22 × 1/60 = 0.37, settles in 1 min/(1 − √0.37)² = 6.4 min, more than a tenth of the hour; the hours before do
    const { view } = staffed(
      [`${station}.service.setAsideShare`, "0 %"],
      [`${station}.service.quickCheck`, "1 min"],
    );
    expect(cells(view.needs)[0]?.[6]).toBe("Erlang C and simulation");
    expect(view.notes.join(" ")).toContain("a queue does not settle within a tenth of its hour");
  });

  it("is left out where no option has a station", () => {
    const run = editedRun([[station, absent]]);
    expect(reportView(run).program.stations).toEqual([]);
    expect(renderReport(run, { inline: false })).not.toContain("staffing");
  });
});
