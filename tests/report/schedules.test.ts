import { describe, expect, it } from "vitest";
import { totalOf } from "../../src/model/money/line.js";
import { renderReport } from "../../src/report/document/html.js";
import { reportView } from "../../src/report/document/report-view.js";
import type { TableView } from "../../src/report/words/view-types.js";
import { amount, deeper, dryOut, editedRun, smallRun, withSchedule } from "./edited.js";
import { exampleRun } from "./runs.js";

const run = editedRun(withSchedule, dryOut);
const view = reportView(run);
const [own, other] = run.comparison.schedules;
if (!other || !view.schedules) throw new Error("the study has no other schedule");
const { schedules } = view;

const table = schedules.tables[0] as TableView;
const rowOf = (label: string) => {
  const found = table.rows.find(({ cells }) => cells[0]?.text.startsWith(label));
  if (!found) throw new Error(`no row ${label}`);
  return found.cells.map(({ text }) => text);
};

describe("schedules side by side", () => {
  it("are left out of a study that has only its own levels", () => {
    expect(reportView(exampleRun("ninemoss")).schedules).toBeUndefined();
  });

  it("print operating lines that add up to the yearly cost of the option that follows it", () => {
    const start = table.rows.findIndex(({ cells }) => cells[0]?.text === "Following it, a year");
    const end = table.rows.findIndex(({ cells }) => cells[0]?.text === "Sum");
    const lines = table.rows.slice(start + 1, end).map(({ cells }) => amount(cells[2]?.text));
    const follower = run.comparison.options.find(({ result }) => result.option.id === dryOut.id);
    const perYear = follower?.result.schedulePerYear.toNumber() ?? Number.NaN;
    expect(lines.length).toBeGreaterThan(3);
    // each line is rounded to the unit
    expect(Math.abs(lines.reduce((sum, each) => sum + each, 0) - perYear)).toBeLessThanOrEqual(
      lines.length / 2,
    );
    expect(amount(rowOf("Sum")[2])).toBe(Math.round(perYear));
  });

  it("print levels as the study has them", () => {
    expect(rowOf("Lowest level").slice(1)).toEqual(["2,100", "2,088"]);
    expect(rowOf("Highest level").slice(1)).toEqual(["2,136", "2,136"]);
    // The worst day is 1 December, 2,104 ft against 2,092 ft. By the example's storage table the areas are 2,640 acres
    // at 2,092 ft, 3,000 at 2,100 ft and 3,200 at 2,104 ft: means 2,820 over 8 ft and 3,100 over 4 ft.
    expect(amount(rowOf("Storage given up")[2])).toBe(2820 * 8 + 3100 * 4);
  });

  it("say in money what a schedule saves and costs, and what is left of it", () => {
    const text = schedules.findings[0] ?? "";
    expect(text).toContain(`“${deeper.name}”`);
    const difference = amount(rowOf("More than as operated")[2]);
    const cost = totalOf(other.operating).toNumber();
    const [saved, costs, net] = [...text.matchAll(/\$[\d,]+/g)].map((match) => amount(match[0]));
    const near = (value: number) => Number(Math.abs(value).toPrecision(3));
    expect(saved).toBeCloseTo(near(difference), -2);
    expect(costs).toBeCloseTo(near(cost), -2);
    expect(net).toBeCloseTo(near(difference + cost), -2);
    expect(text).toContain(difference + cost > 0 ? "more than the levels as operated" : "Together it saves");
  });

  it("draw each schedule, and warn of what a fall of the lake endangers", () => {
    expect(schedules.chart.json).toContain(deeper.name);
    const cautions = schedules.cautions.join(" ");
    for (const word of ["operating rules", "Exposed", "razor-sharp", "Native mussels", "fish", "Permits"])
      expect(cautions).toContain(word);
  });

  it("split into tables of three beside the own levels", () => {
    const many = Array.from({ length: 4 }, (_, index) => ({
      ...deeper,
      id: `s${index}`,
      name: `S ${index}`,
    }));
    const { tables } = reportView(smallRun([["lake.otherSchedules", many]])).schedules ?? { tables: [] };
    expect(tables.map(({ head }) => head.length)).toEqual([5, 3]);
    for (const { head } of tables) expect(head[1]?.text.toLowerCase()).toBe(own.name);
  });

  it("let no name become markup", () => {
    const name = '</script><script>alert(1)</script> & "x"';
    const hostile = smallRun(
      [
        ["lake.otherSchedules", [{ ...deeper, name }]],
        ["lake.storageValue", "$2/acre-ft"],
        ["lake.storageValueOrigin", name],
      ],
      { ...dryOut, name },
    );
    const html = renderReport(hostile, { inline: false });
    expect(html).not.toContain("<script>alert");
    expect(html).toContain("&lt;script&gt;alert(1)&lt;/script&gt;");
  });
});

describe("an option that follows a schedule", () => {
  const { cost, funnel } = view.program;

  it("has the lines of following it in the table of costs, with their sum", () => {
    const start = cost.rows.findIndex(({ cells }) => cells[0]?.text.includes("following"));
    const lines = cost.rows.slice(start + 1);
    const sum = amount(lines.at(-1)?.cells.at(-1)?.text);
    expect(lines.at(-1)?.cells[1]?.text).toBe("Sum");
    expect(lines).toHaveLength(other.operating.length + 1);
    expect(sum).toBe(totalOf(other.operating).toNumber());
  });

  it("is not in the funnel of boats, since it stops none", () => {
    expect(funnel?.boats.rows.map(({ cells }) => cells[0]?.text)).not.toContain(dryOut.name);
    expect(funnel?.boats.rows).toHaveLength(run.comparison.options.length);
  });
});
