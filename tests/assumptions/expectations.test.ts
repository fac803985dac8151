import { describe, expect, it } from "vitest";
import { boundsOfBoth, boundsText, isWithin } from "../../src/assumptions/bounds.js";
import { expectations } from "../../src/assumptions/expectations.js";
import { register } from "../../src/model/register/register.js";

const capital = {
  id: "plan.gold-leaf.capital",
  unit: "$/m2",
  bounds: { from: 0, to: 1000 },
  as: "the capital of the plan gold-leaf",
} as const;

describe("what an assumption is held to", () => {
  it("is what the register says, and what a plan needs that names it", () => {
    const problems: string[] = [];
    const found = expectations([capital], problems);
    expect(found.get("conduit.largest-layer")).toEqual(register["conduit.largest-layer"]);
    expect(found.get(capital.id)).toEqual({ unit: "$/m2", bounds: capital.bounds, as: capital.as });
    expect(problems).toEqual([]);
  });

  it("is what all need that read it", () => {
    const other = { ...capital, bounds: { above: 0, to: 2000 }, as: "the capital of the plan silver-leaf" };
    const bounds = expectations([capital, other], []).get(capital.id)?.bounds ?? {};
    expect([0, 1, 1000, 1001].map((value) => isWithin(value, bounds))).toEqual([false, true, true, false]);
  });

  it("cannot be two units: both readers are named, with the remedy", () => {
    const problems: string[] = [];
    const flow = { ...capital, unit: "$/(m3/s)", as: "the capital of the plan sieve" } as const;
    const layer = { ...capital, id: "conduit.largest-layer" };
    expectations([capital, flow, layer], problems);
    expect(problems).toEqual([
      "protection-plans.yaml: plan.gold-leaf.capital is read as the capital of the plan gold-leaf, in $/m2, and as the capital of the plan sieve, in $/(m3/s). Name another assumption for one of the two.",
      "protection-plans.yaml: conduit.largest-layer is read as itself, in m, and as the capital of the plan gold-leaf, in $/m2. Name another assumption for one of the two.",
    ]);
  });
});

describe("bounds", () => {
  it.each([
    [{ from: 0, to: 1 }, "share", "at least 0 and at most 1"],
    [{ above: 0, to: 1e6 }, "m2", "above 0 and at most 1,000,000 m2"],
    [{ above: 0, below: 1 }, "1", "above 0 and below 1"],
    [{}, "m", "any number"],
  ] as const)("are told in words: %j in %s", (bounds, unit, words) => {
    expect(boundsText(bounds, unit)).toBe(words);
  });

  it("hold what they name and not what they only border on", () => {
    const ends = [0, 0.5, 1];
    expect(ends.map((value) => isWithin(value, { from: 0, to: 1 }))).toEqual([true, true, true]);
    expect(ends.map((value) => isWithin(value, { above: 0, below: 1 }))).toEqual([false, true, false]);
    expect(isWithin(Number.NaN, { from: 0 })).toBe(false);
  });

  it("of two are the narrower at each end", () => {
    expect(boundsOfBoth({ from: 0, to: 1 }, { from: -1, below: 2 })).toEqual({ from: 0, to: 1, below: 2 });
    expect(boundsOfBoth({}, { above: 3 })).toEqual({ above: 3 });
  });
});
