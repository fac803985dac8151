import { describe, expect, it } from "vitest";
import { sobolIndices } from "../../../src/model/uncertainty/sobol-indices.js";
import { type Factor, factorDesign } from "../../../src/study/odds/sensitivity-design.js";
import type { InputGroup } from "../../../src/study/odds/sensitivity-moves.js";
import { netBenefitsOf, type RunPoints } from "../../../src/study/odds/sensitivity-points.js";
import { restName, strongestFactors, varianceShares } from "../../../src/study/odds/sensitivity-shares.js";
import type { NamedInput } from "../../../src/study/odds/uncertain-inputs.js";

const input = (id: string, stage: NamedInput["stage"], low: number, high: number): NamedInput => ({
  id,
  name: id,
  stage,
  distribution: { kind: "uniform", low, high },
});

type Function = (values: ReadonlyMap<string, number>) => number;

/** Runs a function of all values, and counts how many lakes it was given. */
function running(evaluate: Function): { run: RunPoints; lakes: () => number } {
  let lakes = 0;
  return {
    run: async (points) => {
      lakes += points.length;
      return points.map(({ lake, chances }) => chances.map((each) => evaluate(new Map([...lake, ...each]))));
    },
    lakes: () => lakes,
  };
}

const factor = (...ids: string[]): Factor => ({ name: ids.join("+"), ids });
const settings = { seed: 5, count: 4096, resamples: 60 };

/** Ishigami and Homma 1990 with a = 7, b = 0.1; x1 and x2 as inputs of the lake, x3 as one of chances. */
const ishigamiInputs = [
  input("x1", "lake", -Math.PI, Math.PI),
  input("x2", "lake", -Math.PI, Math.PI),
  input("x3", "chances", -Math.PI, Math.PI),
];
const ishigami: Function = (values) => {
  const [x1 = Number.NaN, x2 = Number.NaN, x3 = Number.NaN] = ["x1", "x2", "x3"].map((id) => values.get(id));
  return Math.sin(x1) + 7 * Math.sin(x2) ** 2 + 0.1 * x3 ** 4 * Math.sin(x1);
};

const sharesOf = (factors: readonly Factor[], inputs: readonly NamedInput[], evaluate: Function) =>
  varianceShares(factors, { inputs, groups: [] }, settings, running(evaluate).run);

async function expectShares(
  found: ReturnType<typeof sharesOf>,
  expected: Record<string, readonly [first: number, total: number]>,
) {
  const shares = await found;
  expect(shares.map(({ name }) => name)).toEqual(Object.keys(expected));
  for (const { name, first, total } of shares) {
    const [ofFirst, ofTotal] = expected[name] ?? [Number.NaN, Number.NaN];
    expect(Math.abs(first.value - ofFirst), name).toBeLessThan(4 * first.standardError);
    expect(Math.abs(total.value - ofTotal), name).toBeLessThan(4 * total.standardError);
    expect(Math.max(first.standardError, total.standardError), name).toBeLessThan(0.04);
  }
}

describe("shares of factors of several inputs", () => {
  it("are the published ones of the Ishigami function for single inputs of either stage", async () => {
    // Widely printed to four decimals: S 0.3139, 0.4424, 0; total 0.5576, 0.4424, 0.2437.
    await expectShares(sharesOf([factor("x1"), factor("x2"), factor("x3")], ishigamiInputs, ishigami), {
      x1: [0.3139, 0.5576],
      x2: [0.4424, 0.4424],
      x3: [0, 0.2437],
    });
  });

  it("hold the joint effect of their members: x1 with x3 have all that x2 has not", async () => {
    // S1 + S3 + S13 = 1 − S2 = 0.5576, since x2 acts alone.
    await expectShares(sharesOf([factor("x1", "x3"), factor("x2")], ishigamiInputs, ishigami), {
      "x1+x3": [0.5576, 0.5576],
      x2: [0.4424, 0.4424],
    });
  });

  it("are the whole for a factor of all inputs", async () => {
    await expectShares(sharesOf([factor("x1", "x2", "x3")], ishigamiInputs, ishigami), {
      "x1+x2+x3": [1, 1],
    });
  });

  it("are those of a sum: squares of the weights times the variances", async () => {
    // Variances of uniform numbers w²/12 with weights 3, 2, 1: 9/14, 4/14, 1/14; first and total alike.
    const inputs = ["a", "b", "c"].map((id) => input(id, "lake", 0, 1));
    const sum: Function = (values) =>
      3 * (values.get("a") ?? Number.NaN) +
      2 * (values.get("b") ?? Number.NaN) +
      (values.get("c") ?? Number.NaN);
    await expectShares(sharesOf([factor("a"), factor("b"), factor("c")], inputs, sum), {
      a: [9 / 14, 9 / 14],
      b: [4 / 14, 4 / 14],
      c: [1 / 14, 1 / 14],
    });
  });

  it("keep the correlation within a group: two of a sum of three that rise together have 3/4", async () => {
    // Var(a + b + c) of uniform numbers in units of one variance: 1 + 1 + 2ρ + 1 with ρ = 1/2 (rank correlation is
    // Pearson's for uniform numbers); a and b together 3 of 4. Without the correlation it would be 2 of 3.
    const inputs = ["a", "b", "c"].map((id) => input(id, "lake", 0, 1));
    const sum: Function = (values) => [...values.values()].reduce((total, value) => total + value, 0);
    const groups = [
      {
        id: "g",
        name: "g",
        members: ["a", "b"],
        rankCorrelation: 1 / 2,
        basis: "judged" as const,
        source: "",
        note: "",
      },
    ];
    await expectShares(
      varianceShares([factor("a", "b"), factor("c")], { inputs, groups }, settings, running(sum).run),
      { "a+b": [3 / 4, 3 / 4], c: [1 / 4, 1 / 4] },
    );
  });

  it("are none where the result does not vary", async () => {
    expect(await sharesOf([factor("x1", "x2", "x3")], ishigamiInputs, () => 5)).toEqual([]);
  });
});

describe("the design", () => {
  const plan = { seed: 5, count: 8, inputs: ishigamiInputs, groups: [] };

  it("takes a factor from the second sample and all else from the first", () => {
    const { sets } = factorDesign({ ...plan, factors: [factor("x2", "x3")] });
    const [first, second, mixed] = [0, 8, 16].map((place) => sets[place + 3]);
    expect(mixed?.lake.get("x1")).toBe(first?.lake.get("x1"));
    expect(mixed?.lake.get("x2")).toBe(second?.lake.get("x2"));
    expect(mixed?.chances.get("x3")).toBe(second?.chances.get("x3"));
    expect(first?.lake.get("x2")).not.toBe(second?.lake.get("x2"));
  });

  it("needs no lake for a factor of chances: 8 draws of 2 samples and 2 factors of the lake are 32", async () => {
    const design = factorDesign({ ...plan, factors: [factor("x1"), factor("x2"), factor("x3")] });
    const { run, lakes } = running(ishigami);
    const results = await netBenefitsOf(design.sets, run);
    expect(lakes()).toBe(32);
    // The other route: each set by itself.
    expect(results).toEqual(design.sets.map(({ lake, chances }) => ishigami(new Map([...lake, ...chances]))));
    expect(sobolIndices(design.valuesOf(results), { seed: 1, resamples: 2 }).size).toBe(3);
  });
});

describe("the factors", () => {
  const inputs = ["a", "b", "c", "d", "e"].map((id) => input(id, "lake", 0, 1));
  const groups: InputGroup[] = [{ id: "g", name: "g", members: inputs.slice(0, 2) }];
  const bar = (id: string, members?: string[]) => ({
    id,
    name: `name of ${id}`,
    members,
    low: { input: 0, netBenefit: 0 },
    high: { input: 1, netBenefit: 1 },
  });

  it("are the widest bars, groups whole, and all others", () => {
    expect(strongestFactors([bar("a"), bar("g", ["a", "b"]), bar("d"), bar("c")], inputs, groups, 3)).toEqual(
      [
        { name: "name of g", ids: ["a", "b"] },
        { name: "name of d", ids: ["d"] },
        { name: restName, ids: ["c", "e"] },
      ],
    );
  });

  it("hold each input once, and have no rest where all are told", () => {
    const found = strongestFactors([bar("g", ["a", "b"]), bar("d"), bar("c"), bar("e")], inputs, groups, 6);
    expect(found.flatMap(({ ids }) => ids).sort()).toEqual(["a", "b", "c", "d", "e"]);
    expect(found.map(({ name }) => name)).not.toContain(restName);
  });
});
