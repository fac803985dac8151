import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import {
  bracketedRoot,
  findRoots,
  type Point,
  type RootSearch,
  RootSearchError,
} from "../../src/model/root-search.js";

const search: RootSearch = { low: -3, high: 4, steps: 35, scale: "linear", tolerance: 1e-12 };
const rootsOf = (evaluate: (x: number) => number, changes: Partial<RootSearch> = {}) =>
  findRoots(evaluate, { ...search, ...changes }).roots.map(({ value }) => value);

function counted(evaluate: (x: number) => number) {
  const calls: number[] = [];
  const counting = (x: number) => {
    calls.push(x);
    return evaluate(x);
  };
  return { counting, calls };
}

const endsOf = (evaluate: (x: number) => number, ...ends: [number, number]) =>
  ends.map((x) => ({ x, y: evaluate(x) })) as [Point, Point];

describe("the roots of a function in an interval", () => {
  it("are none where it has one sign", () => {
    expect(rootsOf((x) => x ** 2 + 1)).toEqual([]);
    expect(rootsOf((x) => -Math.exp(x))).toEqual([]);
  });

  test.each([
    // Known in closed form: cube root of 2, natural logarithm of 2, 3/7.
    ["x³ − 2", (x: number) => x ** 3 - 2, Math.cbrt(2)],
    ["e^x − 2", (x: number) => Math.exp(x) - 2, Math.LN2],
    ["3 − 7x", (x: number) => 3 - 7 * x, 3 / 7],
    // Flat at its root, where the secant is slow.
    ["(x − 1/3)⁵", (x: number) => (x - 1 / 3) ** 5, 1 / 3],
  ])("are one, with its bracket: %s", (_name, evaluate, root) => {
    const { roots, all } = findRoots(evaluate, search);
    expect(roots).toHaveLength(1);
    expect(all).toBe(false);
    const [{ value, low, high } = { value: Number.NaN, low: 0, high: 0 }] = roots;
    expect(Math.abs(value - root)).toBeLessThan(1e-11);
    expect(low).toBeLessThan(root);
    expect(high).toBeGreaterThan(root);
    expect(high - low).toBeCloseTo(7 / 35, 12);
  });

  it("are three, in rising order: (x + 2.05)(x − 0.33)(x − 3.1)", () => {
    const roots = rootsOf((x) => (x + 2.05) * (x - 0.33) * (x - 3.1));
    expect(roots).toHaveLength(3);
    [-2.05, 0.33, 3.1].forEach((root, index) => {
      expect(roots[index]).toBeCloseTo(root, 11);
    });
  });

  it("are found at the ends and on points of the grid exactly, each once", () => {
    // Grid of whole numbers.
    const whole = { low: -3, high: 4, steps: 7 };
    expect(rootsOf((x) => (x + 3) * (x - 1) * (x - 4), whole)).toEqual([-3, 1, 4]);
  });

  it("are found at an end that the steps reach only but for rounding", () => {
    expect(rootsOf((x) => x - 1e-17, { low: -1, high: 1e-17, steps: 10 })).toEqual([1e-17]);
  });

  it("that only touch zero are found on a point of the grid, and not between two", () => {
    const touching = (x: number) => (x - 1) ** 2;
    expect(rootsOf(touching, { low: -3, high: 4, steps: 7 })).toEqual([1]);
    expect(rootsOf(touching, { low: -3.5, high: 3.5, steps: 7 })).toEqual([]);
  });

  it("of which two lie in one cell are not found, and are with a finer grid", () => {
    const two = (x: number) => (x - 0.4) * (x - 0.6);
    expect(rootsOf(two, { low: 0, high: 4, steps: 4 })).toEqual([]);
    expect(rootsOf(two, { low: 0, high: 4, steps: 8 })).toHaveLength(2);
  });

  it("of a stretch of zeros are one, at its middle, with the points beside it", () => {
    const flat = (x: number) => (x < 0 ? x : x > 2 ? x - 2 : 0);
    const { roots } = findRoots(flat, { ...search, low: -2, high: 4, steps: 6 });
    expect(roots).toEqual([{ value: 1, low: -1, high: 3 }]);
  });

  it("are found over many powers of ten on a grid of equal ratios", () => {
    // On equal steps both lie in the first cell.
    const evaluate = (x: number) => Math.log(x / 3e-6) * Math.log(x / 2e-4);
    const roots = rootsOf(evaluate, { low: 1e-9, high: 1, steps: 60, scale: "logarithmic", tolerance: 0 });
    expect(roots).toHaveLength(2);
    expect((roots[0] ?? 0) / 3e-6).toBeCloseTo(1, 12);
    expect((roots[1] ?? 0) / 2e-4).toBeCloseTo(1, 12);
  });

  it("are those that a polynomial was made of", () => {
    // Cells of 0.2; roots at least two cells apart and off the grid.
    const places = fc.uniqueArray(fc.integer({ min: 0, max: 11 }), { minLength: 0, maxLength: 5 });
    fc.assert(
      fc.property(places, fc.double({ min: 0.01, max: 0.19, noNaN: true }), (cells, offset) => {
        const made = cells.map((cell) => -3 + cell * 0.6 + offset).sort((one, other) => one - other);
        const found = rootsOf((x) => made.reduce((product, root) => product * (x - root), 1));
        expect(found).toHaveLength(made.length);
        found.forEach((root, index) => {
          expect(Math.abs(root - (made[index] ?? Number.NaN))).toBeLessThan(1e-9);
        });
      }),
      { seed: 61, numRuns: 200 },
    );
  });
});

describe("a function that is proved monotone", () => {
  it("has no root beside the one found", () => {
    const { roots, all } = findRoots((x) => 5 - x ** 3, { ...search, steps: 1, monotone: true });
    expect(all).toBe(true);
    expect(roots).toHaveLength(1);
    expect(roots[0]?.value).toBeCloseTo(Math.cbrt(5), 11);
  });

  it("may be level for a while", () => {
    expect(findRoots((x) => Math.max(0, x) - 1, { ...search, monotone: true }).roots).toHaveLength(1);
    expect(findRoots(() => 1, { ...search, monotone: true })).toEqual({ roots: [], all: true });
  });

  it.each([
    ["falls above zero", (x: number) => Math.exp(-x)],
    ["rises below zero", (x: number) => -Math.exp(-x)],
  ])("may have no root at all: %s", (_name, evaluate) => {
    expect(findRoots(evaluate, { ...search, monotone: true })).toEqual({ roots: [], all: true });
  });

  it("is refused where its values on the grid turn", () => {
    expect(() => findRoots((x) => x ** 2 - 1, { ...search, monotone: true })).toThrow("called monotone");
  });
});

describe("closing in on a root", () => {
  it("takes few evaluations of a smooth function, and never more than bisection's order of a rough one", () => {
    const smooth = counted((x) => Math.cos(x) - x);
    // Root of cos x = x, the Dottie number 0.7390851332151607 (from memory; checked by the equation itself).
    const root = bracketedRoot(
      smooth.counting,
      [
        { x: 0, y: 1 },
        { x: 1, y: Math.cos(1) - 1 },
      ],
      0,
    );
    expect(root).toBeCloseTo(0.7390851332151607, 14);
    expect(Math.cos(root)).toBeCloseTo(root, 14);
    // Bisection alone needs 52 halvings.
    expect(smooth.calls.length).toBeLessThan(12);
    const rough = counted((x) => (x < 0.123456 ? -1e-6 : 1e6));
    bracketedRoot(
      rough.counting,
      [
        { x: 0, y: -1e-6 },
        { x: 1, y: 1e6 },
      ],
      1e-12,
    );
    expect(rough.calls.length).toBeLessThan(200);
    expect(Math.abs((rough.calls.at(-1) ?? 0) - 0.123456)).toBeLessThan(1e-10);
  });

  it("lands on the root where the inverse is the parabola through three points", () => {
    // x = (y + 1/2)². By hand the secant from 0.01 to 1 meets zero at 0.01 + 0.99 · 0.4/0.9 = 0.45; two points lie on one
    // side of the root then, and the secant again at 0.318; the inverse parabola through all three is the function itself.
    const root = (x: number) => Math.sqrt(x) - 1 / 2;
    const { counting, calls } = counted(root);
    expect(bracketedRoot(counting, endsOf(root, 0.01, 1), 1e-9)).toBeCloseTo(1 / 4, 12);
    expect(calls.map((x) => Number(x.toFixed(3)))).toEqual([0.45, 0.318, 0.25]);
  });

  it.each([
    ["first", [0, 1]],
    ["second", [-1, 0]],
  ])("stops at an end that is the root: the %s", (_name, [low = 0, high = 0]) => {
    const ends = [
      { x: 7, y: low },
      { x: 8, y: high },
    ] as const;
    expect(bracketedRoot((x) => x - 7.5, ends, 0)).toBe(low === 0 ? 7 : 8);
  });

  it("errs by no more than its tolerance", () => {
    for (let place = 1; place < 60; place++) {
      const root = place / 60;
      for (const power of [1, 3, 5]) {
        const evaluate = (x: number) => Math.sign(x - root) * Math.abs(x - root) ** power;
        expect(Math.abs(bracketedRoot(evaluate, endsOf(evaluate, 0, 1), 0.02) - root)).toBeLessThanOrEqual(
          0.02,
        );
      }
    }
  });

  it("stays within the bracket", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        fc.integer({ min: 1, max: 9 }),
        (root, power) => {
          const evaluate = (x: number) => Math.sign(x - root) * Math.abs(x - root) ** power;
          const { counting, calls } = counted(evaluate);
          bracketedRoot(counting, endsOf(evaluate, 0, 1), 1e-9);
          for (const x of calls) expect(x >= 0 && x <= 1).toBe(true);
        },
      ),
      { seed: 62, numRuns: 100 },
    );
  });
});

describe("a search that cannot be made", () => {
  test.each([
    [{ low: 1, high: 1 }, "the first end below the second"],
    [{ low: 2, high: 1 }, "the first end below the second"],
    [{ high: Number.POSITIVE_INFINITY }, "allowed: finite"],
    [{ low: -Number.MAX_VALUE, high: Number.MAX_VALUE }, "allowed: finite"],
    [{ steps: 0 }, "0 steps"],
    [{ steps: 2.5 }, "a whole number"],
    [{ low: 0, scale: "logarithmic" as const }, "from above 0"],
  ])("is refused: %j", (changes, words) => {
    expect(() => findRoots((x) => x, { ...search, ...changes })).toThrow(RootSearchError);
    expect(() => findRoots((x) => x, { ...search, ...changes })).toThrow(words);
  });

  it("is refused where a value is not finite, with the place", () => {
    expect(() => findRoots((x) => 1 / x, { ...search, low: -1, high: 1, steps: 2 })).toThrow(
      "the function is Infinity at 0",
    );
  });

  it("is refused for a bracket of one sign", () => {
    expect(() =>
      bracketedRoot(
        (x) => x,
        [
          { x: 1, y: 1 },
          { x: 2, y: 2 },
        ],
        0,
      ),
    ).toThrow("opposite signs");
  });
});
