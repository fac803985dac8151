import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { at } from "../../src/lists.js";
import type { Comparison } from "../../src/model/compare.js";
import type { YearlyCost } from "../../src/model/cost-streams.js";
import { noMoney } from "../../src/model/money/decimal.js";
import { amountOf, sumOf, totalOf } from "../../src/model/money/line.js";
import type { OptionResult } from "../../src/model/option.js";
import { yearlyHazard } from "../../src/model/risk/hazard.js";
import { comparedRun } from "../../src/study/compared/compared.js";
import { readStudyFile } from "../../src/study/reading/read.js";
import { assumptionSet } from "./assumptions.js";
import { relativeGap } from "./near.js";

const folder = new URL("../../src/examples/", import.meta.url);
const isInfested = (file: string) =>
  readStudyFile(fileURLToPath(new URL(file, folder))).lake.infestedSince !== undefined;
/** A lake without mussels; what an infested one costs is held in `compare-infested.test.ts`. */
const files = readdirSync(folder).filter((name) => name.endsWith(".yaml") && !isInfested(name));

describe.each(files)("the example %s", (file) => {
  const comparison = comparedRun(
    readStudyFile(fileURLToPath(new URL(file, folder))),
    assumptionSet,
  ).comparison;
  const { structures, infestation, baseline, options } = comparison;

  it("has totals that are the sum of its lines, and no money that is not in a line", () => {
    infestation.byYear.forEach((total, year) => {
      const lines = structures
        .flatMap(({ years }) => years[year] ?? [])
        .filter(({ type }) => type !== "apart");
      expect(totalOf(lines).equals(total)).toBe(true);
      expect(sumOf(infestation.byBearer.map(({ byYear }) => byYear[year] ?? noMoney)).equals(total)).toBe(
        true,
      );
    });
  });

  it("keeps each part in service by the cheapest plan", () => {
    for (const { everyPlan, chosen } of structures.flatMap(({ components }) => components)) {
      expect(chosen.yearlyCost).toBe(Math.min(...everyPlan().map(({ yearlyCost }) => yearlyCost)));
    }
  });

  it("loses no more energy than it makes", () => {
    for (const { cleanEnergy, years } of structures.filter(
      ({ structure }) => structure.kind === "hydropower",
    )) {
      const made = cleanEnergy.reduce((sum, month) => sum + month, 0);
      for (const lines of years) {
        const energy = lines.filter(({ quantityKind }) => quantityKind === "energy");
        expect(energy.reduce((sum, { quantity }) => sum + quantity, 0)).toBeLessThan(made);
      }
    }
  });

  it("is less likely to be infested under any program with inspection than without one", () => {
    for (const { result } of options) {
      if (result.option.steps === undefined) {
        expect(result.hazard).toBe(baseline.hazard);
        continue;
      }
      expect(result.hazard).toBeLessThan(baseline.hazard);
      expect(result.arrivals.slipThroughRange.independent).toBeLessThanOrEqual(
        result.arrivals.slipThroughRange.dependent,
      );
    }
  });

  it("splits what each program avoids and adds over its bearers", () => {
    for (const { bearers, avoidedLoss, addedProgramCost } of options) {
      const avoided = sumOf(bearers.map((each) => each.avoided)).toNumber();
      const shared = sumOf(bearers.map((each) => each.proportionalShare)).toNumber();
      expect(relativeGap(avoided, avoidedLoss.toNumber())).toBeLessThan(1e-9);
      // Nothing is shared in proportion to what is avoided where nothing is.
      const toShare = avoidedLoss.greaterThan(0) ? addedProgramCost.toNumber() : 0;
      expect(Math.abs(shared - toShare)).toBeLessThan(1e-9 * addedProgramCost.toNumber());
    }
  });

  it("has an expected loss that backward induction over the years gives as well", () => {
    for (const result of [baseline, ...options.map((each) => each.result)]) {
      const expected = fromLastYearBack(result, comparison);
      expect(relativeGap(result.presentValue.infestation.toNumber(), expected)).toBeLessThan(1e-9);
    }
  });
});

/**
 * Expected present cost of an infestation from the last year back: of a lake that is clean at a year's start, of one
 * that is in its year a and unnoticed, and of one that is known to be. Another route than the chances by year.
 */
function fromLastYearBack(
  result: OptionResult,
  { discountFactors: factors, rises, rates }: Comparison,
): number {
  const { reachingByYear, detection: noticing, schedule, unnoticed, containment } = result;
  const { success = 0, latestAge = 0 } = noticing.containment ?? {};
  const attempt = containment ? amountOf(containment.line).toNumber() : 0;
  let clean = 0;
  let hidden = Array<number>(factors.length + 1).fill(0);
  let known = hidden;
  for (const [year, factor] of [...factors.entries()].reverse()) {
    const cost = (losses: YearlyCost, part: "byYear" | "harm", age: number) => {
      let loss = losses[part][age]?.toNumber() ?? Number.NaN;
      for (const [group, rise] of rises) {
        const share = losses.rising.get(group)?.[part][age]?.toNumber() ?? 0;
        loss += ((rise[year] ?? Number.NaN) - 1) * share;
      }
      return factor * loss;
    };
    const knownNow = factors.map(
      (_, age) => cost(schedule.infestation, "byYear", age) + (known[age + 1] ?? 0),
    );
    const hiddenNow = factors.map((_, age) => {
      const chance = noticing.chanceByAge[age] ?? 1;
      const isTried = age < latestAge;
      const saved = isTried ? success * (clean - (known[age + 1] ?? 0)) : 0;
      const noticed = (knownNow[age] ?? 0) + (isTried ? factor * attempt : 0) + saved;
      return chance * noticed + (1 - chance) * (cost(unnoticed, "harm", age) + (hidden[age + 1] ?? 0));
    });
    const hazard = yearlyHazard(at(reachingByYear, year), year, rates);
    clean = (1 - hazard) * clean + hazard * (hiddenNow[0] ?? Number.NaN);
    [hidden, known] = [hiddenNow, knownNow];
  }
  return clean;
}
