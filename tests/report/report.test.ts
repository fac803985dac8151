import { describe, expect, it } from "vitest";
import { tableFiles } from "../../src/forms/tables.js";
import { methodView } from "../../src/method/method-view.js";
import { reportContext } from "../../src/report/document/context.js";
import { renderReport } from "../../src/report/document/html.js";
import { method } from "../../src/report/document/method.js";
import { inlineAssets } from "../../src/report/document/render-page.js";
import { reportView } from "../../src/report/document/report-view.js";
import type { TableView } from "../../src/report/words/view-types.js";
import { tableFileName } from "../../src/report/words/view-types.js";
import { runStudy } from "../../src/study/prepare/compute.js";
import { assumptions, computedAnew, exampleDocument, exampleRun } from "./runs.js";
import { sampleTold } from "./sample-odds.js";

const paying = exampleRun("sorrel-bend");
const notPaying = exampleRun("ninemoss");

const amount = (text: string) => Number(text.replace("−", "-").replace(/[^0-9.-]/g, ""));
const column = (table: TableView, index: number) =>
  table.rows.flatMap((row) => (row.cells[index] === undefined ? [] : [row.cells[index].text]));

describe("the report's first page", () => {
  it("prints the program's yearly cost and the expected infestation cost of the results, rounded to three figures", () => {
    const { board } = reportView(paying);
    const { comparison } = paying;
    const requested = reportContext(paying).requested;
    expect(amount(board.figures[0]?.value ?? "")).toBeCloseTo(
      Number(requested.result.programPerYear.toNumber().toPrecision(3)),
      6,
    );
    expect(amount(board.figures[1]?.value ?? "")).toBeCloseTo(
      Number(comparison.baseline.equivalentYearly.infestation.toNumber().toPrecision(3)),
      6,
    );
  });

  it("has five figures, a question and an answer", () => {
    const { board } = reportView(paying);
    expect(board.figures).toHaveLength(5);
    expect(board.question).toContain("Sorrel Bend Reservoir");
    expect(board.answer.startsWith(board.pays ? "Yes" : "No")).toBe(true);
  });

  it("says yes to a program that costs next to nothing", () => {
    const document = exampleDocument("sorrel-bend");
    const options = document.options.map((option) => ({ ...option, staff: [], equipment: [] }));
    const structures = document.structures.filter(({ kind }) => kind === "lake-wide");
    const { board } = reportView(runStudy({ ...document, options, structures }, assumptions));
    expect(board.answer).toMatch(/^Yes/);
    expect(board.asked).toContain("is asked to approve");
  });

  it("says as plainly when a program is not worth its cost", () => {
    const { board } = reportView(notPaying);
    expect(board.answer).toMatch(/^No\. .* costs more than it saves on our best estimate: /);
    expect(board.asked).toContain("These figures do not support approving");
  });

  it("says that the answer turns within the ranges where it does", () => {
    // A busy lake of a region without checks risks about twice as much as the others.
    const document = exampleDocument("sorrel-bend");
    const chance = { ...document.boats.chance, lakes: "busy" } as const;
    const busy = runStudy({ ...document, boats: { ...document.boats, chance } }, assumptions);
    expect(reportView(busy).board.answer).toContain("some plausible assumptions reverse this");
    expect(reportView(notPaying).board.answer).not.toContain("reverse this");
  });

  it("turns into a maintenance budget for a lake that is infested already", () => {
    const document = exampleDocument("sorrel-bend");
    const lake = { ...document.lake, infestedSince: 2024, otherSchedules: [] };
    const options = document.options.filter(({ schedule }) => schedule === undefined);
    const infested = runStudy({ ...document, lake, options }, assumptions);
    const { board } = reportView(infested);
    expect(board.answer).toContain("maintenance budget");
    expect(board.question).toContain("infested since 2024");
    expect(infested.comparison.baseline.infestedByYear.every((chance) => chance === 1)).toBe(true);
    expect(board.balance).toBeUndefined();
    const text = renderReport(infested, { inline: false }).replace(/<[^>]+>/g, " ");
    for (const words of [
      "Benefit–cost ratio",
      "Break-even",
      "does not pay",
      "doing nothing",
      "Fouled at the ramp",
      "NaN",
    ]) {
      expect(text).not.toContain(words);
    }
  });
});

describe("the words that are the same for every study", () => {
  // A study may override any assumption: a coefficient repeated in fixed text would then be untrue.
  it("repeat no coefficient of the assumptions", () => {
    const text = method.steps.join(" ");
    for (const id of [
      "shell.mass-intercept",
      "shell.mass-exponent",
      "hydraulics.largest-roughness-ratio",
      "population.peak-share",
    ]) {
      expect(text).not.toContain(String(Math.abs(assumptions.entries.get(id)?.value ?? Number.NaN)));
    }
  });

  it("cite only sources that are listed", () => {
    const keys = new Set(assumptions.sources.keys());
    for (const [, key = ""] of `${method.accuracy}`.matchAll(/\[([a-z0-9-]+)/g)) expect(keys).toContain(key);
  });
});

describe("the tables", () => {
  it("add up: cost lines to the expected present value of an infestation without a program", () => {
    for (const run of [paying, notPaying]) {
      const { lines } = reportView(run).appendix;
      const printedSums = lines.rows
        .filter((row) => row.cells[0]?.text === "Sum")
        .map((row) => amount(row.cells[5]?.text ?? ""));
      const total = run.comparison.baseline.presentValue.infestation.toNumber();
      // Each printed sum is rounded to the unit: the total may differ by half a unit for each.
      expect(Math.abs(printedSums.reduce((sum, each) => sum + each, 0) - total)).toBeLessThanOrEqual(
        printedSums.length,
      );
      expect(amount(lines.total?.cells[5]?.text ?? "")).toBe(Math.round(total));
    }
  });

  it("add up: cost by year times weight to the same present value", () => {
    const { byYear } = reportView(paying).appendix;
    const last = byYear.head.length - 1;
    const printed = column(byYear, last).map(amount);
    const total = amount(byYear.total?.cells[last]?.text ?? "");
    expect(Math.abs(printed.reduce((sum, each) => sum + each, 0) - total)).toBeLessThanOrEqual(
      printed.length / 2,
    );
  });

  it("give quantity × unit rate as the amount of each line of the mature year", () => {
    for (const { years } of paying.comparison.structures) {
      for (const line of years.flat()) {
        expect(line.cents / 100).toBeCloseTo(line.quantity * line.unitRate, 1);
      }
    }
  });

  it("list every assumption used, each with a source that is cited", () => {
    const { appendix } = reportView(paying);
    expect(new Set(paying.usedAssumptions).size).toBe(paying.usedAssumptions.length);
    expect(appendix.assumptions.rows).toHaveLength(paying.usedAssumptions.length);
    const cited = new Set(methodView(paying.assumptions).sources.map(({ key }) => key));
    for (const text of column(appendix.assumptions, 3)) {
      const key = /^\[([^\]]+)\]/.exec(text)?.[1] ?? "";
      expect(cited).toContain(key);
    }
  });

  it("list in one line each what figures depend on, and cite in full what moves the answer most", () => {
    const { appendix } = reportView(paying, sampleTold("sorrel-bend"));
    const limits = paying.usedAssumptions.filter((id) => id.startsWith("checks.")).length;
    expect(appendix.register.flatMap(({ members }) => members)).toHaveLength(
      paying.usedAssumptions.length - limits,
    );
    expect(appendix.decisive.length).toBeGreaterThan(5);
    const cited = new Set(appendix.sources.map(({ key }) => key));
    for (const { text } of appendix.decisive) {
      const key = /\[([^\]]+)\]$/.exec(text)?.[1];
      if (key) expect(cited).toContain(key);
    }
  });

  it("name on each cost line only assumptions of the list", () => {
    const used = new Set(paying.usedAssumptions);
    const named = paying.comparison.structures.flatMap(({ years }) =>
      years.flat().flatMap((line) => line.assumptionIds),
    );
    expect(named.length).toBeGreaterThan(0);
    for (const id of named) expect(used).toContain(id);
  });

  it("show each override with its reason", () => {
    const { overrides } = reportView(paying).appendix;
    expect(overrides?.rows).toHaveLength(paying.overrides.length);
    expect(overrides?.rows[0]?.cells.map(({ text }) => text)).toContain(paying.overrides[0]?.reason);
  });
});

describe("the page", () => {
  it("is the same to the byte for the same study", () => {
    expect(renderReport(computedAnew("sorrel-bend"), inlineAssets())).toBe(
      renderReport(paying, inlineAssets()),
    );
  });

  it("has for each chart the table that it was drawn from, in print or as a file", () => {
    const html = renderReport(paying, inlineAssets());
    const { levels, ...charts } = reportView(paying).charts;
    const files = tableFiles(reportView(paying)).map(({ fileName }) => fileName);
    expect(files).toContain(tableFileName(levels.tableId));
    for (const chart of Object.values(charts)) {
      expect(html).toContain(`<div id="${chart.id}" class="chart"`);
      const isHere = html.includes(`<a\n  href="#${chart.tableId}"`);
      if (isHere) expect(html).toContain(`<table id="${chart.tableId}"`);
      else expect(html).toContain(`Figures: ${tableFileName(chart.tableId)} in the tables as files`);
      expect(files).toContain(tableFileName(chart.tableId));
    }
  });

  it("prints hostile names as typed and lets none of them become markup", () => {
    const document = exampleDocument("ninemoss");
    const name = '</script><script>alert(1)</script> & "ünïcode" 湖 🐚';
    const structures = document.structures.map((each) => ({ ...each, name }));
    const html = renderReport(
      runStudy({ ...document, lake: { ...document.lake, name }, structures }, assumptions),
      inlineAssets(),
    );
    expect(html).not.toContain("<script>alert");
    expect(html).toContain("&lt;script&gt;alert(1)&lt;/script&gt;");
    expect(html).toContain("湖 🐚");
  });

  it("loads nothing from elsewhere", () => {
    const html = renderReport(paying, inlineAssets());
    expect(html).not.toMatch(/<(script|link|img)[^>]+(src|href)="http/);
    expect(html).not.toMatch(/url\((?!data:|#)/);
  });

  it("prints no number that is not one", () => {
    for (const run of [paying, notPaying]) {
      const text = renderReport(run, { inline: false }).replace(/<[^>]+>/g, " ");
      expect(text).not.toMatch(/\bNaN\b|\bundefined\b|\bInfinity\b|\bnull\b/);
    }
  });
});
