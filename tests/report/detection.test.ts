import { describe, expect, it } from "vitest";
import { comparisonText } from "../../src/cli/comparison-text.js";
import { renderReport } from "../../src/report/document/html.js";
import { reportView } from "../../src/report/document/report-view.js";
import { resultsJson } from "../../src/report/results/results.js";
import type { TableView } from "../../src/report/words/view-types.js";
import { amount, smallRun } from "./edited.js";
import { exampleRun } from "./runs.js";

const tows = { planktonTows: 24, settlementPlates: 12, origin: "invented" };
const treatment = {
  name: "Treatment of a bay",
  cost: "$1,500,000",
  chance: "15 %",
  latestYear: 2,
  bearer: "marina",
  cautions: "The marina closes.",
  origin: "a quote",
};

/** Watched everywhere, with a response of the baseline as well. */
const run = smallRun([
  ["options[none].monitoring", { noticedWithin: ["10 %", "30 %", "60 %"], origin: "invented" }],
  ["options[weekends].monitoring", { origin: "nobody watches" }],
  ["options[full-season].monitoring", tows],
  ["options[none].response", treatment],
  ["options[full-season].response", treatment],
  // so that mussels stay unnoticed for years
  ["overrides", [{ id: "detection.first-harm", value: "$10,000,000", reason: "to see them late" }]],
]);
const view = reportView(run);
const silent = smallRun([]);

const texts = (table: TableView | undefined) =>
  table?.rows.map(({ cells }) => cells.map(({ text }) => text)) ?? [];
const lastAmount = (cells: readonly { readonly text: string }[] | undefined) => amount(cells?.at(-1)?.text);

describe("the section on noticing mussels", () => {
  it("is there only where an option watches for them or responds, and nowhere in a lake infested already", () => {
    expect(view.detection).toBeDefined();
    expect(view.comparison.detection).toContain("after");
    expect(reportView(silent).detection).toBeUndefined();
    expect(reportView(silent).comparison.detection).toBeUndefined();
    expect(reportView(smallRun([["lake.infestedSince", 2024]])).detection).toBeUndefined();
  });

  it("prints the chances that the study gives, year by year", () => {
    const rows = texts(view.detection?.chances);
    expect(rows.slice(0, 4).map((cells) => cells[2])).toEqual(["10%", "30%", "60%", "100%"]);
    expect(rows.map(([year]) => year)).toEqual(rows.map((_, index) => String(index + 1)));
  });

  it("prints chances of samples that a reader can check from those at usual effort", () => {
    // 24 tows of 0.7 and 12 plates of 0.5 find 22.8, a usual year's 24 tows 16.8 (detection.yaml): missed are 0.85 and
    // 0.5 at usual effort, to the power 22.8/16.8, so that 19.8 and 61.0 % are found.
    const sampled = texts(view.detection?.chances).map((cells) => cells[4]);
    expect(sampled.slice(0, 2)).toEqual(["20%", "61%"]);
  });

  it("says what is done, what is tried, and gives the mean time unnoticed", () => {
    const [none, weekends, full] = texts(view.detection?.watch);
    // By hand: 0.9 + 0.7 + 0.4 years pass.
    expect(none?.slice(1, 3)).toEqual(["detected within 3 years: 60%", "2.0"]);
    expect(none?.[3]).toBe("Treatment of a bay: $1,500,000, chance 15%, up to year 2");
    expect(weekends?.[1]).toBe("nothing: detected by the first harm");
    expect(weekends?.[3]).toBe("nothing");
    expect(full?.[1]).toBe("24 plankton tows, 12 settlement plates");
  });

  it("parts the cost of an infestation into amounts that add up to that of the comparison", () => {
    for (const cells of texts(view.detection?.costs)) {
      const [before, after, control, attempts, together] = cells.slice(1).map(amount);
      const sum =
        (before ?? Number.NaN) + (after ?? Number.NaN) + (control ?? Number.NaN) + (attempts ?? Number.NaN);
      // Five amounts, each rounded to the dollar.
      expect(Math.abs(sum - (together ?? Number.NaN))).toBeLessThanOrEqual(2.5);
    }
    const together = run.comparison.baseline.presentValue.infestation.toNumber();
    expect(Math.abs(lastAmount(view.detection?.costs.rows[0]?.cells) - together)).toBeLessThanOrEqual(0.5);
  });

  it("warns of divers, permits and drinking water, and prints the study's own cautions", () => {
    const cautions = view.detection?.cautions.join(" ") ?? "";
    for (const word of ["Divers", "pesticide", "Drinking water", "The marina closes."])
      expect(cautions).toContain(word);
    expect(view.detection?.origins.join(" ")).toContain("a quote");
  });
});

describe("tables of the infestation that is noticed late", () => {
  it("has rows by year that add up to the printed total, with losses before notice and attempts", () => {
    const { byYear } = view.appendix;
    expect(byYear.head.map(({ text }) => text)).toContain("Weight, before");
    const sum = byYear.rows.reduce((total, { cells }) => total + lastAmount(cells), 0);
    // 31 amounts, each rounded to the dollar.
    expect(Math.abs(sum - lastAmount(byYear.total?.cells))).toBeLessThanOrEqual(16);
    expect(byYear.rows.at(-1)?.cells[0]?.text).toBe("Eradication attempts");
    expect(byYear.rows).toHaveLength(run.document.money.horizon + 1);
  });

  it("has amounts that are what the printed weights make of them", () => {
    for (const [, , noticed = "", weight = "", losses = "", hidden = "", product = ""] of texts(
      view.appendix.byYear,
    ).slice(0, -1)) {
      const expected = amount(noticed) * Number(weight) + amount(losses) * Number(hidden);
      // Weights are printed to four decimals: half of the last on each amount, and half a dollar.
      const slack = 0.00005 * (amount(noticed) + amount(losses)) + 1.5;
      expect(Math.abs(amount(product) - expected)).toBeLessThanOrEqual(slack);
    }
  });

  it("has cost lines and structures that add up to the same", () => {
    const total = run.comparison.baseline.presentValue.infestation.toNumber();
    expect(Math.abs(amount(view.appendix.lines.total?.cells[5]?.text) - total)).toBeLessThan(1);
    const labels = view.infestation.byStructure.rows.map(({ cells }) => cells[0]?.text);
    expect(labels).toContain("Eradication attempts");
  });

  it("keeps its one weight where mussels are noticed at once", () => {
    expect(reportView(silent).appendix.byYear.head).toHaveLength(5);
  });
});

describe("results of detection", () => {
  it("stand in the comparison as text, the page and the JSON", () => {
    const sentence = view.comparison.detection ?? "";
    expect(sentence).toMatch(
      /^Mussels that establish would be detected .*succeeds 15% of the time and costs, over 30 years, \$[\d,]+ more than it saves\.$/,
    );
    expect(comparisonText(run)).toContain(sentence);
    expect(renderReport(run, { inline: false })).toContain("When would we know?");
    const { baseline } = JSON.parse(JSON.stringify(resultsJson(run))) as {
      baseline: { detection: { meanYearsUnnoticed: number; containment: { attempts: number } } };
    };
    expect(baseline.detection.meanYearsUnnoticed).toBeCloseTo(2, 10);
    expect(baseline.detection.containment.attempts).toBeGreaterThan(0);
  });

  it("have a range of their own where samples are taken", () => {
    const names = (each: typeof run) => each.ranges().map(({ name }) => name);
    expect(names(run)).toContain("how readily a sample finds mussels");
    expect(names(silent)).not.toContain("how readily a sample finds mussels");
  });

  it("move nothing in a study that says nothing of it", () => {
    const { baseline } = exampleRun("ninemoss").comparison;
    expect(baseline.weights.unnoticed.every((weight) => weight === 0)).toBe(true);
    expect(baseline.containment).toBeUndefined();
  });
});
