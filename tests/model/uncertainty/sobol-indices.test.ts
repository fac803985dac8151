import { describe, expect, it } from "vitest";
import { at } from "../../../src/lists.js";
import { randomStream } from "../../../src/model/random/generator.js";
import { momentsOf, variance } from "../../../src/model/uncertainty/running-moments.js";
import { type SensitivityPlan, twoSamples } from "../../../src/model/uncertainty/sensitivity-design.js";
import { scrambledSobol } from "../../../src/model/uncertainty/sobol.js";
import { type SobolIndices, sobolIndices } from "../../../src/model/uncertainty/sobol-indices.js";
import { designValues } from "./design-values.js";

const bootstrap = { seed: 1, resamples: 100 };

/** Ishigami and Homma 1990 with the usual a = 7, b = 0.1; each x uniform from -π to π. */
const [a, b] = [7, 0.1];
function ishigami(share: (id: string) => number): number {
  const [x1 = 0, x2 = 0, x3 = 0] = ["x1", "x2", "x3"].map((id) => Math.PI * (2 * share(id) - 1));
  return Math.sin(x1) + a * Math.sin(x2) ** 2 + b * x3 ** 4 * Math.sin(x1);
}

/**
 * Closed form: V = a²/8 + bπ⁴/5 + b²π⁸/18 + 1/2, V1 = (1 + bπ⁴/5)²/2, V2 = a²/8, V13 = b²π⁸(1/18 - 1/50), the rest 0
 * (by integration, as E x⁴ = π⁴/5 and E x⁸ = π⁸/9).
 */
function ishigamiIndices() {
  const whole = a ** 2 / 8 + (b * Math.PI ** 4) / 5 + (b ** 2 * Math.PI ** 8) / 18 + 1 / 2;
  const one = (1 + (b * Math.PI ** 4) / 5) ** 2 / 2 / whole;
  const two = a ** 2 / 8 / whole;
  const joint = (b ** 2 * Math.PI ** 8 * (1 / 18 - 1 / 50)) / whole;
  return { x1: [one, one + joint], x2: [two, two], x3: [0, joint] };
}

/** Sobol's g-function: product of (|4x - 2| + a)/(1 + a); V_i = 1/(3 (1 + a_i)²), V = Π(1 + V_i) - 1. */
const weights = { g1: 0, g2: 1, g3: 4.5, g4: 9 };
const gFunction = (share: (id: string) => number) =>
  Object.entries(weights).reduce(
    (product, [id, w]) => (product * (Math.abs(4 * share(id) - 2) + w)) / (1 + w),
    1,
  );

function gIndices(): Record<string, number[]> {
  const parts = Object.entries(weights).map(([id, w]) => [id, 1 / (3 * (1 + w) ** 2)] as const);
  const all = parts.reduce((product, [, part]) => product * (1 + part), 1);
  return Object.fromEntries(
    parts.map(([id, part]) => [id, [part / (all - 1), (part * (all / (1 + part))) / (all - 1)]]),
  );
}

function expectIndices(
  found: ReadonlyMap<string, SobolIndices>,
  expected: Record<string, readonly number[]>,
) {
  expect([...found.keys()]).toEqual(Object.keys(expected));
  for (const [id, { first, total }] of found) {
    const [expectedFirst = Number.NaN, expectedTotal = Number.NaN] = expected[id] ?? [];
    expect(Math.abs(first.value - expectedFirst)).toBeLessThan(4 * first.standardError);
    expect(Math.abs(total.value - expectedTotal)).toBeLessThan(4 * total.standardError);
    expect(first.standardError).toBeLessThan(0.03);
    expect(total.standardError).toBeLessThan(0.03);
  }
}

describe("the closed form of the Ishigami function", () => {
  it("has the published indices", () => {
    // Widely printed to four decimals: S 0.3139, 0.4424, 0; total 0.5576, 0.4424, 0.2437.
    const { x1, x2, x3 } = ishigamiIndices();
    const printed = [...x1, ...x2, ...x3].map((value) => Number(value.toFixed(4)));
    expect(printed).toEqual([0.3139, 0.5576, 0.4424, 0.4424, 0, 0.2437]);
  });
});

describe.each(["latin-hypercube", "sobol"] as const)("Sobol indices from a plan by %s", (plan) => {
  const planned = (ids: readonly string[], count: number): SensitivityPlan => ({ seed: 3, ids, count, plan });

  it("are those of the Ishigami function within 4 standard errors", () => {
    const values = designValues(twoSamples(planned(["x1", "x2", "x3"], 4096)), ishigami);
    expectIndices(sobolIndices(values, bootstrap), ishigamiIndices());
  });

  it("are those of the g-function within 4 standard errors", () => {
    const values = designValues(twoSamples(planned(Object.keys(weights), 4096)), gFunction);
    expectIndices(sobolIndices(values, bootstrap), gIndices());
  });
});

describe("Sobol indices of two inputs that are 0 or 1, over all pairs of their values", () => {
  const bits = Array.from({ length: 16 }, (_, draw) => [8, 4, 2, 1].map((bit) => (draw & bit ? 1 : 0)));
  const column = (place: number) => bits.map((each) => at(each, place));
  const sample = (one: number, other: number) =>
    new Map([
      ["x1", column(one)],
      ["x2", column(other)],
    ]);
  const samples = { first: sample(0, 1), second: sample(2, 3) };

  // Moments of a bit: E x = 1/2, V x = 1/4; all pairs give them exactly.
  it.each([
    // V = 1/4 + 4/4, of which x1 has 1/4.
    ["x1 + 2·x2", (x1: number, x2: number) => x1 + 2 * x2, { x1: [1 / 5, 1 / 5], x2: [4 / 5, 4 / 5] }],
    // V = 1/4 − 1/16 = 3/16; V of E(f | x1) = x1/2 is 1/16, and so for x2: the rest is joint.
    ["x1·x2", (x1: number, x2: number) => x1 * x2, { x1: [1 / 3, 2 / 3], x2: [1 / 3, 2 / 3] }],
    // Neither tells anything alone.
    ["x1 ≠ x2", (x1: number, x2: number) => Math.abs(x1 - x2), { x1: [0, 1], x2: [0, 1] }],
  ])("are exact: %s", (_name, evaluate, expected) => {
    const values = designValues(samples, (share) => evaluate(share("x1"), share("x2")));
    const found = sobolIndices(values, bootstrap);
    for (const id of ["x1", "x2"] as const) {
      expect(found.get(id)?.first.value).toBeCloseTo(at(expected[id], 0), 12);
      expect(found.get(id)?.total.value).toBeCloseTo(at(expected[id], 1), 12);
    }
  });
});

describe("Sobol indices", () => {
  const independent = (seed: number, count: number) => {
    const { uniform } = randomStream(seed, "independent draws");
    const sample = () =>
      new Map(["x1", "x2", "x3"].map((id) => [id, Array.from({ length: count }, () => uniform())]));
    return designValues({ first: sample(), second: sample() }, ishigami);
  };

  it("have the standard error that repeated runs show, within 4 of its own", () => {
    // A deviation of n runs has the relative error 1/√(2(n - 1)) (normal estimates); kurtosis near 3.
    const runs = 60;
    const found = Array.from({ length: runs }, (_, seed) =>
      sobolIndices(independent(seed, 400), { seed, resamples: 100 }),
    );
    for (const id of ["x1", "x3"]) {
      for (const kind of ["first", "total"] as const) {
        const estimates = found.map(
          (each) => each.get(id)?.[kind] ?? { value: Number.NaN, standardError: Number.NaN },
        );
        const deviation = Math.sqrt(variance(momentsOf(estimates.map(({ value }) => value))));
        const claimed = momentsOf(estimates.map(({ standardError }) => standardError)).mean;
        expect(Math.abs(claimed / deviation - 1)).toBeLessThan(4 / Math.sqrt(2 * (runs - 1)));
      }
    }
  });

  it("do not change when a constant is added to the result or its scale is changed", () => {
    const values = independent(5, 300);
    const changed = (each: readonly number[]) => each.map((value) => 1e6 + 50 * value);
    const other = sobolIndices(
      {
        first: changed(values.first),
        second: changed(values.second),
        exchanged: new Map([...values.exchanged].map(([id, each]) => [id, changed(each)])),
      },
      bootstrap,
    );
    for (const [id, { first, total }] of sobolIndices(values, bootstrap)) {
      expect(other.get(id)?.first.value).toBeCloseTo(first.value, 8);
      expect(other.get(id)?.total.value).toBeCloseTo(total.value, 8);
      expect(other.get(id)?.total.standardError).toBeCloseTo(total.standardError, 8);
    }
  });

  it("are the same for the same seed, and nothing for an input without effect", () => {
    const plan = twoSamples({
      seed: 2,
      ids: ["x1", "x2", "x3", "idle"],
      count: 256,
      plan: "latin-hypercube",
    });
    const values = designValues(plan, ishigami);
    expect(sobolIndices(values, bootstrap)).toEqual(sobolIndices(values, bootstrap));
    expect(sobolIndices(values, bootstrap).get("idle")).toEqual({
      first: { value: 0, standardError: 0 },
      total: { value: 0, standardError: 0 },
    });
  });

  it("are refused where the result does not vary, or lists do not match", () => {
    const plan = twoSamples({ seed: 2, ids: ["x1"], count: 16, plan: "sobol" });
    const flat = designValues(plan, () => 5);
    expect(() => sobolIndices(flat, bootstrap)).toThrow(
      "the result is 5 in all draws; allowed: a result that varies",
    );
    const values = designValues(plan, (share) => share("x1"));
    expect(() => sobolIndices({ ...values, second: [1, 2] }, bootstrap)).toThrow(
      "values of second sample has 2",
    );
    expect(() => sobolIndices(values, { seed: 1, resamples: 1 })).toThrow("resamples is 1");
  });
});

describe("the two samples", () => {
  it("by Latin hypercube keep their columns when an input is added", () => {
    const common = { seed: 4, count: 32, plan: "latin-hypercube" } as const;
    const two = twoSamples({ ...common, ids: ["a", "b"] });
    const three = twoSamples({ ...common, ids: ["a", "c", "b"] });
    for (const id of ["a", "b"]) {
      expect(three.first.get(id)).toEqual(two.first.get(id));
      expect(three.second.get(id)).toEqual(two.second.get(id));
      expect(two.first.get(id)).not.toEqual(two.second.get(id));
    }
  });

  it("by Sobol's sequence are its points", () => {
    const { first, second } = twoSamples({ seed: 4, count: 8, plan: "sobol", ids: ["a"] });
    const points = scrambledSobol(4, ["first/a", "second/a"], 8);
    expect([first.get("a"), second.get("a")]).toEqual([points.get("first/a"), points.get("second/a")]);
  });

  it("are exchanged one input at a time", () => {
    const samples = twoSamples({ seed: 4, ids: ["a", "b"], count: 8, plan: "latin-hypercube" });
    const { first, second, exchanged } = designValues(samples, (share) => share("a") + 10 * share("b"));
    const value = (sampleA: "first" | "second", sampleB: "first" | "second", draw: number) =>
      at(samples[sampleA].get("a") ?? [], draw) + 10 * at(samples[sampleB].get("b") ?? [], draw);
    for (let draw = 0; draw < 8; draw++) {
      expect(first[draw]).toBe(value("first", "first", draw));
      expect(second[draw]).toBe(value("second", "second", draw));
      expect(exchanged.get("a")?.[draw]).toBe(value("second", "first", draw));
      expect(exchanged.get("b")?.[draw]).toBe(value("first", "second", draw));
    }
  });
});
