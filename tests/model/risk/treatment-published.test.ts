import { describe, expect, it } from "vitest";
import { treatmentCost } from "../../../src/model/risk/treatment.js";
import { assumptions } from "../../report/runs.js";

const entry = assumptions.entries.get("response.treatment-price");
if (!entry) throw new Error("no price of a treatment");
const { low, value, high } = entry;
const cubicMetresPerAcreFoot = 1233.482;
const costOf = (acreFeet: number, price: number) =>
  treatmentCost(acreFeet * cubicMetresPerAcreFoot, () => price);

/**
 * The price is that of the plan for San Justo Reservoir, which is an input and no check here. Checks are other places.
 */
describe("the price of treating open water, against what others paid", () => {
  it("brackets Millbrook Quarry, Virginia, 2006, whose volume is known by its area and greatest depth alone", () => {
    // Nearly 400,000 with studies; 12 acres, 93 ft at most (Washington Examiner 2006; Virginia Department of Game and
    // Inland Fisheries). Its volume lies between a third of area times depth, a cone, and all of it.
    const published = 400_000;
    expect(costOf((12 * 93) / 3, low)).toBeLessThan(published);
    expect(costOf(12 * 93, high)).toBeGreaterThan(published);
  });

  it("makes of a river treated in 2023 one of a believable cross-section, by both readings of its cost", () => {
    // 3 million, which sources give for 2023 or for 2023 and 2024 together, for 6 to 7 miles of the Snake River (Idaho
    // Statesman, 2025; Boise State Public Radio, 1 Oct 2023). Limits of a large river's cross-section are judged.
    for (const paid of [1_500_000, 3_000_000]) {
      const section = paid / treatmentCost(1, () => value) / (6.5 * 1609.344);
      expect(section).toBeGreaterThan(100);
      expect(section).toBeLessThan(2000);
    }
  });

  it("makes of a shore treated with potash in 2014, and lost again, one of a believable depth", () => {
    // Christmas Lake, Minnesota: 1,500 for the potash on 40,000 ft² (Tech Times, 23 Dec 2014; CBS Minnesota, 19 Dec 2014).
    // Limits of the depth along a shore are judged.
    const depth = 1500 / treatmentCost(1, () => value) / (40_000 * 0.3048 ** 2);
    expect(depth).toBeGreaterThan(0.3);
    expect(depth).toBeLessThan(3);
  });

  it("makes of each of four harbours treated in 2014, from which mussels were not gone for good, a believable one", () => {
    // 500,000 CAD for four harbours of Lake Winnipeg (Winnipeg Sun, 18 June 2014); 1.10 CAD a USD in 2014 and 2 % a year
    // up to the price's year are from memory. A harbour of 1 to 50 ha, 1.5 to 6 m deep: judged.
    const paid = (500_000 / 4 / 1.1) * 1.02 ** 7;
    const volume = paid / treatmentCost(1, () => value);
    expect(volume).toBeGreaterThan(10_000 * 1.5);
    expect(volume).toBeLessThan(500_000 * 6);
  });
});
