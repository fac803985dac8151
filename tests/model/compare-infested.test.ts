import { describe, expect, it } from "vitest";
import { compare } from "../../src/model/compare.js";
import { assumed, assumedWith } from "./assumptions.js";
import { relativeGap } from "./near.js";
import { floatingDock, studyOf, wholeStudy } from "./study.js";

const since = (year: number) => ({ ...wholeStudy, lake: { ...wholeStudy.lake, infestedSince: year } });

describe("a lake declared infested", () => {
  const comparison = compare(since(2020), assumed);

  it("is infested with certainty in each year of each option", () => {
    for (const result of [comparison.baseline, ...comparison.options.map((each) => each.result)]) {
      expect(result.infestedByYear).toEqual(Array<number>(20).fill(1));
    }
  });

  it("expects just what the infestation costs from its present age on", () => {
    const { baseline, infestation } = comparison;
    expect(infestation.byYear).toHaveLength(20);
    baseline.expectedByYear.forEach((expected, year) => {
      expect(expected.infestation.equals(infestation.byYear[year] ?? Number.NaN)).toBe(true);
    });
  });

  it("starts seven years into the infestation that a clean lake would start anew", () => {
    // 2027 less 2020: the eighth year since establishment is the study's first. Twenty-seven years from the start are
    // grown for it, and the years before the study are left out.
    // Another horizon may choose other plans, so all is left alone.
    const plans = wholeStudy.plans.filter(({ measure }) => measure === "leave");
    const alone = compare({ ...since(2020), plans }, assumed);
    const longer = compare({ ...wholeStudy, plans, money: { ...wholeStudy.money, horizon: 27 } }, assumed);
    expect(alone.infestation.byYear.map(String)).toEqual(longer.infestation.byYear.slice(7).map(String));
  });

  it("has the density of its own age at the end of each year, over its capacity, by hand", () => {
    // Logistic, with odds that treble each year and are even in mid-December of the eighth year since 2020, 7 23/24 years
    // on: 1 to 1, 3 to 1, 9 to 1, 27 to 1 at the end of the study's first four years. The start and the peak are as far
    // from it on either side.
    const share = 1 / (1 + 3 ** (191 / 24));
    const source = assumedWith({
      "population.initial-share": share,
      "population.peak-share": 1 - share,
      "population.years-to-peak.quagga-shallow": 191 / 12,
      "population.later-over-peak": 1,
    });
    const firstOf = (study: typeof wholeStudy, from: number) =>
      compare(study, source).lake.densityByYear.slice(from, from + 4);
    const expected = [1 / 2, 3 / 4, 9 / 10, 27 / 28].map((density) => expect.closeTo(density, 9));
    expect(firstOf(since(2020), 0)).toEqual(expected);
    expect(firstOf(wholeStudy, 7)).toEqual(expected);
  });

  it("costs the same whether it became so in the study's first year or the year is certain", () => {
    // Infested since the start year: L(1), L(2), ... in turn, discounted in mid-year.
    const { baseline, infestation, discountFactors } = compare(since(2027), assumed);
    const byHand = infestation.byYear.reduce(
      (sum, amount, year) => sum + amount.toNumber() * (discountFactors[year] ?? Number.NaN),
      0,
    );
    expect(relativeGap(baseline.presentValue.infestation.toNumber(), byHand)).toBeLessThan(1e-12);
  });

  it("leaves a program nothing to avoid, and pays of it what goes on after infestation", () => {
    const [balance] = comparison.options;
    expect(balance?.avoidedLoss.equals(0)).toBe(true);
    const yearly = balance?.result.programPerYear.toNumber() ?? Number.NaN;
    const sum = comparison.discountFactors.reduce((total, factor) => total + factor, 0);
    expect(
      relativeGap(balance?.result.presentValue.program.toNumber() ?? Number.NaN, 0.2 * yearly * sum),
    ).toBeLessThan(1e-10);
  });
});

describe("what a year weighs where plans are compared, by hand", () => {
  // 20 years at 3 %, in mid-year.
  const factorOf = (year: number) => 1.03 ** (0.5 - year);
  const weightsIn = (study: typeof wholeStudy) => {
    const [{ contexts }] = compare(study, assumed).schedules;
    return contexts[0].planWeights.byYear.map(([weight]) => weight);
  };

  it("is its factor in an infested lake, and nothing before the study", () => {
    const weights = weightsIn(since(2020));
    expect(weights.slice(0, 7)).toEqual(Array<number>(7).fill(0));
    expect([weights[7], weights[26]]).toEqual([factorOf(1), factorOf(20)].map((v) => expect.closeTo(v, 12)));
  });

  it("is the mean over all years in which mussels may establish in a lake without them", () => {
    const weights = weightsIn(wholeStudy);
    // The last year since establishment is met only by mussels of the first, the first by those of all years.
    const all = Array.from({ length: 20 }, (_, year) => factorOf(year + 1)).reduce((sum, v) => sum + v);
    expect([weights[0], weights[19]]).toEqual(
      [all / 20, factorOf(20) / 20].map((v) => expect.closeTo(v, 12)),
    );
  });
});

describe("the answer for a lake declared infested", () => {
  it("has no value at which it flips", () => {
    const [balance] = compare(since(2020), assumed).options;
    const none = { turns: [], all: true };
    expect(balance?.breakEven).toEqual({
      hazard: undefined,
      programPerYear: undefined,
      lossFactor: undefined,
      hazards: none,
      stopped: none,
      horizons: none,
    });
    expect(balance?.netBenefit.lessThan(0)).toBe(true);
  });
});

describe("the horizon", () => {
  it("adds years without changing those before", () => {
    const of = (horizon: number) =>
      compare(studyOf([floatingDock], { money: { ...wholeStudy.money, horizon } }), assumed);
    const short = of(20);
    const long = of(30);
    expect(long.baseline.infestedByYear.slice(0, 20)).toEqual(short.baseline.infestedByYear);
    expect(long.baseline.presentValue.infestation.greaterThan(short.baseline.presentValue.infestation)).toBe(
      true,
    );
  });
});
