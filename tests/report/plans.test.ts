import { describe, expect, it } from "vitest";
import { tableFiles } from "../../src/forms/tables.js";
import { renderReport } from "../../src/report/document/html.js";
import { reportView } from "../../src/report/document/report-view.js";
import { planPicks } from "../../src/report/rack/plan-picks.js";
import { type RowView, type TableView, tableFileName } from "../../src/report/words/view-types.js";
import { runStudy } from "../../src/study/prepare/compute.js";
import { amount, editedRun } from "./edited.js";
import { assumptions, exampleDocument, exampleRun } from "./runs.js";

const run = exampleRun("sorrel-bend");
const plansOf = (study = run) => {
  const { plans } = reportView(study);
  if (!plans) throw new Error("the report has no plans");
  return plans;
};
const triedTables = () => {
  const { shown: detailed, others } = plansOf();
  return [...detailed.map(({ tried }) => tried), ...others];
};
const cell = ({ cells }: RowView, index: number) => cells[index]?.text ?? "";

/** Rows of a table under a group heading. */
function section({ rows }: TableView, title: string): RowView[] {
  const start = rows.findIndex((each) => each.group && cell(each, 0) === title);
  if (start === -1) return [];
  const end = rows.findIndex((each, index) => index > start && each.group);
  return rows.slice(start + 1, end === -1 ? undefined : end);
}

// A logarithmic axis of the charts names its lowest end: with one digit, no odd number stands there.
it("charts of cost against interval begin at a plain number where their axis is logarithmic", () => {
  const charts = run.comparison.structures.flatMap(({ structure, components }) =>
    components.map(
      ({ name }) => planPicks(run, { structure: structure.id, part: name }).open?.intervals?.chart,
    ),
  );
  const lowest = charts.flatMap((chart) => {
    const { y } = JSON.parse(chart?.json ?? "{}").options?.scales ?? {};
    return y?.type === "logarithmic" ? [Number(y.min)] : [];
  });
  expect(lowest.length).toBeGreaterThan(0);
  for (const min of lowest) expect(min.toExponential()).toMatch(/^[1-9]e/);
});

describe("the appendix of protection plans", () => {
  it("marks as chosen the least of the printed costs that keep every limit", () => {
    const tables = triedTables();
    expect(tables.length).toBeGreaterThan(3);
    for (const tried of tables) {
      const kept = section(tried, "Keep every limit");
      const chosen = kept.filter((each) => cell(each, 2) === "chosen");
      expect(chosen).toHaveLength(1);
      for (const each of kept) {
        expect(amount(cell(each, 1))).toBeGreaterThanOrEqual(amount(chosen[0]?.cells[1]?.text));
      }
    }
  });

  it("prints for each part the plan and cost of the model", () => {
    const components = run.comparison.structures.flatMap((each) => each.components);
    const printed = plansOf().overview.rows.map((each) => [cell(each, 2), cell(each, 3)]);
    expect(printed).toHaveLength(components.length);
    for (const { plan, yearlyCost } of components.map(({ chosen }) => chosen)) {
      const cost = Math.round(yearlyCost);
      const text = cost > 0 && cost < 100 ? "under $100" : `$${cost.toLocaleString("en-US")}`;
      expect(printed).toContainEqual([plan.label, text]);
    }
  });

  it("gives every plan tried a place, and names the limit of each that passes one", () => {
    for (const tried of triedTables()) {
      for (const each of section(tried, "Pass a limit at times")) expect(cell(each, 2)).not.toBe("");
      for (const each of section(tried, "Not feasible here")) expect(cell(each, 2)).not.toBe("");
    }
    const [first] = plansOf().shown;
    const intervals = first?.intervals?.table.rows ?? [];
    const named = run.comparison.structures.flatMap(({ structure, components }) =>
      components.map((component) => ({ component, name: `${structure.name}: ${component.name}` })),
    );
    const part = named.find(({ name }) => name === first?.name)?.component;
    for (const { plan, yearlyCost, brokenLimit } of part?.everyPlan() ?? []) {
      if (plan.entry.id !== "divers" || plan.routine.by !== "interval") continue;
      const { months } = plan.routine;
      const printed = intervals.find((each) => cell(each, 0) === String(months));
      expect(amount(printed?.cells[1]?.text)).toBe(Math.round(yearlyCost));
      expect(printed?.cells[2]?.text).toBe(brokenLimit ?? "none");
    }
    expect(intervals.length).toBeGreaterThan(5);
  });

  it("draws a chart for the most expensive part, from a table that is a file", () => {
    const charts = plansOf().shown.flatMap(({ intervals }) => intervals ?? []);
    expect(charts).toHaveLength(1);
    const html = renderReport(run, { inline: false });
    const files = tableFiles(reportView(run)).map(({ fileName }) => fileName);
    for (const { chart } of charts) {
      expect(html).toContain(`<div id="${chart.id}" class="chart"`);
      expect(html).toContain(`Figures: ${tableFileName(chart.tableId)} in the tables as files`);
      expect(files).toContain(tableFileName(chart.tableId));
    }
  });

  it("names in the numbers of the plans only assumptions of appendix C", () => {
    const { numbers } = plansOf().register;
    const named = numbers?.rows.flatMap((each) =>
      each.cells.flatMap(({ text }) => [...text.matchAll(/\((A\d+)\)/g)].map((match) => match[1])),
    );
    const listed = reportView(run).appendix.assumptions.rows.map((each) => cell(each, 0).split(" ")[0]);
    expect(named?.length).toBeGreaterThan(8);
    for (const number of named ?? []) expect(listed).toContain(number);
  });

  it("has a caution for each plan taken", () => {
    const { plans } = plansOf().register;
    expect(plans.length).toBeGreaterThan(2);
    for (const { cautions, permits } of plans) {
      for (const text of [cautions, permits]) expect(text).not.toBe("");
    }
  });
});

describe("a plan that the study prescribes", () => {
  const pinned = editedRun([
    [
      "structures[city-intake].pinned",
      [{ part: "conduit", plan: "divers-6", reason: "<b>The city</b> allows no oxidant" }],
    ],
  ]);

  it("is told with its reason, the cheapest plan and what it costs more", () => {
    const part = plansOf(pinned).shown.find(({ isPrescribed }) => isPrescribed);
    const component = pinned.comparison.structures[0]?.components.find(({ name }) => name === "conduit");
    const text = part?.facts.join(" ") ?? "";
    const [more] = /costs (\$[\d,]+) a year more/.exec(text)?.slice(1) ?? [];
    expect(text).toContain("allows no oxidant");
    expect(text).toContain(component?.pinned?.cheapest.plan.label);
    const difference = (component?.chosen.yearlyCost ?? 0) - (component?.pinned?.cheapest.yearlyCost ?? 0);
    expect(amount(more)).toBe(Math.round(difference));
    expect(renderReport(pinned, { inline: false })).not.toContain("<b>The city</b>");
  });

  it("is marked in the table of parts", () => {
    const rows = reportView(pinned).lake.structures.rows.map((each) => cell(each, 3));
    expect(rows.filter((text) => text.includes("(prescribed)"))).toHaveLength(1);
  });
});

describe("a study of many structures", () => {
  const document = exampleDocument("sorrel-bend");
  const many = (priceStep: number) => {
    const marina = document.structures.find(({ id }) => id === "marina");
    if (marina?.kind !== "dock") throw new Error("the example has no marina");
    const structures = Array.from({ length: 100 }, (_, index) => ({
      ...marina,
      id: `marina-${index}`,
      name: `Marina ${index}`,
      replacementCost: {
        ...marina.replacementCost,
        value: marina.replacementCost.value + index * priceStep,
      },
    }));
    return plansOf(runStudy({ ...document, structures }, assumptions));
  };

  it("tells parts that are alike once", () => {
    const { overview, shown: detailed, others } = many(0);
    expect(overview.rows).toHaveLength(1);
    expect(overview.rows[0]?.cells[0]?.text).toContain("99 like it");
    expect([detailed.length, others.length]).toEqual([1, 0]);
  });

  it("tells the most expensive in detail, has a table of 12, and sums up those past the 60th", () => {
    const { overview, shown: detailed, others } = many(1000);
    expect([detailed.length, others.length]).toEqual([1, 11]);
    expect(overview.rows).toHaveLength(61);
    const printed = overview.rows.slice(0, 60).reduce((sum, each) => sum + amount(cell(each, 3)), 0);
    const rest = amount(overview.rows[60]?.cells[3]?.text);
    // each of the 61 amounts is rounded to the unit
    expect(Math.abs(printed + rest - amount(overview.total?.cells[3]?.text))).toBeLessThanOrEqual(31);
  });
});
