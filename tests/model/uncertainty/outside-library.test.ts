import fc from "fast-check";
import { jStat } from "jstat";
import { describe, expect, it } from "vitest";
import { correlation } from "../../../src/model/uncertainty/correlation.js";
import { distributionOf } from "../../../src/model/uncertainty/distribution-of.js";
import { normalQuantile } from "../../../src/model/uncertainty/normal-quantile.js";
import { sampleQuantiles } from "../../../src/model/uncertainty/sample-quantile.js";
import { relativeGap } from "../near.js";
import { rankCorrelation } from "./rank-correlation.js";

const share = fc.double({ min: 0.001, max: 0.999, noNaN: true });
const tied = fc.array(fc.integer({ min: -9, max: 9 }), { minLength: 4, maxLength: 40 });

/** Independent reckoning: jstat 1.9.6, whose inverses are good to about 1e-8. */
describe("jstat agrees", () => {
  it("on beta-PERT quantiles", () => {
    fc.assert(
      fc.property(share, fc.double({ min: 0, max: 1, noNaN: true }), (p, mode) => {
        const own = distributionOf({ kind: "pert", low: 0, mode, high: 1 }).quantile(p);
        expect(Math.abs(own - jStat.beta.inv(p, 1 + 4 * mode, 5 - 4 * mode))).toBeLessThan(1e-7);
      }),
      { seed: 341 },
    );
  });

  it("on the normal and the lognormal distribution", () => {
    fc.assert(
      fc.property(share, (p) => {
        expect(Math.abs(normalQuantile(p) - jStat.normal.inv(p, 0, 1))).toBeLessThan(1e-7);
        const sigma = Math.log(10) / 2 / normalQuantile(0.9);
        const mu = Math.log(100_000) / 2;
        const own = distributionOf({ kind: "lognormal", p10: 100, p90: 1000 });
        expect(relativeGap(own.quantile(p), jStat.lognormal.inv(p, mu, sigma))).toBeLessThan(1e-7);
        expect(relativeGap(own.mean, jStat.lognormal.mean(mu, sigma))).toBeLessThan(1e-12);
        expect(relativeGap(own.variance, jStat.lognormal.variance(mu, sigma))).toBeLessThan(1e-11);
      }),
      { seed: 342 },
    );
  });

  it("on the triangular distribution", () => {
    fc.assert(
      fc.property(share, fc.double({ min: 2.01, max: 6.99, noNaN: true }), (p, mode) => {
        const own = distributionOf({ kind: "triangular", low: 2, mode, high: 7 });
        expect(jStat.triangular.cdf(own.quantile(p), 2, 7, mode)).toBeCloseTo(p, 12);
        expect(relativeGap(own.variance, jStat.triangular.variance(2, 7, mode))).toBeLessThan(1e-12);
      }),
      { seed: 343 },
    );
  });

  it("on sample quantiles of type 7", () => {
    fc.assert(
      fc.property(tied, share, (values, p) => {
        const [expected = Number.NaN] = jStat.quantiles(values, [p], 1, 1);
        expect(sampleQuantiles(values, [p])[0]).toBeCloseTo(expected, 10);
      }),
      { seed: 344 },
    );
  });

  it("on correlations, with ties among the ranks", () => {
    const pairs = fc.array(fc.tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 })), {
      minLength: 4,
      maxLength: 40,
    });
    fc.assert(
      fc.property(pairs, (drawn) => {
        const [one, other] = [drawn.map(([x]) => x), drawn.map(([, y]) => y)];
        fc.pre(new Set(one).size > 1 && new Set(other).size > 1);
        expect(rankCorrelation(one, other)).toBeCloseTo(jStat.spearmancoeff(one, other), 10);
        expect(correlation(one, other)).toBeCloseTo(jStat.corrcoeff(one, other), 10);
      }),
      { seed: 345 },
    );
  });
});
