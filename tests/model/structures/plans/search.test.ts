import { describe, expect, it } from "vitest";
import type { PlanEntry } from "../../../../src/model/structures/catalogue.js";
import type { Plan } from "../../../../src/model/structures/component.js";
import {
  type Contender,
  cheapestOf,
  meanValue,
  reckonedOut,
  type Tried,
} from "../../../../src/model/structures/plans/search.js";
import type { PlanValue } from "../../../../src/model/structures/plans/value.js";
import { assumptionSet } from "../../assumptions.js";

const [scrub, dose] = assumptionSet.plans;

interface Trial {
  readonly id: string;
  /** What is known of its value at first and after each step, in each operating year. */
  readonly steps: readonly (readonly number[])[];
  /** What is known by its dates; its first value if left out. */
  readonly dated?: readonly number[];
  /** Months from each date to the next; once a year in the same month if left out. */
  readonly every?: number;
  readonly entry?: PlanEntry | undefined;
}

const contenderOf = ({ id, every, entry = dose }: Trial): Contender => {
  const routine = every === undefined ? { by: "month-of-year", month: 0 } : { by: "interval", months: every };
  const plan = { id, entry, routine } as Plan;
  return { plan, byYear: [plan] };
};

/** A search among trials, with what it began and each step that it took, in order. */
function searched(trials: readonly Trial[]) {
  const [begun, reckoned]: [string[], string[]] = [[], []];
  const tryOut = (contender: Contender): Tried => {
    const trial = trials.find(({ id }) => id === contender.plan.id);
    begun.push(contender.plan.id);
    const byYear = trial?.steps.map((values, year) => {
      let step = 0;
      return {
        get atLeast() {
          return values[step];
        },
        dated: trial.dated?.[year] ?? values[0],
        get isWhole() {
          return step === values.length - 1;
        },
        reckonOn() {
          step += 1;
          reckoned.push(trial.id);
        },
      } as unknown as PlanValue;
    });
    return { contender, byYear: byYear ?? [] };
  };
  return { begun, reckoned, tryOut, find: () => cheapestOf(trials.map(contenderOf), tryOut) };
}

const idOf = ({ contender }: Tried) => contender.plan.id;

describe("the cheapest of several plans", () => {
  it("is found by steps of the one that costs least so far, and the others are left where they stand", () => {
    const trial = searched([
      { id: "one", steps: [[1, 4, 10]] },
      { id: "two", steps: [[2, 3, 5]] },
      { id: "dear", steps: [[6, 90, 95]] },
    ]);
    const found = trial.find();
    expect([idOf(found), meanValue(found)]).toEqual(["two", 5]);
    expect(trial.begun).toEqual(["one", "two", "dear"]);
    expect(trial.reckoned).toEqual(["one", "two", "two", "one"]);
  });

  it("is the first listed of those that cost the same", () => {
    const trials = [
      { id: "one", steps: [[1, 5]] },
      { id: "two", steps: [[5]] },
    ];
    expect(idOf(searched(trials).find())).toBe("one");
    expect(idOf(searched(trials.toReversed()).find())).toBe("two");
  });

  it("is that of the mean over the operating years", () => {
    const trial = searched([
      { id: "even", steps: [[6], [6]] },
      {
        id: "uneven",
        steps: [
          [1, 2],
          [3, 4, 9],
        ],
      },
    ]);
    const found = trial.find();
    // By hand: (2 + 9)/2, after a step in both years and one more in the second.
    expect([idOf(found), meanValue(found)]).toEqual(["uneven", 5.5]);
    expect(trial.reckoned).toHaveLength(3);
  });

  it("needs a plan to choose", () => {
    expect(() => searched([]).find()).toThrow(
      "no plan of the catalogue is possible for a part: it must have one that always is",
    );
  });
});

describe("a plan with all dates of a rarer one", () => {
  const rare: Trial = { id: "rare", steps: [[50, 60]], every: 24 };
  const often: Trial = { id: "often", steps: [[55, 65]], every: 12 };
  const oftener: Trial = { id: "oftener", steps: [[70, 80]], every: 6 };
  const cheap: Trial = { id: "cheap", steps: [[40]], entry: scrub };
  const begunOf = (...trials: readonly Trial[]) => {
    const trial = searched(trials);
    trial.find();
    return trial.begun;
  };

  it("is not begun while the dates of that one alone cost more than another plan", () => {
    expect(begunOf(rare, often, oftener, cheap)).toEqual(["rare", "cheap"]);
  });

  it("is begun where they cost less, whatever else that one costs", () => {
    const steps = [
      [90, 100],
      [110, 120],
    ];
    const dear: Trial = { ...rare, steps, dated: [30, 38] };
    const both = { steps: [[40], [40]] };
    expect(begunOf(dear, { ...often, ...both }, { ...cheap, ...both })).toEqual(["rare", "cheap", "often"]);
  });

  it("is begun where that one is of another entry, has other dates or comes later", () => {
    expect(begunOf({ ...rare, entry: scrub }, often, cheap)).toEqual(["rare", "often", "cheap"]);
    expect(begunOf({ ...rare, every: 18 }, often, cheap)).toEqual(["rare", "often", "cheap"]);
    expect(begunOf(often, rare, cheap)).toEqual(["often", "rare", "cheap"]);
  });

  it("is held against the last before it whose dates are all its own, past one that has others", () => {
    const between: Trial = { id: "between", steps: [[45, 60]], every: 18 };
    expect(begunOf(rare, between, often, cheap)).toEqual(["rare", "between", "cheap"]);
  });
});

describe("a plan reckoned to its end", () => {
  it("is whole in each operating year", () => {
    const trial: Trial = {
      id: "one",
      steps: [
        [1, 2, 3],
        [1, 4],
      ],
    };
    const { tryOut, reckoned } = searched([trial]);
    const tried = tryOut(contenderOf(trial));
    expect(reckonedOut(tried)).toBe(tried);
    expect(meanValue(tried)).toBe(3.5);
    expect(reckoned).toHaveLength(3);
  });
});
