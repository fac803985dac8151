import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { noMoney, sumOf, totalOf } from "../../src/model/money/line.js";
import { compareStudy } from "../../src/study/compute.js";
import { readStudyFile } from "../../src/study/read.js";
import { assumptionSet } from "./assumptions.js";
import { relativeGap } from "./near.js";

const folder = new URL("../../src/examples/", import.meta.url);
const files = readdirSync(folder).filter((name) => name.endsWith(".yaml"));

describe.each(files)("the example %s", (file) => {
  const comparison = compareStudy(readStudyFile(fileURLToPath(new URL(file, folder))), assumptionSet);
  const { structures, infestation, baseline, options, discountFactors, rises } = comparison;

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

  it("keeps each part in service by the cheapest plan that keeps the limits", () => {
    for (const { everyPlan, chosen } of structures.flatMap(({ components }) => components)) {
      const keeping = everyPlan().filter(({ brokenLimit }) => brokenLimit === undefined);
      expect(chosen.yearlyCost).toBe(Math.min(...keeping.map(({ yearlyCost }) => yearlyCost)));
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

  it("has an expected loss that a plain sum over the years of establishment gives as well", () => {
    for (const result of [baseline, ...options.map((each) => each.result)]) {
      let sum = 0;
      const { byYear: losses, rising } = result.schedule.infestation;
      discountFactors.forEach((factor, year) => {
        for (let established = 0; established <= year; established++) {
          const chance = result.hazard * (1 - result.hazard) ** established;
          let loss = losses[year - established]?.toNumber() ?? Number.NaN;
          for (const [group, part] of rising) {
            const rise = rises.get(group)?.[year] ?? Number.NaN;
            loss += (rise - 1) * (part.byYear[year - established]?.toNumber() ?? Number.NaN);
          }
          sum += factor * chance * loss;
        }
      });
      expect(relativeGap(result.presentValue.infestation.toNumber(), sum)).toBeLessThan(1e-9);
    }
  });
});
