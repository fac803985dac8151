import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { randomStream } from "../../../src/model/random/generator.js";
import {
  type Detection,
  detectedAtOnce,
  goAlike,
  stateProbabilities,
} from "../../../src/model/risk/state-probabilities.js";
import { relativeGap } from "../near.js";
import { chance, courseCases } from "./hazard-cases.js";

const constantly = (hazard: number, years: number) => Array<number>(years).fill(hazard);
const sumOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0);

describe("a lake in which mussels are noticed at once", () => {
  it("is infested by the end of year t with the chance 1 - (1-h)^t", () => {
    // Geometric distribution (standard).
    fc.assert(
      fc.property(chance, fc.integer({ min: 1, max: 80 }), (hazard, horizon) => {
        stateProbabilities(constantly(hazard, horizon), detectedAtOnce).forEach(
          ({ infested, known }, year) => {
            expect(infested).toBeCloseTo(1 - (1 - hazard) ** (year + 1), 12);
            expect(known).toBeCloseTo(infested, 12);
          },
        );
      }),
      { seed: 25, numRuns: 200 },
    );
  });

  it("is infested after 1/h years on average", () => {
    // Mean of the geometric distribution, 1/h (standard).
    const last = stateProbabilities(constantly(0.08, 600), detectedAtOnce).at(-1);
    const mean = sumOf((last?.noticed ?? []).map((established, index) => established * (index + 1)));
    expect(relativeGap(mean, 12.5)).toBeLessThan(1e-9);
  });

  it("is infested in the first year for certain at a hazard of 1, and never at 0", () => {
    const certain = stateProbabilities(constantly(1, 3), detectedAtOnce);
    expect(certain.map(({ noticed }) => noticed)).toEqual([[1], [1, 0], [1, 0, 0]]);
    expect(certain.map(({ infested }) => infested)).toEqual([1, 1, 1]);
    expect(stateProbabilities(constantly(0, 3), detectedAtOnce).map(({ infested }) => infested)).toEqual([
      0, 0, 0,
    ]);
  });

  it("leaves half of the lakes clean after 13.5 years at 5 %", () => {
    // ln 2/-ln 0.95 = 13.513 years (computed): below half by year 13, above by year 14.
    const course = stateProbabilities(constantly(0.05, 14), detectedAtOnce);
    expect(course[12]?.infested).toBeLessThan(0.5);
    expect(course[13]?.infested).toBeGreaterThan(0.5);
  });
});

describe("two ways to detect mussels and to attempt containment", () => {
  const detection: Detection = {
    chanceByAge: [0.2, 0.5],
    containment: { success: 0.3, latestAge: 2 },
  };

  it("go alike where every chance is the same, and an attempt too, if any", () => {
    expect(goAlike(detection, structuredClone(detection))).toBe(true);
    expect(goAlike(detectedAtOnce, { chanceByAge: [] })).toBe(true);
    expect(goAlike({ ...detection, firstHarmAge: 1 }, { ...detection, firstHarmAge: 4 })).toBe(true);
  });

  it.each<[string, Detection]>([
    ["its success", { ...detection, containment: { success: 0.4, latestAge: 2 } }],
    ["its latest year", { ...detection, containment: { success: 0.3, latestAge: 3 } }],
    ["whether anything is tried", { chanceByAge: [0.2, 0.5] }],
    ["one chance", { ...detection, chanceByAge: [0.2, 0.6] }],
    ["the number of chances", { ...detection, chanceByAge: [0.2, 0.5, 0.9] }],
  ])("do not where they differ in %s", (_name, other) => {
    expect(goAlike(detection, other)).toBe(false);
    expect(goAlike(other, detection)).toBe(false);
  });
});

describe("the course of an infestation", () => {
  it("keeps chances between 0 and 1, and the known within the infested", () => {
    fc.assert(
      fc.property(courseCases, ({ hazards, noticing }) => {
        for (const { unnoticed, noticed, infested, known, attempts } of stateProbabilities(
          hazards,
          noticing,
        )) {
          for (const each of [...unnoticed, ...noticed, attempts])
            expect(each).toBeGreaterThanOrEqual(-1e-15);
          const during = sumOf(unnoticed) + sumOf(noticed);
          expect(during).toBeLessThan(1 + 1e-12);
          expect(infested).toBeLessThan(during + 1e-12);
          expect(known).toBeLessThan(infested + 1e-12);
        }
      }),
      { seed: 41, numRuns: 300 },
    );
  });

  it("goes the same way, noticed or not, if nothing is tried", () => {
    fc.assert(
      fc.property(courseCases, ({ hazards, noticing }) => {
        const slow = stateProbabilities(hazards, { chanceByAge: noticing.chanceByAge });
        stateProbabilities(hazards, detectedAtOnce).forEach(({ infested }, year) => {
          expect(slow[year]?.infested).toBeCloseTo(infested, 12);
        });
      }),
      { seed: 42, numRuns: 200 },
    );
  });

  it("is noticed by hand: half in the first year, half of the rest in the second, all in the third", () => {
    const course = stateProbabilities([1, 0, 0], { chanceByAge: [0.5, 0.5] });
    expect(course.map(({ noticed }) => noticed[0])).toEqual([0.5, 0.75, 1]);
    expect(course.map(({ unnoticed }) => unnoticed[0])).toEqual([0.5, 0.25, 0]);
  });

  it("is contained by hand: tried in its first year alone, and at risk again from the next", () => {
    const course = stateProbabilities([0.4, 0.4], {
      chanceByAge: [0.5],
      containment: { success: 0.5, latestAge: 1 },
    });
    // Year 1: 0.4 established, 0.2 noticed and tried, 0.1 contained. Year 2: 0.7 clean, 0.28 established, 0.14 tried,
    // 0.07 contained; the other 0.2 of year 1 is noticed too late to try.
    expect(course[0]?.infested).toBeCloseTo(0.3, 14);
    expect(course[1]?.attempts).toBeCloseTo(0.14, 14);
    expect(course[1]?.infested).toBeCloseTo(0.3 + 0.28 - 0.07, 14);
    expect(course[1]?.known).toBeCloseTo(0.1 + 0.2 + 0.07, 14);
  });

  it("agrees with lakes followed one by one", () => {
    const hazards = constantly(0.1, 12);
    const noticing = { chanceByAge: [0.1, 0.3, 0.6], containment: { success: 0.3, latestAge: 2 } };
    const runs = 20_000;
    const { uniform: random } = randomStream(7, "lakes");
    let infested = 0;
    let attempts = 0;
    for (let run = 0; run < runs; run++) {
      let age = 0;
      let isKnown = false;
      for (const hazard of hazards) {
        if (age > 0) age++;
        else if (random() < hazard) age = 1;
        if (age > 0 && !isKnown && random() < (noticing.chanceByAge[age - 1] ?? 1)) {
          isKnown = true;
          if (age > noticing.containment.latestAge) continue;
          attempts++;
          if (random() < noticing.containment.success) {
            age = 0;
            isKnown = false;
          }
        }
      }
      if (age > 0) infested++;
    }
    const course = stateProbabilities(hazards, noticing);
    const chanceAtEnd = course.at(-1)?.infested ?? Number.NaN;
    const expectedAttempts = sumOf(course.map((year) => year.attempts));
    // Four standard errors of a share, and of a count whose variance is near its mean.
    expect(Math.abs(infested / runs - chanceAtEnd)).toBeLessThan(
      4 * Math.sqrt((chanceAtEnd * (1 - chanceAtEnd)) / runs),
    );
    expect(Math.abs(attempts / runs - expectedAttempts)).toBeLessThan(4 * Math.sqrt(expectedAttempts / runs));
  });
});
