import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { OtherWay } from "../../../src/model/inputs.js";
import { chanceOfSource, namedWays, typicalWays } from "../../../src/model/risk/other-ways.js";
import { chance } from "./hazard-cases.js";

const way = (each: Partial<OtherWay>): OtherWay => ({ name: "Canal", chance: 0.02, checked: false, ...each });
const rate = (yearly: number) => -Math.log(1 - yearly);

describe("rates of other ways in that a study names", () => {
  it("are −ln(1 − p) of each, added, those that stations check apart", () => {
    // By hand: 1 %, 2 % and a checked 5 % a year.
    const found = namedWays([way({ chance: 0.01 }), way({}), way({ chance: 0.05, checked: true })], 2);
    for (const year of [0, 1]) {
      expect(found.unchecked[year]).toBeCloseTo(rate(0.01) + rate(0.02), 14);
      expect(found.checked[year]).toBeCloseTo(rate(0.05), 14);
    }
  });

  it("give back their own chance, and several that none of them brings mussels", () => {
    fc.assert(
      fc.property(
        fc.array(
          chance.filter((each) => each < 1),
          { maxLength: 6 },
        ),
        (chances) => {
          const { unchecked } = namedWays(
            chances.map((each) => way({ chance: each })),
            1,
          );
          const clean = chances.reduce((left, each) => left * (1 - each), 1);
          expect(Math.exp(-(unchecked[0] ?? Number.NaN))).toBeCloseTo(clean, 12);
        },
      ),
      { seed: 511, numRuns: 100 },
    );
  });

  it("begin in the year in which the source is infested", () => {
    const { unchecked } = namedWays([way({ fromYear: 2 })], 4);
    expect(unchecked.slice(0, 2)).toEqual([0, 0]);
    expect(unchecked[2]).toBeCloseTo(rate(0.02), 14);
    expect(unchecked[3]).toBe(unchecked[2]);
  });

  it("grow with the chance that the source is infested by then, by hand", () => {
    // A source that becomes infested with 10 % a year is so with 0.1, 0.19 and 0.271 by the end of years 1, 2 and 3.
    const { unchecked } = namedWays([way({ sourceChance: 0.1 })], 3);
    [0.1, 0.19, 0.271].forEach((infested, year) => {
      expect(unchecked[year]).toBeCloseTo(rate(0.02) * infested, 14);
    });
  });

  it("grow from the year in which the source may first be infested, by hand", () => {
    const { unchecked } = namedWays([way({ fromYear: 2, sourceChance: 0.1 })], 4);
    [0, 0, 0.1, 0.19].forEach((infested, year) => {
      expect(unchecked[year]).toBeCloseTo(rate(0.02) * infested, 14);
    });
  });

  it("are as from the start for a source that is certain to be infested at once, and none for one that never is", () => {
    expect(namedWays([way({ sourceChance: 1 })], 3)).toEqual(namedWays([way({})], 3));
    expect(namedWays([way({ sourceChance: 0 })], 2).unchecked).toEqual([0, 0]);
    expect(chanceOfSource(way({ sourceChance: 0 }), 9)).toBe(0);
  });

  it("are without bound for a way that is certain, and none before its source is infested", () => {
    const certain = way({ chance: 1, fromYear: 1 });
    expect(namedWays([certain], 2).unchecked).toEqual([0, Number.POSITIVE_INFINITY]);
    expect(namedWays([way({ chance: 1, sourceChance: 0 })], 2).unchecked).toEqual([0, 0]);
  });

  it("are none where the study says that there are none", () => {
    expect(namedWays([], 3)).toEqual({ unchecked: [0, 0, 0], checked: [0, 0, 0] });
  });
});

describe("the typical rate of other ways in", () => {
  it("is the share φ of all foundings without a program, by hand", () => {
    // φ = 0.2 of boats at 0.08: 0.02, a fifth of 0.1. No check stops it.
    const { unchecked, checked } = typicalWays(0.08, 3, () => 0.2);
    for (const each of unchecked) expect(each / (each + 0.08)).toBeCloseTo(0.2, 14);
    expect(unchecked).toHaveLength(3);
    expect(checked).toEqual([0, 0, 0]);
  });
});
