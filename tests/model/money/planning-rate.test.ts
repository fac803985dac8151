import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { planningRate } from "../../../src/model/money/planning-rate.js";

const percent = (value: number) => value / 100;

describe("the federal water-planning rate", () => {
  it("of fiscal year 2005 is the published 5 3/8 %", () => {
    // 69 FR 71425: mean yield 5.088 %, rate 5.375 %; the year before 5.625 % (69 FR 22556).
    expect(planningRate(percent(5.088), percent(5.625))).toEqual({
      rate: percent(5.375),
      rounded: percent(5.125),
      limited: "fall",
    });
  });

  it("of fiscal year 2004 is the published 5 5/8 %", () => {
    // 69 FR 22556: mean yield 4.893 %, 4.875 % rounded, rate 5.625 %; 5.875 % the year before is from memory.
    expect(planningRate(percent(4.893), percent(5.875))).toEqual({
      rate: percent(5.625),
      rounded: percent(4.875),
      limited: "fall",
    });
  });

  test.each([
    // Rates of Bureau of Reclamation notices: 83 FR 1272, 83 FR 64875, 84 FR 68943, 89 FR 100533. If the yield had
    // been the rate itself, no limit would have worked.
    [2018, 2.75, 2019, 2.875],
    [2019, 2.875, 2020, 2.75],
    [2024, 2.75, 2025, 3],
  ])("may go from its value of %d (%d %%) to that of %d (%d %%)", (_before, previous, _after, rate) => {
    expect(planningRate(percent(rate), percent(previous))).toMatchObject({
      rate: percent(rate),
      limited: "no",
    });
  });

  test.each([
    // By hand from the rule.
    [3.4, 3, 3.25, "rise"],
    [3.2, 3, 3.25, "no"],
    [3.18, 3, 3.125, "no"],
    [3, 3, 3, "no"],
    [2.6, 3, 2.75, "fall"],
    [3.0625, 3, 3.125, "no"],
  ])("is, for a yield of %d %% after %d %%, %d %%", (meanYield, previous, rate, limited) => {
    expect(planningRate(percent(meanYield), percent(previous))).toMatchObject({
      rate: percent(rate),
      limited,
    });
  });

  it("is in eighths, within a quarter point of the last, and as near to the yield as that allows", () => {
    const yields = fc.double({ min: 0, max: 0.15, noNaN: true });
    fc.assert(
      fc.property(yields, fc.integer({ min: 0, max: 120 }), (meanYield, eighths) => {
        const previous = eighths / 800;
        const { rate } = planningRate(meanYield, previous);
        expect(rate * 800).toBeCloseTo(Math.round(rate * 800), 9);
        expect(Math.abs(rate - previous)).toBeLessThanOrEqual(0.0025 + 1e-12);
        for (const other of [-2, -1, 0, 1, 2].map((step) => previous + step / 800)) {
          expect(Math.abs(rate - meanYield)).toBeLessThanOrEqual(Math.abs(other - meanYield) + 1e-12);
        }
      }),
      { seed: 41, numRuns: 300 },
    );
  });

  it("is refused where the last rate is not in eighths", () => {
    expect(() => planningRate(percent(5), percent(5.6))).toThrow("allowed: eighths of a percent");
  });
});
