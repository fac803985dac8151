import { describe, expect, it } from "vitest";
import { compare } from "../../src/model/compare.js";
import { amountOf, sumOf } from "../../src/model/money/line.js";
import type { OptionResult } from "../../src/model/option.js";
import { randomStream } from "../../src/model/random/generator.js";
import { assumedWith } from "./assumptions.js";
import { relativeGap } from "./near.js";
import {
  known,
  noHarm,
  perArrival,
  programOf,
  resultOf,
  slowly,
  study,
  treatment,
  type Watch,
  watched,
} from "./watched.js";

describe("containment", () => {
  it("that always succeeds at once leaves a lake clean at each year's end, for the attempts and first years alone", () => {
    const {
      hazard,
      statesByYear: course,
      containment,
      presentValue,
      programPerYear,
      schedule,
    } = resultOf({
      response: { ...treatment, chance: 1, latestYear: 1 },
    });
    // By hand: clean at each start, so h attempts a year, each with the cost of a first year; the program never shrinks.
    const factors = known.discountFactors.reduce((sum, factor) => sum + factor, 0);
    const first = schedule.infestation.byYear[0]?.toNumber() ?? Number.NaN;
    for (const { infested, attempts } of course) {
      expect(Math.abs(infested)).toBeLessThan(1e-12);
      expect(attempts).toBeCloseTo(hazard, 12);
    }
    expect(containment?.successes).toBeCloseTo(hazard * course.length, 10);
    expect(
      relativeGap(presentValue.infestation.toNumber(), factors * hazard * (400_000 + first)),
    ).toBeLessThan(1e-9);
    expect(relativeGap(presentValue.program.toNumber(), factors * programPerYear.toNumber())).toBeLessThan(
      1e-9,
    );
  });

  it("is paid by the bearer that the study names, within the sums by year and by bearer", () => {
    const bearer = [
      { id: "city", share: 0.7 },
      { id: "power-fund", share: 0.3 },
    ];
    const { containment, infestationByBearer, presentValue, expectedByYear } = resultOf({
      monitoring: slowly,
      response: { ...treatment, bearer },
    });
    const paid = (id: string) =>
      infestationByBearer.find((each) => each.id === id)?.presentValue.toNumber() ?? Number.NaN;
    // Neither owns a structure here: they pay for the attempts alone.
    const attempts = containment?.presentValue.toNumber() ?? Number.NaN;
    expect(attempts).toBeGreaterThan(0);
    expect(relativeGap(paid("city"), 0.7 * attempts)).toBeLessThan(1e-12);
    expect(relativeGap(paid("power-fund"), 0.3 * attempts)).toBeLessThan(1e-12);
    const byBearer = sumOf(infestationByBearer.map((each) => each.presentValue)).toNumber();
    const byYear = expectedByYear.reduce(
      (sum, { infestation }, year) =>
        sum + infestation.toNumber() * (known.discountFactors[year] ?? Number.NaN),
      0,
    );
    expect(relativeGap(byBearer, presentValue.infestation.toNumber())).toBeLessThan(1e-12);
    expect(relativeGap(byYear, presentValue.infestation.toNumber())).toBeLessThan(1e-12);
  });

  it("is worth what the option costs without it, less what it costs with it", () => {
    const at = (watch: Watch) =>
      programOf(compare(watched({ monitoring: slowly }, watch), assumedWith(noHarm), known));
    const without = at({ monitoring: slowly });
    const cheap = at({ monitoring: slowly, response: { ...treatment, cost: 1, chance: 1 } });
    const saved = without.result.presentValue.total.minus(cheap.result.presentValue.total).toNumber();
    expect(without.responseBenefit()).toBeUndefined();
    expect(saved).toBeGreaterThan(0);
    expect(cheap.responseBenefit()?.toNumber()).toBeCloseTo(saved, 6);
    // A dear attempt that never succeeds saves nothing: it is worth its own cost, lost.
    const vain = at({ monitoring: slowly, response: { ...treatment, chance: 0 } });
    expect(
      vain
        .responseBenefit()
        ?.plus(vain.result.containment?.presentValue ?? Number.NaN)
        .toNumber(),
    ).toBeCloseTo(0, 6);
  });

  it("succeeds in its share of the attempts", () => {
    const { containment } = resultOf({ monitoring: slowly, response: treatment });
    expect(containment?.successes).toBeCloseTo(0.25 * (containment?.attempts ?? Number.NaN), 12);
  });

  it("costs its bearers nothing where an attempt is free", () => {
    const { containment } = resultOf({ monitoring: slowly, response: { ...treatment, cost: 0 } });
    expect(containment?.byBearer.map(({ presentValue }) => presentValue.toNumber())).toEqual([0]);
  });

  it("stands once in the sums of a bearer that pays for structures as well", () => {
    const bearer = known.baseline.infestationByBearer[0]?.id ?? "";
    const without = resultOf({ monitoring: slowly }).infestationByBearer;
    const { containment, infestationByBearer } = resultOf({
      monitoring: slowly,
      response: { ...treatment, bearer, chance: 0 },
    });
    expect(infestationByBearer.map(({ id }) => id)).toEqual(without.map(({ id }) => id));
    const added =
      (infestationByBearer[0]?.presentValue.toNumber() ?? Number.NaN) -
      (without[0]?.presentValue.toNumber() ?? Number.NaN);
    expect(added).toBeCloseTo(containment?.presentValue.toNumber() ?? Number.NaN, 4);
  });

  it("falls to the program's bearer if nobody is named", () => {
    expect(resultOf({ response: treatment }).containment?.line.bearer).toBe(study.money.programBearer);
  });
});

/** Present cost of one lake followed by chance, with all that the option pays. */
function followedLake(result: OptionResult, random: () => number): number {
  const { option, detection: noticing, schedule, unnoticed, containment, programPerYear, hazard } = result;
  const perYear = programPerYear.toNumber();
  const perAttempt = containment ? amountOf(containment.line).toNumber() : 0;
  let [age, isKnown, cost] = [0, false, 0];
  for (const factor of known.discountFactors) {
    const running = isKnown ? option.afterInfestation.share : 1;
    if (age > 0) age++;
    else if (random() < hazard) age = 1;
    let spent = perYear * running;
    let isContained = false;
    if (age > 0) {
      if (!isKnown && random() < (noticing.chanceByAge[age - 1] ?? 1)) {
        isKnown = true;
        if (noticing.containment && age <= noticing.containment.latestAge) {
          spent += perAttempt;
          isContained = random() < noticing.containment.success;
        }
      }
      const stream = isKnown ? schedule.infestation.byYear : unnoticed.harm;
      spent += stream[age - 1]?.toNumber() ?? Number.NaN;
    }
    cost += factor * spent;
    if (isContained) [age, isKnown] = [0, false];
  }
  return cost;
}

describe("the expected cost of an option", () => {
  it("is that of lakes followed one by one", () => {
    const result = resultOf({ monitoring: slowly, response: treatment }, { ...noHarm, [perArrival]: 0.02 });
    const runs = 20_000;
    const { uniform } = randomStream(11, "detection");
    let [sum, squares] = [0, 0];
    for (let run = 0; run < runs; run++) {
      const cost = followedLake(result, uniform);
      sum += cost;
      squares += cost ** 2;
    }
    const mean = sum / runs;
    const standardError = Math.sqrt((squares / runs - mean ** 2) / runs);
    expect(result.containment?.attempts).toBeGreaterThan(0.01);
    expect(Math.abs(mean - result.presentValue.total.toNumber())).toBeLessThan(4 * standardError);
  });
});
