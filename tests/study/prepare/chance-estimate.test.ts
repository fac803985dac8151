import { describe, expect, it } from "vitest";
import { compare } from "../../../src/model/compare.js";
import { logSpreadsOf } from "../../../src/study/prepare/chance-estimate.js";
import { prepareStudy } from "../../../src/study/prepare/prepared.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { realSet } from "../../assumptions/real.js";
import { editedText } from "../example.js";

const set = realSet();
const preparedWith = (...edits: Parameters<typeof editedText>[0]) =>
  prepareStudy(readStudyText(editedText([["boats.otherWays", []], ...edits]), "study.yaml"), set);
const driven = (drivenBy: string, rest: object = {}) => preparedWith(["boats.chance", { drivenBy, ...rest }]);
const foundingsUnder = ({ input, assumed }: ReturnType<typeof preparedWith>, id: string) => {
  const { baseline, options } = compare(input, assumed);
  const of = [baseline, ...options.map(({ result }) => result)].find(({ option }) => option.id === id);
  return of?.arrivals.foundings ?? Number.NaN;
};

describe("how the two ways to the chance weigh", () => {
  it("is all on the one that drives the answer, and between where both do", () => {
    expect(driven("launches").estimate.weightOfBoats).toBe(1);
    expect(driven("lakes").estimate.weightOfBoats).toBe(0);
    const { weightOfBoats } = driven("both").estimate;
    expect(weightOfBoats).toBeGreaterThan(0);
    expect(weightOfBoats).toBeLessThan(1);
  });

  it("is more on fouled launches where a study knows the chance of a founding better", () => {
    const own = (value: string) => [
      { id: "arrival.founding-unknown", value, reason: "invented" },
      { id: "arrival.founding-near", value, reason: "invented" },
      { id: "arrival.founding-far", value, reason: "invented" },
    ];
    const weightAt = (value: string) => preparedWith(["overrides", own(value)]).estimate.weightOfBoats;
    expect(weightAt("0.001")).toBeGreaterThan(weightAt("0.0005 to 0.001 to 0.002"));
    expect(weightAt("0.0005 to 0.001 to 0.002")).toBeGreaterThan(weightAt("0.0001 to 0.001 to 0.01"));
  });

  it("takes the spread of an assumption from the range that holds it with a chance of 80 %", () => {
    // ln(high/low) over twice 1.2816 deviations, from the median to the 90th percentile (standard).
    const id = "arrival.founding-unknown";
    const entry = set.entries.get(id);
    if (!entry) throw new Error(`no ${id}`);
    const expected = Math.log(entry.high / entry.low) / (2 * 1.281551565545);
    expect(logSpreadsOf(set.entries, [])(id)).toBeCloseTo(expected, 9);
  });
});

describe("a yearly chance of a study's own", () => {
  const ownRate = (under?: string) => ({ chance: "4 %/yr", ...(under ? { under } : {}), origin: "invented" });

  it("holds checks of none where it names no option", () => {
    expect(driven("lakes", { ownRate: ownRate() }).estimate.checksLetThrough).toBe(1);
    expect(driven("lakes", { ownRate: ownRate("none") }).estimate.checksLetThrough).toBe(1);
  });

  it("is divided by what the option in it lets through, so that this option has it back", () => {
    const prepared = driven("lakes", { ownRate: ownRate("full-season") });
    const through = foundingsUnder(prepared, "full-season") / foundingsUnder(prepared, "none");
    expect(through).toBeLessThan(1);
    expect(prepared.estimate.checksLetThrough).toBeCloseTo(through, 12);
    // By hand: the 4 % that were entered, as no other way is named here.
    const { options, baseline } = compare(prepared.input, prepared.assumed);
    const expected = -Math.log(0.96);
    const under = options.find(({ result }) => result.option.id === "full-season")?.result.hazard;
    expect(-Math.log1p(-(under ?? Number.NaN))).toBeCloseTo(expected, 12);
    expect(-Math.log1p(-baseline.hazard)).toBeCloseTo(expected / through, 12);
  });
});

describe("years without a find", () => {
  const period = (from: number, to: number, rest: object = {}) => ({ from, to, origin: "invented", ...rest });
  const learnedFrom = (...cleanPeriods: readonly object[]) =>
    preparedWith(["boats.cleanPeriods", cleanPeriods]).input.boats.learned;
  const factorOf = (...periods: readonly object[]) => {
    const learned = learnedFrom(...periods);
    return learned ? learned.medianAfter / learned.medianBefore : 1;
  };

  it("change nothing where none are entered", () => {
    expect(learnedFrom()).toBeUndefined();
  });

  it("lower the chance, the more the longer they are and the more boats came, and never to nothing", () => {
    const [short, long] = [factorOf(period(2017, 2019)), factorOf(period(2007, 2026))];
    expect(short).toBeLessThan(1);
    expect(long).toBeLessThan(short);
    expect(long).toBeGreaterThan(0);
    expect(factorOf(period(2007, 2026, { launches: "50 %" }))).toBeGreaterThan(long);
    expect(factorOf(period(2007, 2026, { under: "full-season" }))).toBeGreaterThan(long);
  });

  it("in two periods tell what they tell in one", () => {
    const learned = learnedFrom(period(2007, 2026));
    const parted = learnedFrom(period(2007, 2014), period(2015, 2026));
    expect(parted?.medianAfter).toBeCloseTo(learned?.medianAfter ?? Number.NaN, 12);
    expect(parted?.chanceOfClean).toBeCloseTo(learned?.chanceOfClean ?? Number.NaN, 12);
  });

  it("leave the rate no wider than it was", () => {
    expect(learnedFrom(period(2007, 2026))?.narrowing).toBeLessThanOrEqual(1);
  });
});
