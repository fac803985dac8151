import { describe, expect, it } from "vitest";
import { compare } from "../../../src/model/compare.js";
import type { ProgramOption } from "../../../src/model/inputs.js";
import { foundingChances } from "../../../src/model/program/founding-chances.js";
import { reachingInYears } from "../../../src/model/program/ramp-up.js";
import { assumed } from "../assumptions.js";
import { relativeGap } from "../near.js";
import { floatingDock, noProgram, program, studyOf } from "../study.js";

function resultOf(option: ProgramOption) {
  const [balance] = compare(studyOf([floatingDock], { options: [noProgram, option] }), assumed).options;
  if (!balance) throw new Error("no program");
  return balance.result;
}

const full = resultOf(program);

describe("a program that grows", () => {
  it("is the program in full where it reaches all and costs all from the first year", () => {
    const grown = resultOf({ ...program, rampUp: [{ reach: 1, cost: 1 }] });
    expect(grown.presentValue.total.equals(full.presentValue.total)).toBe(true);
  });

  it("lets all boats through in a year in which it reaches none, as no program does", () => {
    const grown = resultOf({ ...program, rampUp: [{ reach: 0, cost: 0.4 }] });
    const { baseline } = compare(studyOf([floatingDock]), assumed);
    expect(grown.reachingByYear[0]?.launches).toBeCloseTo(baseline.arrivals.slipThrough, 12);
    expect(grown.reachingByYear.slice(1)).toEqual(full.reachingByYear.slice(1));
    expect(grown.infestedByYear[0]).toBeCloseTo(baseline.infestedByYear[0] ?? Number.NaN, 14);
  });

  it("may be planned for longer than the study looks ahead", () => {
    const rampUp = Array.from({ length: 25 }, () => ({ reach: 0.5, cost: 1 }));
    const { reachingByYear } = resultOf({ ...program, rampUp });
    expect(reachingByYear).toHaveLength(full.reachingByYear.length);
    expect(new Set(reachingByYear.map(({ launches }) => launches)).size).toBe(1);
  });

  it("has nothing to reach boats with where it checks none", () => {
    const study = studyOf([floatingDock]);
    const reachingOf = (rampUp: ProgramOption["rampUp"]) =>
      reachingInYears({ ...noProgram, rampUp }, study, assumed, foundingChances(study.boats, assumed));
    expect(reachingOf([{ reach: 0.5, cost: 1 }])).toEqual(reachingOf([]));
  });

  it("costs its share in its first years, and all after them", () => {
    const rampUp = [
      { reach: 1, cost: 0.4 },
      { reach: 1, cost: 0.7 },
    ];
    const { expectedByYear } = resultOf({ ...program, rampUp });
    const shareOf = (year: number) =>
      (expectedByYear[year]?.program.toNumber() ?? Number.NaN) /
      (full.expectedByYear[year]?.program.toNumber() ?? Number.NaN);
    expect([0, 1, 2, 10].map((year) => Number(shareOf(year).toFixed(12)))).toEqual([0.4, 0.7, 1, 1]);
  });

  it("raises the chance of infestation by what it does not reach", () => {
    // By hand: clean through two years of chances h1 and h2 and the rest at h.
    const grown = resultOf({
      ...program,
      rampUp: [
        { reach: 0.5, cost: 1 },
        { reach: 0.8, cost: 1 },
      ],
    });
    const [first = Number.NaN, second = Number.NaN] = grown.infestedByYear;
    expect(first).toBeGreaterThan(full.hazard);
    const [most = Number.NaN, fewer = Number.NaN] = grown.reachingByYear.map(({ launches }) => launches);
    expect(fewer).toBeGreaterThan(full.arrivals.slipThrough);
    expect(fewer).toBeLessThan(most);
    const later = grown.infestedByYear.slice(2).map((infested, year) => {
      const clean = (1 - second) * (1 - full.hazard) ** (year + 1);
      return relativeGap(1 - infested, clean);
    });
    expect(Math.max(...later)).toBeLessThan(1e-12);
  });
});
