import { describe, expect, it } from "vitest";
import { distributionOf } from "../../../src/model/uncertainty/distribution-of.js";

const betaShare = (alpha: number, beta: number) => distributionOf({ kind: "beta", alpha, beta });

describe("a share with a beta distribution", () => {
  // Mean α/(α+β) and variance αβ/((α+β)²(α+β+1)); the median of (1, 1) is 1/2, of (2, 2) too by symmetry, and the
  // quantile of (α, 1) is u^(1/α).
  it.each([
    [1, 1, 1 / 2, 1 / 12],
    [2, 2, 1 / 2, 1 / 20],
    [1, 3, 1 / 4, 3 / 80],
    [0.5, 1.5, 1 / 4, 1 / 16],
  ])("has its mean and variance by the counts %d and %d", (alpha, beta, mean, variance) => {
    const share = betaShare(alpha, beta);
    expect(share.kind).toBe("beta");
    expect(share.mean).toBeCloseTo(mean, 14);
    expect(share.variance).toBeCloseTo(variance, 14);
    expect(share.support).toEqual({ low: 0, high: 1 });
  });

  it("has the quantiles of its closed forms", () => {
    expect(betaShare(1, 1).quantile(0.3)).toBeCloseTo(0.3, 12);
    expect(betaShare(2, 2).quantile(0.5)).toBeCloseTo(0.5, 12);
    expect(betaShare(3, 1).quantile(0.125)).toBeCloseTo(0.5, 12);
    expect(betaShare(1, 2).quantile(0.75)).toBeCloseTo(0.5, 12);
  });

  it.each([
    [0, 1, "alpha is 0"],
    [1, 0, "beta is 0"],
  ])("is refused for the counts %d and %d", (alpha, beta, words) => {
    expect(() => betaShare(alpha, beta)).toThrow(words);
  });
});
