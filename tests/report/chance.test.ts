import { describe, expect, it } from "vitest";
import { boardView } from "../../src/report/board/board-view.js";
import { reportContext } from "../../src/report/document/context.js";
import { renderReportBody } from "../../src/report/document/html.js";
import { renderPage } from "../../src/report/document/render-page.js";
import { reportView } from "../../src/report/document/report-view.js";
import { resultsJson } from "../../src/report/results/results.js";
import { percent } from "../../src/report/words/format.js";
import type { TableView } from "../../src/report/words/view-types.js";
import { smallRun } from "./edited.js";
import { exampleRun } from "./runs.js";
import { sampleOdds, sampleTold } from "./sample-odds.js";

const run = exampleRun("sorrel-bend");
const view = reportView(run);
const texts = (table: TableView) => table.rows.map(({ cells }) => cells.map(({ text }) => text));
const tableOf = (id: string): TableView => {
  const found = view.chance?.evidence.find((table) => table.id === id);
  if (!found) throw new Error(`no table ${id}`);
  return found;
};

describe("the evidence behind the chance", () => {
  it("names the one region that the others do not predict", () => {
    // 10 of 11 inside and Switzerland outside, 0 to 1 predicted and 3 or 4 seen: notes of the project, worked out by sampling
    expect(view.chance?.backtest).toContain("Of 11 regions, each predicted from the others, 10 saw");
    expect(view.chance?.backtest).toContain(
      "Switzerland, quagga (2016–2024) did not: 0–1 predicted, 3 or 4 seen",
    );
  });

  it("has a row for each region, with what is judged and what leaving it out does", () => {
    const rows = texts(tableOf("table-chance-regions"));
    expect(rows).toHaveLength(11);
    // counts and judged shares: the rows of assumptions/founding-evidence.yaml
    expect(rows[0]?.slice(0, 4)).toEqual(["Idaho, 2009–2023", "420–480", "40–85%", "35–60%"]);
    const without = rows.filter((cells) => cells[7] === "no").map((cells) => [cells[0], cells[8]]);
    // without Switzerland 2e-4 (notes of the project)
    expect(without).toEqual([["Switzerland, quagga, 2016–2024", "0.021%"]]);
  });

  it("says of each source how it was read", () => {
    const { note } = tableOf("table-chance-regions");
    expect(note).toContain("Idaho: bonner-bee-2015 p,");
    expect(note).toContain("idaho-response-plan t");
    expect(note).toContain("Switzerland, quagga: de-ventura-2016 a, bluewin-2024 p.");
  });

  it("has lake-years by group", () => {
    const rows = texts(tableOf("table-chance-lakes"));
    // 15 of 49 in 8 years: 328 lake-years, 4.57 % a year (notes of the project, check value 4)
    expect(rows[1]?.slice(0, 5)).toEqual(["Michigan, survey lakes, 1990–1997", "15", "49", "328", "4.6%"]);
    expect(rows.filter(({ length }) => length === 1).flat()).toEqual([
      "Open regions: no checks of boats",
      "All lakes, most without a ramp: shown, not estimated from",
      "Regions with checks",
    ]);
  });

  it("leaves out what a study leaves out", () => {
    const without = smallRun([["boats.chance.leaveOutRegions", ["switzerland"]]]);
    const { regions } = without.tracedChance();
    expect(regions.map(({ region: { id } }) => id)).not.toContain("switzerland");
    expect(reportView(without).chance?.backtest).toContain("Of 10 regions");
  });
});

describe("variants of the chance", () => {
  const clean = [{ from: 2010, to: 2019, launches: "100 %", origin: "invented" }];

  it("recompute with an exponent of 1.5 as if the study had it, clean years included, and with 1 are the answer", () => {
    const base = smallRun([["boats.cleanPeriods", clean]]);
    const [one, more] = base.tracedChance().shapes;
    expect([one?.shape, more?.shape]).toEqual([1, 1.5]);
    expect(one?.baseline.hazard).toBe(base.comparison.baseline.hazard);
    const own = smallRun([
      ["boats.cleanPeriods", clean],
      ["overrides", [{ id: "arrival.shape", value: "1.5", reason: "to compare" }]],
    ]);
    expect(own.comparison.baseline.hazard).toBeCloseTo(more?.baseline.hazard ?? 0, 12);
    expect(own.tracedChance().shapes.map(({ shape, isUsed }) => [shape, isUsed])).toEqual([
      [1, false],
      [1.5, true],
    ]);
    expect(reportView(own).chance?.shapes.note).toContain("The answer uses 1.5;");
  });

  it("say what an option is worth if its checks keep nobody away", () => {
    const none = smallRun([["options[full-season].steps.deterrence", "0 %"]]);
    const option = none.comparison.options.find(({ result }) => result.option.id === "full-season");
    const before = reportView(smallRun([]));
    const told = before.chance?.deterrence.find((each) => each.startsWith("“Full-season stations”"));
    expect(told).toContain(`(ratio ${option?.benefitCostRatio?.toFixed(2)})`);
    expect(before.comparison.deterrence).toBe(told);
    expect(reportView(none).chance?.deterrence).toHaveLength(1);
  });
});

describe("the board's picture of the chance", () => {
  it("stands in its part under the finding, with the chance that the answer uses", () => {
    const html = renderReportBody(run, sampleTold("sorrel-bend"), { part: "board" });
    expect(html).toContain(`<h3>${view.chance?.finding}</h3>`);
    const value = view.chance?.ruler.rows.at(-1)?.value ?? "";
    expect(view.chance?.ruler.rows.some(({ beyond }) => beyond)).toBe(false);
    expect(view.chance?.finding).toContain(`is ${value.split(" ")[0]} without a program`);
  });
});

describe("the appendix on the chance", () => {
  it("has both ways together, which the board's picture leaves to it", () => {
    const { chance } = run;
    if (!chance || !view.chance) throw new Error("no chance");
    // By hand: rates are weighed as logarithms, and a rate of λ a year is a chance of 1 − e^−λ.
    const weight = chance.weightOfBoats;
    const rate = chance.byLaunches.rate ** weight * chance.byLakes.rate ** (1 - weight);
    expect(view.chance.together).toContain(`at ${percent(1 - Math.exp(-rate))} (`);
    expect(view.chance.ruler.rows.map(({ name }) => name)).not.toContain("Both together");
    const launches = smallRun([["boats.chance.drivenBy", "launches"]]);
    expect(reportView(launches).chance?.together).toBe("");
  });
});

describe("an infested lake", () => {
  it("has no chance to weigh, and its page says so", () => {
    const infested = reportView(smallRun([["lake.infestedSince", 2020]]));
    expect(infested.chance).toBeUndefined();
    expect(renderPage("partials/chance-page", infested)).toContain("The lake is infested already");
  });
});

describe("a chance beyond the ruler", () => {
  it("is drawn hollow at its end, with its figure and a note", () => {
    const { ruler, rulerNote } = reportView(exampleRun("ninemoss")).chance ?? {};
    // Ninemoss has 0.003 % a year, and the ruler begins at 0.1 %
    expect(ruler?.rows.map(({ at, beyond }) => [at, beyond])).toEqual(Array(3).fill([ruler?.axisFrom, true]));
    expect(rulerNote).toContain("beyond the ruler");
  });
});

describe("the chance in the results as JSON", () => {
  it("is that of the picture, and its middle that of the comparison", () => {
    const { chance } = resultsJson(run) as { chance: Record<string, Record<string, number>> };
    const { hazard } = run.comparison.baseline;
    expect(chance.used?.hazard).toBe(hazard);
    expect(chance.used?.p50).toBeCloseTo(hazard, 12);
    expect(chance.shareBeyondPrograms).toBe(run.chance?.beyondPrograms);
    // of two independent estimates the mean of the logarithms, by their weights (by hand)
    const weight = run.chance?.weightOfBoats ?? 0;
    const log = (way: string) => Math.log(chance[way]?.ratePerYear ?? 0);
    expect(log("pooled")).toBeCloseTo(weight * log("byLaunches") + (1 - weight) * log("byLakes"), 12);
    expect(chance.byLakes?.p10).toBeLessThan(chance.byLakes?.p50 ?? 0);
  });
});

describe("what page 1 and the appendix say of where the chance comes from", () => {
  const certaintyOf = (drivenBy: string) => {
    const driven = smallRun([["boats.chance", { drivenBy }]]);
    return boardView(reportContext(driven, sampleOdds("sorrel-bend"))).certainty;
  };

  it("name what drives it where the author chose one way alone", () => {
    expect(certaintyOf("both")).not.toContain("alone");
    expect(certaintyOf("launches")).toContain("It rests on fouled launches alone.");
    expect(certaintyOf("lakes")).toContain("It rests on comparable lakes alone.");
  });

  it("tell how likely years without a find were anyway, and that mussels may be here unseen", () => {
    const { clean } = run.chance ?? {};
    if (!clean) throw new Error("no clean years");
    expect(view.chance?.clean).toContain(`${percent(clean.chanceOfClean)} of such lakes`);
    expect(view.chance?.clean).toContain(`were not seen is ${percent(clean.infestedUnseen)}.`);
  });
});
