import { describe, expect, it } from "vitest";
import type { Boats, ComparableLakes } from "../../../src/model/inputs.js";
import { lakesVariance, launchesVariance, weightOf } from "../../../src/model/risk/weighing.js";
import { boats, ownWayAlone } from "../study.js";

/** Round numbers, so that all can be worked out by hand; invented. */
const numbers: Record<string, number> = {
  "arrival.founding-unknown": 0.001,
  "arrival.founding-near": 0.004,
  "arrival.founding-far": 0.0001,
  "arrival.near-days": 2,
  "arrival.far-days": 8,
  "arrival.fouled-count-spread": 0.5,
  "arrival.own-rate-spread": 0.7,
  "arrival.base-rate-open": 0.02,
  "arrival.base-rate-inspected": 0.001,
  "arrival.inspected-through": 0.5,
  "arrival.busy-factor": 2,
};
const source = (id: string) => numbers[id] ?? Number.NaN;
const spreads: Record<string, number> = {
  "arrival.founding-unknown": 1.2,
  "arrival.founding-near": 0.8,
  "arrival.founding-far": 1.6,
  "arrival.base-rate-open": 0.6,
  "arrival.busy-factor": 0.3,
  "arrival.base-rate-inspected": 1.1,
  "arrival.inspected-through": 0.4,
};
const spreadOf = (id: string) => spreads[id] ?? Number.NaN;
type SomeClass = Partial<Boats["classes"][number]>;
const withClasses = (classes: readonly SomeClass[]): Boats => ({
  ...boats,
  classes: classes.map((each, index) => ({
    id: `${index}`,
    name: `${index}`,
    share: 0.5,
    fouled: 0.1,
    ...each,
  })),
});
const ofLaunches = (...classes: readonly SomeClass[]) =>
  launchesVariance(withClasses(classes), source, spreadOf);
const ofLakes = (rate: ComparableLakes["rate"]) =>
  lakesVariance({ ...boats, comparable: { ...ownWayAlone, rate } }, source, spreadOf);

describe("the weight of two independent estimates", () => {
  it("is inverse to their variances", () => {
    // By hand: variances 1 and 3 weigh 3/4 and 1/4.
    expect(weightOf(1, 3)).toBe(0.75);
    expect(weightOf(3, 1)).toBe(0.25);
    expect(weightOf(2, 2)).toBe(0.5);
  });
});

describe("how little is known of the rate from fouled launches", () => {
  it("is the variance of α of the boats' reach and that of their number", () => {
    expect(ofLaunches({})).toBeCloseTo(1.2 ** 2 + 0.25, 14);
    expect(ofLaunches({ daysSince: 1 })).toBeCloseTo(0.8 ** 2 + 0.25, 14);
    expect(ofLaunches({ daysSince: 20 })).toBeCloseTo(1.6 ** 2 + 0.25, 14);
    // Halfway from 2 to 8 days by logarithms.
    expect(ofLaunches({ daysSince: 4 })).toBeCloseTo(1.2 ** 2 + 0.25, 14);
  });

  it("is of several classes their spread in proportion to the foundings of each, by hand", () => {
    // Far boats at 0.4 bring as many foundings as near ones at 0.01: 0.00004 each; clean ones none.
    const both = [{ daysSince: 1, fouled: 0.01 }, { daysSince: 20, fouled: 0.4 }, { fouled: 0 }];
    expect(ofLaunches(...both)).toBeCloseTo(((0.8 + 1.6) / 2) ** 2 + 0.25, 14);
  });

  it("is that of the number alone where no boat is fouled", () => {
    expect(ofLaunches({ fouled: 0 })).toBe(0.25);
  });
});

describe("how little is known of the rate of comparable lakes", () => {
  it("is by hand the variance of each kind, and of an own rate its own", () => {
    expect(ofLakes({ kind: "open" })).toBeCloseTo(0.36, 14);
    expect(ofLakes({ kind: "busy" })).toBeCloseTo(0.36 + 0.09, 14);
    expect(ofLakes({ kind: "inspected" })).toBeCloseTo(1.21 + 0.16, 14);
    expect(ofLakes({ own: 0.03 })).toBeCloseTo(0.49, 14);
  });

  it("is of an unknown kind that of the mean of both logarithms and of a place evenly spread between them", () => {
    // (a + b)/4 of the mean of two; d²/12 of an even spread over a length d, ln(0.02/0.002) = ln 10 (standard).
    expect(ofLakes({ kind: "unknown" })).toBeCloseTo((0.36 + 1.37) / 4 + Math.log(10) ** 2 / 12, 14);
  });
});
