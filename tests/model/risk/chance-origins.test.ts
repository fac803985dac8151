import { describe, expect, it } from "vitest";
import { compare } from "../../../src/model/compare.js";
import type { Boats } from "../../../src/model/inputs.js";
import { chanceOrigins } from "../../../src/model/risk/chance-origins.js";
import { assumed } from "../assumptions.js";
import { boats, floatingDock, otherChance, ownWayAlone, studyOf } from "../study.js";

const spread = 0.8;

function originsOf(changes: Partial<Boats>) {
  const input = studyOf([floatingDock], { boats: { ...boats, ...changes } });
  const { baseline, lake } = compare(input, assumed);
  const found = { baseline, suitability: lake.suitability.weight };
  return { origins: chanceOrigins(input, found, assumed, () => spread), baseline };
}

/** −ln(1−h) of a yearly chance. */
const rateOf = (chance: number) => -Math.log(1 - chance);
const pooled: Partial<Boats> = { comparable: { ...ownWayAlone, weightOfBoats: 0.6 } };

describe("what a yearly chance without a program comes from", () => {
  it("is the boats' rate and that of the other ways, of which no program stops those that no check stops", () => {
    const { origins, baseline } = originsOf(pooled);
    const all = rateOf(baseline.hazard);
    expect(origins.unchecked).toBeCloseTo(rateOf(otherChance), 12);
    expect(origins.checked).toBe(0);
    expect(origins.pooled.rate + origins.unchecked).toBeCloseTo(all, 12);
    expect(origins.beyondPrograms).toBeCloseTo(rateOf(otherChance) / all, 12);
    const { beyondPrograms } = originsOf({ otherWays: [] }).origins;
    expect(beyondPrograms).toBe(0);
  });

  it("has beyond programs the part of ways that no check stops, beside those that are checked", () => {
    const otherWays = [0.01, 0.03].map((chance) => ({ name: "Way", chance, checked: chance === 0.03 }));
    const { origins } = originsOf({ ...pooled, otherWays });
    const all = origins.pooled.rate + rateOf(0.01) + rateOf(0.03);
    expect(origins.checked).toBeCloseTo(rateOf(0.03), 12);
    expect(origins.beyondPrograms).toBeCloseTo(rateOf(0.01) / all, 12);
  });

  it("has no part beyond programs, and no factor, where nothing brings mussels", () => {
    const never: Partial<Boats> = {
      comparable: { ...ownWayAlone, rate: { own: 0 }, weightOfBoats: 0.6 },
      otherWays: [],
    };
    expect(originsOf(never).origins).toMatchObject({ beyondPrograms: 0, learnedFactor: 1 });
  });

  it("is told by class: launches of a year, fouled, and a founding of each", () => {
    const { origins } = originsOf({});
    // By hand: 18,000 launches a year, 2.5 % of them from infested waters, of which 3 % are fouled.
    expect(origins.fouledLaunches).toBeCloseTo(13.5, 9);
    expect(origins.classes.map(({ id, fouled }) => [id, fouled])).toEqual([
      ["local", 0],
      ["infested", expect.closeTo(13.5, 9)],
    ]);
    expect(origins.classes[1]?.founding).toBe(assumed("arrival.founding-unknown"));
  });

  it("weighs launches against comparable lakes, with the spread that independent estimates have together", () => {
    const { byLaunches, byLakes, pooled: both, weightOfBoats } = originsOf(pooled).origins;
    expect(weightOfBoats).toBe(0.6);
    expect(both.rate).toBeCloseTo(byLaunches.rate ** 0.6 * byLakes.rate ** 0.4, 12);
    expect(both.spread).toBeCloseTo(Math.hypot(0.6 * byLaunches.spread, 0.4 * byLakes.spread), 12);
    // By hand: one class alone brings foundings, so that its spread is whole.
    expect(byLaunches.spread).toBeCloseTo(Math.hypot(spread, assumed("arrival.fouled-count-spread")), 12);
  });

  it("tells how many fouled launches the rate of comparable lakes would need, and none without any", () => {
    const { origins } = originsOf(pooled);
    const each = origins.byLaunches.rate / origins.fouledLaunches;
    expect((origins.launchesForLakes ?? Number.NaN) * each).toBeCloseTo(origins.byLakes.rate, 12);
    const unfouled = boats.classes.map((one) => ({ ...one, fouled: 0 }));
    expect(originsOf({ ...pooled, classes: unfouled }).origins.launchesForLakes).toBeUndefined();
  });

  it("has the factor of clean years, 1 where there are none", () => {
    expect(originsOf({}).origins).toMatchObject({ learnedFactor: 1, clean: undefined });
    // By hand: with the same width the rate moves as its median does, here to a half.
    const learned = {
      medianBefore: 0.02,
      medianAfter: 0.01,
      narrowing: 1,
      chanceOfClean: 0.7,
      infestedUnseen: 0.1,
    };
    const { origins } = originsOf({ ...pooled, learned });
    expect(origins.learnedFactor).toBeCloseTo(1 / 2, 12);
    expect(origins.clean).toBe(learned);
  });
});
