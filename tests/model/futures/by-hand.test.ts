import { describe, expect, it } from "vitest";
import { clusteredQuantiles } from "../../../src/model/futures/clusters.js";
import { blockShares, type DrawPlan, valueAtShare } from "../../../src/model/futures/draw-plan.js";
import { establishmentYear, infestedAtEnd } from "../../../src/model/futures/future.js";
import { yearlyCostsOf } from "../../../src/model/futures/yearly-costs.js";
import type { OptionNumbers } from "../../../src/model/option-numbers.js";
import { detectedAtOnce } from "../../../src/model/risk/state-probabilities.js";

const nothing = [0, 0, 0, 0];
const option: OptionNumbers = {
  factors: [1, 1, 1, 1],
  programInYear: nothing,
  keptShare: 1,
  knownAtStart: false,
  scheduleInYear: nothing,
  losses: [],
  detection: detectedAtOnce,
  attemptInYear: nothing,
};
const hazards = [0.5, 0.5, 0.5, 0.5];

describe("the costs of a future by year", () => {
  it("are a program that keeps its share once mussels are known", () => {
    const costsOf = yearlyCostsOf({ ...option, programInYear: [100, 200, 300, 400], keptShare: 0.2 });
    // By hand: in full up to the year of establishment, a fifth after it.
    expect([...costsOf(hazards, 1)]).toEqual([100, 200, expect.closeTo(60, 12), expect.closeTo(80, 12)]);
    expect([...costsOf(hazards, 4)]).toEqual([100, 200, 300, 400]);
    // Asked again, the same.
    expect([...costsOf(hazards, 1)]).toEqual([100, 200, expect.closeTo(60, 12), expect.closeTo(80, 12)]);
  });

  it("are those of infestations that begin, are contained, and begin again", () => {
    // A loss of 100 in the first year of each. Half are noticed in the first year and the rest in the second, and of
    // those noticed 80 % contained: 0.4 in either year. By hand, with c the chance to be clean when a year begins and
    // f that one begins in it: f = 1; c = 0.4, f = 0.2; c = 0.2 + 0.08 + 0.4 = 0.68, f = 0.34;
    // c = 0.34 + 0.136 + 0.08 = 0.556, f = 0.278.
    const loss = { unnoticed: [100, 0, 0, 0], noticed: [100, 0, 0, 0], share: undefined };
    const costsOf = yearlyCostsOf({
      ...option,
      losses: [loss],
      detection: { chanceByAge: [0.5], containment: { success: 0.8, latestAge: 2 } },
    });
    expect([...costsOf(hazards, 0)]).toEqual([100, 20, 34, 27.8].map((each) => expect.closeTo(each, 9)));
    expect([...costsOf(hazards, 1)]).toEqual([0, 100, 20, 34].map((each) => expect.closeTo(each, 9)));
    expect([...costsOf(hazards, 4)]).toEqual(nothing);
  });
});

describe("the year in which mussels establish", () => {
  it("is the first in which their chance up to then is above the luck, and none without a chance", () => {
    // By hand: 0, 0.5 and 0.75 up to the first three years.
    const chances = [0, 0.5, 0.5];
    expect([0, 0.49, 0.5, 0.74, 0.75].map((luck) => establishmentYear(chances, luck))).toEqual([
      1, 1, 2, 2, 3,
    ]);
  });
});

describe("the chance of mussels at the end", () => {
  it("is less by what is contained before it", () => {
    // By hand: contained with 0.4 in the first year and 0.3 in the second; of the last year only its first counts.
    const costs = { clean: nothing, established: nothing, contained: [0.4, 0.3] };
    expect(infestedAtEnd(costs).established).toEqual(
      [0.3, 0.3, 0.3, 0.6].map((each) => expect.closeTo(each, 12)),
    );
    expect(infestedAtEnd(costs).clean).toEqual(nothing);
  });
});

describe("quantiles of draws in clusters", () => {
  it("have limits at the share up to them, ties counted, by t standard errors of the clusters' shares", () => {
    // By hand: shares up to 0 of the four clusters are 1, 1, 1/2 and 0: mean 0.625, standard error
    // sqrt((2 x 0.375² + 0.125² + 0.625²)/3/4) = 0.239357; t of 50 % and 3 degrees of freedom is 0.764892 (printed tables, from memory: 0.765), the margin 0.183082.
    // Type 7 of 0, 0, 0, 0, 0, 1, 1, 1: the median 0, at 0.316918 still 0, at 0.683082 between the fifth and the sixth
    // 7 x 0.683082 - 4 = 0.781574.
    const draws = [0, 0, 0, 0, 0, 1, 1, 1];
    const [{ value, low, high } = { value: 1, low: 1, high: 0 }] = clusteredQuantiles(draws, 4, [0.5], 0.5);
    expect([value, low]).toEqual([0, 0]);
    expect(high).toBeCloseTo(0.781574, 5);
  });
});

describe("what is drawn", () => {
  const uniform = { kind: "uniform", low: 0, high: 1 } as const;

  it("stays within its limits, and is its quantile between them", () => {
    const valueAt = valueAtShare({
      id: "share",
      distribution: uniform,
      stage: "lake",
      limits: { low: 0.2, high: 0.7 },
    });
    expect([0, 0.1, 0.5, 0.69, 0.9].map(valueAt)).toEqual([0.2, 0.2, 0.5, 0.69, 0.7]);
  });

  it("moves with nothing in a group of which it is the only one", () => {
    const plan: DrawPlan = {
      seed: 3,
      sampling: "latin-hypercube",
      inputs: [{ id: "alone", distribution: uniform, stage: "lake" }],
      groups: [],
    };
    const group = { members: ["alone"], rankCorrelation: 0.9 };
    expect(blockShares({ ...plan, groups: [group] }, 0)).toEqual(blockShares(plan, 0));
  });
});
