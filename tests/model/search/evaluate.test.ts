import { describe, expect, it } from "vitest";
import type { OptionNumbers } from "../../../src/model/option-numbers.js";
import { detectedAtOnce } from "../../../src/model/risk/state-probabilities.js";
import { evaluator } from "../../../src/model/search/evaluate.js";
import type { LakeTerms } from "../../../src/model/search/lake-terms.js";

const each = (value: number) => [value, value, value];
/** An infestation costs 100 in its first year and 40 in each one after it; half of the program goes on. */
const idle: OptionNumbers = {
  factors: [1, 0.5, 0.25],
  programInYear: each(10),
  keptShare: 0.5,
  knownAtStart: false,
  scheduleInYear: each(0),
  losses: [{ unnoticed: each(0), noticed: [100, 40, 40], share: undefined }],
  detection: detectedAtOnce,
  attemptInYear: each(0),
};
const rates = { ofBoats: 1, unchecked: each(0), checked: each(0), openLaunches: 100, shape: 1 };
/** Nobody met: ln 4 foundings a year, three chances in four. All met: none. */
const future: LakeTerms["futures"][number] = {
  rates,
  referenceLaunches: 100,
  through: [
    {
      closed: { launches: 100, foundings: Math.log(4) },
      open: { launches: 50, foundings: 0 },
      deterrence: 0,
    },
  ],
};
/** A program of 10 a year, of 14 with the hours of its option and of 8 with its fees, which meets everybody. */
const lake: LakeTerms = {
  programs: [{ idle, hours: each(14), fees: each(8), coverage: 1 }],
  futures: [future],
  typed: [],
};
const inFull = each(1).map((one) => ({ reach: one, cost: one }));
const half = { set: 0, coverage: { of: 0.5 }, years: inFull };
/** The chance over three years of the rate of a founding, in units of ln 2 a year. */
const chanceOf = (rate: number) => expect.closeTo(1 - 2 ** (-3 * rate), 12);

describe("a program of a search, by hand", () => {
  it("costs what its chances make of losses and of a program that is kept in part", () => {
    // Half met: ln 2 foundings, one chance in two. Founded 1/2, 1/4, 1/8; clean through the year 1/2, 1/4, 1/8.
    // An infestation from year 1, 2, 3 on costs 100 + 20 + 10, 50 + 10 and 25: 65 + 15 + 3.125.
    // The program runs in 1, 1/4 + 1/4 + 1/4, 1/8 + 1/4 + 1/8 + 1/8 of the years: 1 + 0.375 + 0.15625 = 1.53125 of one.
    const met = evaluator([lake]).met(half);
    expect(met).toMatchObject({ loss: 83.125, idle: 15.3125, perHours: 6.125, fees: -1.53125 });
    expect(met.chance).toBeCloseTo(7 / 8, 12);
    // In twice the hours: 15.3125 − 1.53125 + 2 × 6.125.
    expect(met.at(2)).toEqual({
      loss: 83.125,
      program: 26.03125,
      cost: 109.15625,
      chance: met.chance,
      byLake: [109.15625],
    });
    expect(evaluator([lake]).of({ ...half, hours: 2 })).toEqual(met.at(2));
  });

  it("reaches nobody in a year in which it only begins", () => {
    // Three chances in four and then one in two: founded 3/4, 1/8, 1/16, and the program runs in 1, 5/8, 9/16 of the
    // years, at half of its cost in the first: 0.5 + 0.3125 + 0.140625.
    const years = [{ reach: 0, cost: 0.5 }, ...inFull.slice(1)];
    const met = evaluator([lake]).met({ ...half, years });
    expect(met).toMatchObject({ loss: 106.5625, idle: 9.53125 });
    expect(met.chance).toBeCloseTo(15 / 16, 12);
  });

  it("runs again after an infestation that was contained", () => {
    // Half of those detected are contained in their first year, at 20 a try: clean 1, 3/4, 9/16 of the time when a year
    // begins; founded 1/2, 3/8, 9/32. From year 1, 2, 3 on 100 + 10 + 5, 50 + 5, 25, and 20, 10, 5 for the try.
    const contained: OptionNumbers = {
      ...idle,
      detection: { chanceByAge: [], containment: { success: 0.5, latestAge: 1 } },
      attemptInYear: each(20),
    };
    const programs = [{ idle: contained, hours: each(14), fees: each(8), coverage: 1 }];
    const met = evaluator([{ ...lake, programs }]).met(half);
    expect(met.loss).toBeCloseTo(135 / 2 + (65 * 3) / 8 + (30 * 9) / 32, 12);
    // A quarter of the program beside an infestation that is known and not contained: 1, 0.875, 0.78125.
    expect(met.idle).toBeCloseTo(10 * (1 + 0.4375 + 0.1953125), 12);
    expect(met.chance).toBeCloseTo(7 / 8, 12);
  });

  it("runs again after one that was detected in its second year", () => {
    // Half of the infestations are detected in their first year, the others in their second, and half of either contained: a
    // quarter and a quarter. Clean when a year begins 1, 5/8, 33/64; founded 32/64, 20/64, 33/128.
    const contained: OptionNumbers = {
      ...idle,
      detection: { chanceByAge: [0.5], containment: { success: 0.5, latestAge: 2 } },
      attemptInYear: each(20),
    };
    const programs = [{ idle: contained, hours: each(14), fees: each(8), coverage: 1 }];
    const met = evaluator([{ ...lake, programs }]).met(half);
    // By age: 50 and 10 for the try, 30 and 10, 20: from year 1, 2, 3 on 60 + 20 + 5, 30 + 10, 15.
    expect(met.loss).toBeCloseTo(85 / 2 + (40 * 20) / 64 + (15 * 33) / 128, 12);
    // Beside an infestation all of the program in its first year, then half and half of a quarter, then half of a half.
    const [second, third] = [5 / 8 + 0.625 / 2, 33 / 64 + (0.625 * 20) / 64 + 0.25 / 2];
    expect(met.idle).toBeCloseTo(10 * (1 + second / 2 + third / 4), 12);
  });

  it("is the mean over futures and lakes", () => {
    const [through] = future.through;
    if (!through) throw new Error("no measures");
    const safe = { ...future, through: [{ ...through, closed: through.open }] };
    const both = evaluator([lake, { ...lake, futures: [future, safe] }]);
    const met = both.met(half);
    // Without foundings the program runs in all three years: 1.75 of one, at 10.
    expect(met.loss).toBeCloseTo((83.125 * 3) / 4, 12);
    expect(met.idle).toBeCloseTo((15.3125 * 3 + 17.5) / 4, 12);
    expect(met.chance).toBeCloseTo(((7 / 8) * 3) / 4, 12);
    expect(met.at(0).byLake).toEqual([
      expect.closeTo(83.125 + 15.3125 - 1.53125, 12),
      expect.closeTo((83.125 + 15.3125 + 17.5 - 1.53125 - 1.75) / 2, 12),
    ]);
  });

  it("is worked out once for what it meets, whatever its hours", () => {
    const search = evaluator([lake]);
    expect(search.count()).toBe(0);
    expect(search.of({ ...half, hours: 1 }).cost).toBeLessThan(search.of({ ...half, hours: 2 }).cost);
    expect(search.count()).toBe(1);
    search.met({ ...half, coverage: { times: 0.5 } });
    search.met({ ...half, years: [...inFull] });
    expect(search.count()).toBe(2);
    expect(search.met({ ...half, coverage: { of: 0.6 } }).chance).toBeLessThan(7 / 8);
  });

  it("is told apart by its years, its measures, and whether its share is of all", () => {
    const futures = [{ ...future, through: [...future.through, ...future.through] }];
    const search = evaluator([{ ...lake, futures, programs: [...lake.programs, ...lake.programs] }]);
    const other = { ...half, years: [{ reach: 0, cost: 0.5 }, ...inFull.slice(1)] };
    const cheap = { ...half, years: [{ reach: 1, cost: 0.5 }, ...inFull.slice(1)] };
    expect([half, other, half].map((each) => search.met(each).chance)).toEqual([
      expect.closeTo(7 / 8, 12),
      expect.closeTo(15 / 16, 12),
      expect.closeTo(7 / 8, 12),
    ]);
    // Half of the first year's 10.
    expect([half, cheap].map((each) => search.met(each).idle)).toEqual([15.3125, 10.3125]);
    search.met({ ...half, set: 1 });
    search.met({ ...half, coverage: { times: 0.5 } });
    expect(search.count()).toBe(5);
  });
});

describe("what gets through a program of a search, by hand", () => {
  const chanceWith = (changes: { deterrence?: number; shape?: number; checked?: number; own?: number }) => {
    const { deterrence = 0, shape = 1, checked = 0, own = 1 } = changes;
    const futures = [
      {
        ...future,
        rates: { ...rates, shape, checked: each(checked * Math.log(2)) },
        through: future.through.map((one) => ({ ...one, deterrence })),
      },
    ];
    const programs = lake.programs.map((one) => ({ ...one, coverage: own }));
    return evaluator([{ ...lake, programs, futures }]).met(half).chance;
  };

  it("falls with what is met and deterred", () => {
    expect(chanceWith({})).toEqual(chanceOf(1));
    // Half met of an option that meets all: half of its 60 % kept away, 0.7 left. Of one that meets half: all 60 %.
    expect(chanceWith({ deterrence: 0.6 })).toEqual(chanceOf(0.7));
    expect(chanceWith({ deterrence: 0.6, own: 0.5 })).toEqual(chanceOf(0.4));
  });

  it("acts together by the launches left, and lets as much through of ways that stations check", () => {
    // Half met: 75 of 100 launches.
    expect(chanceWith({ shape: 2 })).toEqual(chanceOf(0.75));
    expect(chanceWith({ shape: 3 })).toEqual(chanceOf(0.75 ** 2));
    expect(chanceWith({ shape: 2, deterrence: 0.6 })).toEqual(chanceOf(0.7 * 0.7 * 0.75));
    expect(chanceWith({ checked: 2 })).toEqual(chanceOf(1 + 2 * 0.75));
  });

  it("changes with the years of the other ways in", () => {
    const futures = [{ ...future, rates: { ...rates, unchecked: [0, Math.log(2), Math.log(2)] } }];
    const { chance } = evaluator([{ ...lake, futures }]).met(half);
    expect(chance).toBeCloseTo(1 - 2 ** -5, 12);
    const late = [{ ...future, rates: { ...rates, checked: [0, Math.log(2), Math.log(2)] } }];
    expect(evaluator([{ ...lake, futures: late }]).met(half).chance).toBeCloseTo(1 - 2 ** -4.5, 12);
  });

  it("acts together by the launches left also in a year in which it only begins", () => {
    // A quarter met at first: 87.5 of 100 launches and 0.75 of ln 4 foundings; then as above.
    const futures = [{ ...future, rates: { ...rates, shape: 2 } }];
    const years = [{ reach: 0.5, cost: 1 }, ...inFull.slice(1)];
    const { chance } = evaluator([{ ...lake, futures }]).met({ ...half, years });
    expect(chance).toBeCloseTo(1 - 2 ** -(1.5 * 0.875 + 2 * 0.75), 12);
  });

  it("is nothing of no launches", () => {
    const none = { launches: 0, foundings: 0 };
    const futures = [
      { ...future, rates: { ...rates, shape: 0.5 }, through: [{ closed: none, open: none, deterrence: 0 }] },
    ];
    expect(evaluator([{ ...lake, futures }]).met(half)).toMatchObject({ chance: 0, loss: 0, idle: 17.5 });
  });
});
