import { describe, expect, it, test } from "vitest";
import { compare } from "../../../src/model/compare.js";
import { drawnHazards, futureOf, lakeDraw } from "../../../src/model/futures/lake-draw.js";
import type { StudyInput } from "../../../src/model/inputs.js";
import { assumed, assumedWith } from "../assumptions.js";
import { relativeGap } from "../near.js";
import { duties, fixedDock, noProgram, program, studyOf } from "../study.js";

const base = studyOf([fixedDock, duties]);
const growing = {
  ...program,
  rampUp: [
    { reach: 0.2, cost: 0.5 },
    { reach: 0.6, cost: 0.8 },
  ],
};
const responding = {
  ...program,
  monitoring: { noticedWithin: [0.2, 0.5, 0.9] },
  response: { name: "Treatment", cost: 700_000, chance: 0.3, latestYear: 2 },
};
const studies: ReadonlyArray<[string, StudyInput]> = [
  ["a program in full", base],
  ["a program that grows", { ...base, options: [noProgram, growing] }],
  ["mussels noticed late, and contained", { ...base, options: [noProgram, responding] }],
  ["wages that rise", { ...base, money: { ...base.money, escalation: [{ group: "wages", rate: 0.03 }] } }],
  ["a lake infested for three years", { ...base, lake: { ...base.lake, infestedSince: 2024 } }],
];

describe("a lake as drawn", () => {
  const other = assumedWith({
    "arrival.founding-unknown": 0.01,
    "population.years-to-peak.quagga-shallow": 5,
  });

  test.each(studies)(
    "is the study computed with those values, to the expected cost of each option: %s",
    (_name, input) => {
      // The other route compares the options in decimals, from the first year on.
      for (const source of [assumed, other]) {
        const draw = lakeDraw(input, source);
        const hazards = drawnHazards(input, source, draw);
        const { baseline, options, lake } = compare(input, source);
        const results = [baseline, ...options.map(({ result }) => result)];
        expect(draw.suitability).toBe(lake.suitability.weight);
        const futures = futureOf(draw, hazards, 0.5);
        expect(futures).toHaveLength(results.length);
        results.forEach((result, index) => {
          expect(
            relativeGap(futures[index]?.expected ?? Number.NaN, result.presentValue.total.toNumber()),
          ).toBeLessThan(1e-9);
          expect(hazards[index]?.at(-1)).toBeCloseTo(input.lake.infestedSince ? 0 : result.hazard, 12);
        });
      }
    },
  );
});

test("a lake as drawn tells how each part is kept in service, at whatever interval", () => {
  const cleaned = (plan: string) => [{ part: "wetted surface", plan, reason: "as found" }];
  const pier = { ...fixedDock, pinned: cleaned("divers-12") };
  const quay = { ...fixedDock, id: "quay", name: "Quay", pinned: cleaned("divers-6") };
  // assumptions/protection-plans.yaml
  const plan = { id: "divers", name: "cleaned at an interval" };
  expect(lakeDraw(studyOf([pier, quay]), assumed).plans).toEqual([
    { structure: "pier", structureName: "Pier", part: "wetted surface", plan },
    { structure: "quay", structureName: "Quay", part: "wetted surface", plan },
  ]);
});

describe("the chances of establishment by year", () => {
  const hazardsOf = (input: StudyInput) => drawnHazards(input, assumed, lakeDraw(input, assumed));

  it("rise to those without a program as it reaches fewer boats", () => {
    const [without, with_] = hazardsOf({ ...base, options: [noProgram, growing] });
    const full = hazardsOf(base)[1]?.[0] ?? Number.NaN;
    expect(without).toHaveLength(base.money.horizon);
    expect(new Set(without).size).toBe(1);
    expect(with_?.[0]).toBeGreaterThan(with_?.[1] ?? Number.NaN);
    expect(with_?.[1]).toBeGreaterThan(full);
    expect(with_?.slice(2)).toEqual(Array(base.money.horizon - 2).fill(full));
    expect(without?.[0]).toBeGreaterThan(with_?.[0] ?? Number.NaN);
  });

  it("are certainty in the first year of a lake that is infested, and no more", () => {
    const infested = { ...base, lake: { ...base.lake, infestedSince: 2024 } };
    for (const hazards of hazardsOf(infested)) {
      expect(hazards).toEqual([1, ...Array<number>(base.money.horizon - 1).fill(0)]);
    }
  });
});

describe("a future", () => {
  it("tells chances with luck left out: fewer lakes are infested at the end where mussels may be contained", () => {
    const source = assumedWith({ "arrival.founding-unknown": 0.01 });
    const input = { ...base, options: [noProgram, responding] };
    const draw = lakeDraw(input, source);
    const hazards = drawnHazards(input, source, draw);
    const [early, late] = [futureOf(draw, hazards, 0.001), futureOf(draw, hazards, 1 - 1e-9)];
    const horizon = input.money.horizon;
    expect(early.map(({ establishment }) => establishment)).toEqual([0, 0]);
    expect(late.map(({ establishment }) => establishment)).toEqual([horizon, horizon]);
    early.forEach(({ everInfested }, option) => {
      const clean = (hazards[option] ?? []).reduce((product, hazard) => product * (1 - hazard), 1);
      expect(everInfested).toBeCloseTo(1 - clean, 14);
      expect(late[option]?.everInfested).toBe(everInfested);
    });
    expect(early[0]?.infestedAtEnd).toBeCloseTo(early[0]?.everInfested ?? Number.NaN, 12);
    expect(early[1]?.infestedAtEnd).toBeLessThan(early[1]?.everInfested ?? Number.NaN);
    expect(early[0]?.cost).toBeGreaterThan(late[0]?.cost ?? Number.NaN);
  });

  it("tells what staff entered by account: a duty counted apart moves out of the costs whole", () => {
    const withItem = (apart: boolean) =>
      studyOf([fixedDock, { ...duties, items: [{ name: "Permits", cost: 50_000, apart, fromYear: 2 }] }]);
    const futures = (apart: boolean) => {
      const input = withItem(apart);
      const draw = lakeDraw(input, assumed);
      return futureOf(draw, drawnHazards(input, assumed, draw), 0.01);
    };
    const beside = futures(true);
    futures(false).forEach(({ expected, cost, duty, other, otherCost }, option) => {
      const moved = beside[option];
      expect(duty).toBeGreaterThan(0);
      expect([other, otherCost]).toEqual([0, 0]);
      expect(moved?.duty).toBe(0);
      expect(moved?.other).toBeCloseTo(duty, 6);
      expect(expected - (moved?.expected ?? Number.NaN)).toBeCloseTo(duty, 6);
      expect(cost - (moved?.cost ?? Number.NaN)).toBeCloseTo(moved?.otherCost ?? Number.NaN, 6);
      expect(cost).toBeGreaterThan(moved?.cost ?? Number.NaN);
    });
  });
});
