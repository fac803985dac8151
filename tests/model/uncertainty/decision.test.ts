import { describe, expect, it } from "vitest";
import { at, meanOf } from "../../../src/lists.js";
import { randomStream } from "../../../src/model/random/generator.js";
import { expectedRegret } from "../../../src/model/uncertainty/expected-regret.js";
import { normalChance, normalDensity } from "../../../src/model/uncertainty/normal.js";
import { normalQuantile } from "../../../src/model/uncertainty/normal-quantile.js";
import { parameterInformation } from "../../../src/model/uncertainty/parameter-information.js";
import { momentsOf, standardError } from "../../../src/model/uncertainty/running-moments.js";

describe("expected regret", () => {
  it("is the mean of what each option brings less than the best of the draw", () => {
    // By hand: best 5, 4, 9, 2; regrets 0+3+9+2 = 14, 4+0+4+0 = 8, 5+4+0+2 = 11, over 4 draws.
    const benefits = [
      [5, 1, 0, 0],
      [1, 4, 5, 2],
      [0, 0, 9, 0],
    ];
    expect(expectedRegret(benefits)).toEqual({ byOption: [3.5, 2, 2.75], ofBest: [4, 0, 4, 0] });
  });

  it("is least for the option of greatest mean, and nothing for one that is always best", () => {
    expect(
      expectedRegret([
        [1, 2],
        [0, 1],
      ]),
    ).toEqual({ byOption: [0, 1], ofBest: [0, 0] });
    expect(expectedRegret([[-4, 2]])).toEqual({ byOption: [0], ofBest: [0, 0] });
  });

  it("is refused without options, without draws, and for uneven lists", () => {
    expect(() => expectedRegret([])).toThrow("net benefits of 0 options; allowed: 1 or more");
    expect(() => expectedRegret([[]])).toThrow("option 0: 0 values");
    expect(() => expectedRegret([[1, 2], [1]])).toThrow("option 1 has 1 values and those of option 0 2");
    expect(() => expectedRegret([[1, Number.NaN]])).toThrow("value 1 is NaN");
  });
});

/**
 * Two options, 0 and μ + θ + ε with θ ~ N(0, σ²) and ε ~ N(0, τ²). Knowing what spreads the benefit by s is worth
 * s φ(μ/s) + μ Φ(μ/s) - max(0, μ), the unit normal loss (Raiffa and Schlaifer 1961, from memory; by integration).
 */
const worth = (mu: number, s: number) =>
  s * normalDensity(mu / s) + mu * normalChance(mu / s) - Math.max(0, mu);

function normalCase(seed: number, count: number, mu: number, sigma: number, tau: number) {
  const { uniform } = randomStream(seed, "two options");
  const normal = () => normalQuantile(uniform() || 2 ** -53);
  const parameter = Array.from({ length: count }, () => sigma * normal());
  const other = Array.from({ length: count }, () => tau * normal());
  const benefit = parameter.map((theta, draw) => mu + theta + at(other, draw));
  return { parameter, other, benefits: [Array<number>(count).fill(0), benefit] };
}

describe("the value of information", () => {
  const [count, blocks] = [40_000, 100];

  it("of everything is the closed form in the normal case, within 4 standard errors", () => {
    const { benefits } = normalCase(1, count, 1, 2, 1.5);
    const found = expectedRegret(benefits);
    const perfectInformation = meanOf(found.ofBest);
    expect(perfectInformation).toBe(at(found.byOption, 1));
    const error = standardError(momentsOf(at(benefits, 1).map((benefit) => Math.max(0, -benefit))));
    expect(Math.abs(perfectInformation - worth(1, Math.hypot(2, 1.5)))).toBeLessThan(4 * error);
  });

  it.each([1, -0.5, 0])(
    "of one parameter is the closed form in the normal case of mean %d, within 4 standard errors",
    (mu) => {
      // With 25 blocks of 400 the estimator is itself off by 0.0001 to 0.0002 (its expectation with exact block
      // means and the noise τ²/400, reckoned by scipy 1.17.1), a tenth of the standard error of about 0.002.
      const runs = 30;
      const values = Array.from({ length: runs }, (_, seed) => {
        const { parameter, benefits } = normalCase(100 + seed, 10_000, mu, 2, 1.5);
        return parameterInformation(parameter, benefits, 25).value;
      });
      const moments = momentsOf(values);
      expect(Math.abs(moments.mean - worth(mu, 2))).toBeLessThan(4 * standardError(moments));
    },
  );

  it("of one parameter has a standard error that covers its own error", () => {
    const { parameter, other, benefits } = normalCase(2, count, 1, 2, 1.5);
    const known = parameterInformation(parameter, benefits, blocks);
    expect(Math.abs(known.value - worth(1, 2))).toBeLessThan(4 * known.standardError);
    const rest = parameterInformation(other, benefits, blocks);
    expect(Math.abs(rest.value - worth(1, 1.5))).toBeLessThan(4 * rest.standardError);
    // What blocks gain is at most what single draws gain, in any sample.
    expect(Math.max(known.value, rest.value)).toBeLessThan(meanOf(expectedRegret(benefits).ofBest));
  });

  it("is nothing for a parameter that never turns the choice, and all for one that is everything", () => {
    const parameter = [5, 1, 4, 2, 3, 6];
    const always = [parameter.map((value) => value), parameter.map(() => 0)];
    expect(parameterInformation(parameter, always, 3)).toEqual({ value: 0, standardError: 0 });
    // By hand: benefits x - 3.4 in blocks (1, 2), (3, 4), (5, 6): means -1.9, 0.1, 2.1; best single option 0.1 on average;
    // max means 0, 0.1, 2.1: gains 1.9, 0, 0 over three blocks.
    const turning = [parameter.map((value) => value - 3.4), parameter.map(() => 0)];
    const { value, standardError: error } = parameterInformation(parameter, turning, 3);
    expect(value).toBeCloseTo(1.9 / 3, 12);
    // Variance of 1.9, 0, 0 is 1.9²/3; over 3 blocks 1.9/3.
    expect(error).toBeCloseTo(1.9 / 3, 12);
  });

  it("weighs blocks of uneven size by their draws", () => {
    // Five draws in two blocks: (1, 2, 3) and (4, 5); benefits x - 2.5: best single mean 0.5; gains 0.5 and 0: 0.5·3/5.
    const parameter = [1, 2, 3, 4, 5];
    const benefits = [parameter.map((value) => value - 2.5), parameter.map(() => 0)];
    expect(parameterInformation(parameter, benefits, 2).value).toBeCloseTo(0.3, 12);
  });

  it("is refused for blocks that hold a single draw, and lists that do not match", () => {
    expect(() => parameterInformation([1, 2, 3, 4], [[1, 2, 3, 4]], 3)).toThrow(
      "blocks is 3; allowed: whole numbers from 2 to 2",
    );
    expect(() => parameterInformation([1, 2, 3], [[1, 2, 3, 4]], 2)).toThrow("parameter has 3 values");
  });
});
