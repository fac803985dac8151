import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { betaOf, betaQuantile, logGamma } from "../../../src/model/risk/beta.js";
import { relativeGap } from "../near.js";

const incompleteBeta = (x: number, a: number, b: number) => betaOf(a, b).chanceUpTo(x);

const share = fc.double({ min: 0.001, max: 0.999, noNaN: true });
const parameter = fc.double({ min: 0.2, max: 300, noNaN: true });

describe("the logarithm of the gamma function", () => {
  it("is that of the factorials", () => {
    let factorial = 1;
    for (let n = 1; n <= 20; n++) {
      expect(Math.abs(logGamma(n) - Math.log(factorial))).toBeLessThan(1e-12);
      factorial *= n;
    }
  });

  it("at one half is that of √π, and follows Γ(x+1) = xΓ(x)", () => {
    expect(logGamma(1 / 2)).toBeCloseTo(Math.log(Math.PI) / 2, 13);
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1e4, noNaN: true }), (x) => {
        expect(Math.abs(logGamma(x + 1) - logGamma(x) - Math.log(x))).toBeLessThan(1e-10);
      }),
      { seed: 71 },
    );
  });
});

/** Binomial coefficient by Pascal's rule. */
function choose(n: number, k: number): number {
  let result = 1;
  for (let each = 1; each <= k; each++) result = (result * (n - k + each)) / each;
  return result;
}

/** Simpson's rule over the density, with the constant by the same rule: independent of gamma and fraction. */
function integrated(x: number, a: number, b: number): number {
  const area = (to: number) => {
    const cells = 20_000;
    const density = (at: number) => at ** (a - 1) * (1 - at) ** (b - 1);
    let sum = density(0) + density(to);
    for (let cell = 1; cell < cells; cell++) sum += density((to * cell) / cells) * (cell % 2 === 0 ? 2 : 4);
    return (sum * to) / cells / 3;
  };
  return area(x) / area(1);
}

describe("the incomplete beta function", () => {
  it("is x, x^a and 1 − (1−x)^b where one parameter is 1", () => {
    fc.assert(
      fc.property(share, parameter, (x, other) => {
        expect(incompleteBeta(x, 1, 1)).toBeCloseTo(x, 13);
        expect(Math.abs(incompleteBeta(x, other, 1) - x ** other)).toBeLessThan(1e-12);
        expect(Math.abs(incompleteBeta(x, 1, other) - (1 - (1 - x) ** other))).toBeLessThan(1e-12);
      }),
      { seed: 72, numRuns: 300 },
    );
  });

  it("is the tail of the binomial distribution for whole numbers (DLMF 8.17.5)", () => {
    const small = fc.integer({ min: 1, max: 12 });
    fc.assert(
      fc.property(share, small, small, (x, a, b) => {
        const n = a + b - 1;
        let tail = 0;
        for (let j = a; j <= n; j++) tail += choose(n, j) * x ** j * (1 - x) ** (n - j);
        expect(Math.abs(incompleteBeta(x, a, b) - tail)).toBeLessThan(1e-12);
      }),
      { seed: 73, numRuns: 300 },
    );
  });

  it("is the arcsine law at one half and one half: (2/π) asin √x", () => {
    fc.assert(
      fc.property(share, (x) => {
        expect(incompleteBeta(x, 0.5, 0.5)).toBeCloseTo((2 / Math.PI) * Math.asin(Math.sqrt(x)), 12);
      }),
      { seed: 74 },
    );
  });

  it("is symmetric: I_x(a, b) + I_{1−x}(b, a) = 1", () => {
    fc.assert(
      fc.property(share, parameter, parameter, (x, a, b) => {
        expect(incompleteBeta(x, a, b) + incompleteBeta(1 - x, b, a)).toBeCloseTo(1, 11);
      }),
      { seed: 75, numRuns: 300 },
    );
  });

  test.each([
    [0.1, 2.5, 7.3],
    [0.4, 3.7, 2.2],
    [0.02, 4.5, 210.5],
    [0.9, 40.25, 6.5],
  ])("is the integral of the density up to %d, of %d and %d", (x, a, b) => {
    expect(Math.abs(incompleteBeta(x, a, b) - integrated(x, a, b))).toBeLessThan(1e-8);
  });

  it("is a chance that rises, from nothing to certainty", () => {
    expect(incompleteBeta(0, 3, 4)).toBe(0);
    expect(incompleteBeta(-0.1, 3, 4)).toBe(0);
    expect(incompleteBeta(1, 3, 4)).toBe(1);
    expect(incompleteBeta(1.1, 3, 4)).toBe(1);
    fc.assert(
      fc.property(share, share, parameter, parameter, (one, other, a, b) => {
        const [low, high] = [Math.min(one, other), Math.max(one, other)];
        expect(incompleteBeta(low, a, b)).toBeLessThanOrEqual(incompleteBeta(high, a, b) + 1e-13);
      }),
      { seed: 76 },
    );
  });

  test.each([
    [0, 1],
    [1, 0],
    [1, -1],
    [Number.NaN, 1],
    [1, Number.POSITIVE_INFINITY],
  ])("is refused for the parameters %d and %d", (a, b) => {
    expect(() => incompleteBeta(0.5, a, b)).toThrow("allowed: finite, above 0");
  });
});

describe("a quantile of the beta distribution", () => {
  it("is p^(1/a) and 1 − (1−p)^(1/b) where one parameter is 1", () => {
    fc.assert(
      fc.property(share, fc.double({ min: 0.5, max: 500, noNaN: true }), (p, other) => {
        expect(relativeGap(betaQuantile(p, other, 1), p ** (1 / other))).toBeLessThan(1e-10);
        expect(Math.abs(betaQuantile(p, 1, other) - (1 - (1 - p) ** (1 / other)))).toBeLessThan(1e-10);
      }),
      { seed: 77, numRuns: 200 },
    );
  });

  it("is what the chance is turned back into, also for hundreds of thousands of boats", () => {
    const large = fc.double({ min: 0.5, max: 500_000, noNaN: true });
    fc.assert(
      fc.property(share, fc.double({ min: 0.5, max: 300, noNaN: true }), large, (p, a, b) => {
        expect(Math.abs(incompleteBeta(betaQuantile(p, a, b), a, b) - p)).toBeLessThan(1e-9);
      }),
      { seed: 78, numRuns: 100 },
    );
  });

  it("is near the normal one for many boats: mean ± 1.645 standard deviations", () => {
    // 1.6449 is the 95 % point of the normal distribution (tables); skewness moves it by less than 2 % of the spread.
    const [a, b] = [4000, 6000];
    const spread = Math.sqrt((0.4 * 0.6) / 10_001);
    expect((betaQuantile(0.95, a, b) - 0.4) / spread).toBeCloseTo(1.645, 1);
    expect((0.4 - betaQuantile(0.05, a, b)) / spread).toBeCloseTo(1.645, 1);
  });

  it("is an end at a chance of nothing and of certainty, and refused beyond", () => {
    expect(betaQuantile(0, 2, 3)).toBe(0);
    expect(betaQuantile(1, 2, 3)).toBe(1);
    expect(() => betaQuantile(1.01, 2, 3)).toThrow("allowed: 0 to 1");
    expect(() => betaQuantile(-0.01, 2, 3)).toThrow("allowed: 0 to 1");
    expect(() => betaQuantile(Number.NaN, 2, 3)).toThrow("allowed: 0 to 1");
  });
});
