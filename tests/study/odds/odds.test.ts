import { describe, expect, it } from "vitest";
import type { AssumptionSet } from "../../../src/assumptions/entry.js";
import { at } from "../../../src/lists.js";
import { clusteredMean } from "../../../src/model/futures/clusters.js";
import { futuresPerBlock, lakesPerBlock } from "../../../src/model/futures/draw-plan.js";
import { comparedRun } from "../../../src/study/compared/compared.js";
import type { StudyDocument } from "../../../src/study/format/schema.js";
import { oddsSettings } from "../../../src/study/format/uncertainty-schema.js";
import { drawnStudy, type LakeFutures } from "../../../src/study/odds/draws.js";
import { inputsTold } from "../../../src/study/odds/inputs-told.js";
import { joinedFutures } from "../../../src/study/odds/joined-futures.js";
import { oddsSummary } from "../../../src/study/odds/odds-summary.js";
import { withValues } from "../../../src/study/reading/ranged.js";
import { readStudyFile, readStudyText } from "../../../src/study/reading/read.js";
import { assumptionSet } from "../../model/assumptions.js";
import { blockDraws } from "../../model/futures/block-draws.js";
import { relativeGap } from "../../model/near.js";
import { absent, editedText, examplePath } from "../example.js";
import { smallLakeText } from "../small-lake.js";
import { studyOdds } from "./study-odds.js";

const usual = oddsSettings(undefined);
const twoBlocks = { ...usual, mostFutures: 2 * futuresPerBlock };
const edited = (edits: Parameters<typeof editedText>[0]) => readStudyText(editedText(edits), "study.yaml");

/** The shipped assumptions, each known for certain, and all that is typed as well. */
const certain: AssumptionSet = {
  ...assumptionSet,
  entries: new Map(
    [...assumptionSet.entries].map(([id, entry]) => {
      const value = id.startsWith("typed.") ? 0 : entry.value;
      return [id, { ...entry, value, low: value, high: value }];
    }),
  ),
};

const lakesOf = (document: StudyDocument, set: AssumptionSet, blocks: number): LakeFutures[] => {
  const { futures } = drawnStudy(document, set, usual);
  return Array.from({ length: blocks * lakesPerBlock }, (_, unit) =>
    futures(Math.floor(unit / lakesPerBlock), unit % lakesPerBlock),
  );
};

describe("a study of which only the year of establishment is unknown", () => {
  const document = edited([
    ["options[full-season].monitoring", { noticedWithin: ["30 %", "80 %"], origin: "invented" }],
    ["options[none].monitoring", { origin: "invented" }],
    ["options[weekends].monitoring", { planktonTows: 12, origin: "invented" }],
    [
      "options[full-season].response",
      { name: "Treatment", cost: "$500,000", chance: "40 %", latestYear: 3, origin: "invented" },
    ],
  ]);
  const comparison = comparedRun(document, certain).comparison;
  const results = [comparison.baseline, ...comparison.options.map(({ result }) => result)];
  const lakes = lakesOf(document, certain, 2);
  const all = joinedFutures(lakes);
  const futures = all.options;
  const drawn = drawnStudy(document, certain, usual);
  const odds = oddsSummary({ document, drawn, settings: twoBlocks }, all, "cap");

  it.each(document.options.map(({ id }, index) => [id, index] as const))(
    "costs on average what the comparison expects: %s",
    (id, index) => {
      const result = results.find(({ option }) => option.id === id);
      if (!result) throw new Error(`no result of ${id}`);
      const exact = result.presentValue.total.toNumber();
      for (const each of at(futures, index).expected) expect(relativeGap(each, exact)).toBeLessThan(1e-9);
      // Errors of lakes, as if luck were independent: of two blocks the blocks' own error is hardly known.
      const { value, standardError } = clusteredMean(at(futures, index).cost, lakes.length);
      expect(standardError).toBeGreaterThan(0);
      expect(Math.abs(value - exact)).toBeLessThan(4 * standardError);
      const end = result.infestedByYear.at(-1) ?? Number.NaN;
      for (const each of at(futures, index).infestedAtEnd) expect(relativeGap(each, end)).toBeLessThan(1e-9);
      const program = result.presentValue.program.toNumber();
      for (const each of at(futures, index).program) expect(relativeGap(each, program)).toBeLessThan(1e-9);
    },
  );

  it("costs in each year on average what the comparison expects of it", () => {
    for (const { id, fan } of odds.options) {
      const result = results.find(({ option }) => option.id === id);
      const byYear = result?.expectedByYear.map(({ total }) => total.toNumber()) ?? [];
      expect(fan.map(({ year }) => year)).toEqual(byYear.map((_, year) => document.money.startYear + year));
      const sum = (costs: readonly number[]) => costs.reduce((total, cost) => total + cost, 0);
      // Each block is a Latin hypercube of luck: 3 % is far above what is left to chance.
      expect(relativeGap(sum(fan.map(({ mean }) => mean)), sum(byYear))).toBeLessThan(0.03);
      for (const { p10, p50, p90 } of fan) {
        expect(p10).toBeLessThanOrEqual(p50);
        expect(p50).toBeLessThanOrEqual(p90);
      }
    }
  });

  it("has nothing to learn, and regrets every option but the best by what it is dearer", () => {
    const least = Math.min(...results.map(({ presentValue }) => presentValue.total.toNumber()));
    expect(odds.inputs).toBe(0);
    expect(inputsTold(drawn, all).information).toEqual([]);
    expect(odds.perfectInformation).toBeLessThan(1e-6 * least);
    for (const { id, regret } of odds.options) {
      const total =
        results.find(({ option }) => option.id === id)?.presentValue.total.toNumber() ?? Number.NaN;
      expect(Math.abs(regret - (total - least))).toBeLessThan(1e-6 * least);
    }
  });
});

describe("a lake with a steady hazard and a steady loss", () => {
  const classes = [{ id: "all", name: "All", share: "100 %", fouled: "0 %", origin: "invented" }];
  const items = [{ name: "Loss", cost: "$1,000,000/yr", origin: "invented" }];
  const duty = { id: "duty", name: "Duty", kind: "lake-wide", bearer: "authority", items };
  const document = edited([
    ["structures", [duty]],
    ["boats.classes", classes],
    ["boats.otherWays", [{ name: "Others", chance: "5 %/yr", origin: "invented" }]],
    ["options[none].yearly", absent],
    ["options[steps].steps.seals", absent],
    ["options[full-season].steps.seals", absent],
    ["options[steps].steps.byClass", absent],
    ["options[full-season].steps.byClass", absent],
    ["money.horizon", 20],
    ["money.timing", "end-of-year"],
    ["overrides", []],
  ]);
  const none = document.options.findIndex(({ id }) => id === "none");
  const settings = { ...usual, mostFutures: 8 * futuresPerBlock, confidence: 0.8 };
  const odds = studyOdds(document, certain, settings);
  const option = at(odds.options, none);
  const year = (established: number) => 1.03 ** -established;
  const lossFrom = (established: number) => {
    let sum = 0;
    for (let t = established; t <= 20; t++) sum += 1e6 * year(t);
    return sum;
  };

  it("has the expected present value of the closed form", () => {
    // Sum over t = 1..20 of D (1 - 0.95^t)/1.03^t with D 1,000,000, as in the tests of the exact expectation.
    expect(Math.abs(option.meanCost.value - 5_359_483.8)).toBeLessThan(0.01);
  });

  it("has years of establishment in the shares of the geometric distribution", () => {
    const lakes = lakesOf(document, certain, 2);
    const years = lakes.flatMap(({ establishment }) => [...at(establishment, none)]);
    for (let t = 1; t <= 20; t++) {
      const found = years.filter((established) => established < t).length;
      // Luck is a Latin hypercube in each of two blocks: a count is off by less than one in each.
      expect(Math.abs(found - years.length * (1 - 0.95 ** t))).toBeLessThan(2);
    }
    expect(option.everInfested.value).toBeCloseTo(1 - 0.95 ** 20, 12);
  });

  it("has the costs of the geometric distribution's quantiles", () => {
    // Costs fall with the year of establishment: the cost not exceeded with chance p is that of the last year T
    // with 1 - 0.95^(T-1) <= 1 - p, that is T = 1 + floor(ln p / ln 0.95).
    for (const { share, value } of option.cost) {
      if (share === 0.95) continue;
      const first = 1 + Math.floor(Math.log(share) / Math.log(0.95));
      const exact = first > 20 ? 0 : lossFrom(first);
      expect(Math.abs(value - exact)).toBeLessThan(0.01);
    }
    // The first year has a chance of 5 % exactly: every cost from that of the second year to its own is a quantile of 95 %.
    const highest = option.cost.find(({ share }) => share === 0.95)?.value;
    expect(highest).toBeGreaterThanOrEqual(lossFrom(2) - 0.01);
    expect(highest).toBeLessThanOrEqual(lossFrom(1) + 0.01);
    const annuity = Array.from({ length: 20 }, (_, t) => year(t + 1)).reduce((sum, each) => sum + each, 0);
    const first = 1 + Math.floor(Math.log(0.8) / Math.log(0.95));
    expect(relativeGap(option.budget.value, lossFrom(first) / annuity)).toBeLessThan(1e-9);
  });

  it("has programs that only cost: none comes out cheaper, or is worth it", () => {
    for (const { against, regret } of odds.options.filter(({ id }) => id !== "none")) {
      expect(against?.cheaper.value).toBe(0);
      expect(against?.worthIt.value).toBe(0);
      expect(against?.netBenefit.value).toBeCloseTo(-regret, 4);
    }
  });
});

describe("the draws of a study", () => {
  const whole = readStudyFile(examplePath("sorrel-bend"));

  it("are the same for all else if a structure is added", () => {
    const without = { ...whole, structures: whole.structures.filter(({ id }) => id !== "marina") };
    const one = drawnStudy(without, assumptionSet, usual).plan;
    const other = drawnStudy(whole, assumptionSet, usual).plan;
    const lists = [one, other].map((plan) => blockDraws(plan, 1));
    const [few, more] = [at(lists, 0), at(lists, 1)];
    expect(more.luck).toEqual(few.luck);
    expect(few.lake.size).toBeGreaterThan(100);
    for (const stage of ["lake", "chances"] as const) {
      for (const [id, column] of few[stage]) expect(more[stage].get(id), id).toEqual(column);
    }
  });

  it("put off the year of establishment in every future where fewer mussels slip through", () => {
    const better = edited([
      ["options[weekends].steps.quickCheck", "40 %"],
      ["options[full-season].steps.quickCheck", "90 %"],
    ]);
    const [weekends] = better.options.filter(({ id }) => id === "weekends");
    if (!weekends) throw new Error("no weekends");
    const stronger = withValues(weekends, [{ path: ["steps", "quickCheck"], value: 0.9 }]);
    const options = better.options.map((each) =>
      each.id === "full-season" ? { ...stronger, id: each.id } : each,
    );
    const document = { ...better, options };
    const place = (id: string) => options.findIndex((each) => each.id === id);
    let later = 0;
    for (const { establishment } of lakesOf(document, assumptionSet, 1)) {
      const years = (id: string) => at(establishment, place(id));
      years("none").forEach((established, future) => {
        const [weak, strong] = [at(years("weekends"), future), at(years("full-season"), future)];
        expect(weak).toBeGreaterThanOrEqual(established);
        expect(strong).toBeGreaterThanOrEqual(weak);
        later += Number(strong > weak);
      });
    }
    expect(later).toBeGreaterThan(0);
  });

  it("give the same figures in whatever order they are made, and others with another seed", () => {
    const document = readStudyText(smallLakeText, "lake.yaml");
    const drawn = drawnStudy(document, assumptionSet, usual);
    const units = Array.from({ length: 2 * lakesPerBlock }, (_, unit) => unit);
    const backwards = units
      .toReversed()
      .map((unit) => drawn.futures(Math.floor(unit / lakesPerBlock), unit % lakesPerBlock));
    const odds = studyOdds(document, assumptionSet, twoBlocks);
    const all = joinedFutures(backwards.toReversed());
    const summary = oddsSummary({ document, drawn, settings: twoBlocks }, all, odds.end);
    expect({ ...summary, ...inputsTold(drawn, all) }).toEqual(odds);
    expect(studyOdds(document, assumptionSet, twoBlocks)).toEqual(odds);
    const other = studyOdds(document, assumptionSet, { ...twoBlocks, seed: 2 });
    expect(other.options.map(({ meanCost }) => meanCost)).not.toEqual(
      odds.options.map(({ meanCost }) => meanCost),
    );
  });
});
