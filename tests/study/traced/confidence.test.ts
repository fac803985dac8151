import { describe, expect, it } from "vitest";
import type { Odds, TornadoBar } from "../../../src/study/odds/odds.js";
import { confidences, type JudgedBy } from "../../../src/study/traced/confidence.js";
import { realSet } from "../../assumptions/real.js";
import { sampleOdds, withCheaper } from "../../report/sample-odds.js";

const assumptions = realSet();
const basisOf = (id: string) => assumptions.entries.get(id)?.basis;

const found = (basis: string) =>
  [...assumptions.entries.values()].find((entry) => entry.basis === basis)?.id ?? "";
const published = found("published");
const judged = found("judged");

const bar = (id: string, low: number, high: number): TornadoBar => ({
  ...{ id, name: `the ${id}` },
  ...{ low: { input: 0, netBenefit: low }, high: { input: 1, netBenefit: high } },
});

/** Odds of an option that costs a million more than it saves, with such bars. */
function oddsWith(tornado: readonly TornadoBar[], cheaper = 0.3): Odds {
  const odds = withCheaper(sampleOdds("sorrel-bend"), cheaper);
  return {
    ...odds,
    options: odds.options.map((option) =>
      option.against
        ? { ...option, against: { ...option.against, netBenefit: { value: -1e6, standardError: 1 } } }
        : option,
    ),
    matters: { ...odds.matters, netBenefit: -1e6, tornado },
  };
}

const by: JudgedBy = {
  ...{ assumptions, own: new Set(), chance: undefined },
  ...{ central: -1e6, otherSpecies: -1e6 },
};

const steady = [bar(published, -1.2e6, -0.8e6)];

describe("confidence in whether an option pays", () => {
  it("knows the bases that it judges by", () => {
    expect([basisOf(published), basisOf(judged)]).toEqual(["published", "judged"]);
  });

  it("is high where what decides is published and all agree", () => {
    expect(confidences(oddsWith(steady), by).pays).toMatchObject({
      ...{ level: "high", evidence: "high", agreement: "high", judgedShare: 0, isFirm: false },
      ...{ reversing: [], disagreeing: [] },
    });
  });

  it("falls with the share of the squared widths that is judged", () => {
    // By hand: widths 0.2 and 0.4 million: 0.16/(0.04 + 0.16) = 0.8 is judged, and the other way about 0.2.
    const mostly = [bar(judged, -1.2e6, -0.8e6), bar(published, -1.1e6, -0.9e6)];
    expect(confidences(oddsWith(mostly), by).pays.judgedShare).toBeCloseTo(0.8, 12);
    expect(confidences(oddsWith(mostly), by).pays.level).toBe("low");
    const partly = [bar(published, -1.2e6, -0.8e6), bar(judged, -1.1e6, -0.9e6)];
    expect(confidences(oddsWith(partly), by).pays.judgedShare).toBeCloseTo(0.2, 12);
    expect(confidences(oddsWith(partly), by).pays.level).toBe("high");
    // The study's own value is no longer judged.
    expect(confidences(oddsWith(mostly), { ...by, own: new Set([judged]) }).pays.level).toBe("high");
  });

  it("is at most medium where one input alone reverses the answer, and low where that is judged", () => {
    expect(confidences(oddsWith([bar(published, -1.2e6, 1e5)]), by).pays).toMatchObject({
      ...{ level: "medium", reversing: [`the ${published}`] },
    });
    const reversing = [bar(published, -3e6, -0.5e6), bar(judged, -1.2e6, 1e5)];
    expect(confidences(oddsWith(reversing), by).pays.level).toBe("low");
  });

  it("falls with each comparison that comes out otherwise", () => {
    const one = confidences(oddsWith(steady), { ...by, central: 1 }).pays;
    expect([one.agreement, one.level, one.disagreeing]).toEqual(["medium", "medium", ["central case"]]);
    const two = confidences(oddsWith(steady), { ...by, central: 1, otherSpecies: 1 }).pays;
    expect([two.agreement, two.level]).toEqual(["low", "low"]);
  });

  it("is high where nothing within reason changes the answer, however much of it is judged", () => {
    const firm = confidences(oddsWith([bar(judged, -1.2e6, -0.8e6)], 0.001), by).pays;
    expect(firm).toMatchObject({ isFirm: true, level: "high", evidence: "low" });
    // One outcome in three that pays is no firm no.
    expect(confidences(oddsWith([bar(judged, -1.2e6, -0.8e6)], 0.33), by).pays.isFirm).toBe(false);
  });

  it("counts a group of inputs once, not its members again", () => {
    const group = { ...bar("group", -2e6, -0.5e6), members: [judged] };
    const alone = confidences(oddsWith([group, bar(judged, -1.9e6, -0.6e6), ...steady]), by).pays;
    // By hand: 1.5²/(1.5² + 0.4²).
    expect(alone.judgedShare).toBeCloseTo(2.25 / 2.41, 12);
  });
});
