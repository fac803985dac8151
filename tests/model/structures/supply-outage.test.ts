import { describe, expect, it } from "vitest";
import { compare } from "../../../src/model/compare.js";
import { cleaningOutage } from "../../../src/model/structures/cleaning.js";
import { componentsOf } from "../../../src/model/structures/structure.js";
import { assumed } from "../assumptions.js";
import { contextOf } from "../contexts.js";
import { drawnDownLake, productiveLake } from "../lakes.js";
import { gravityIntake, studyOf } from "../study.js";

const days = assumed("supply.outage-days");
const lostShare = assumed("supply.outage-lost-share");

describe("an outage of an intake", () => {
  it("costs the water of its days that nothing bridges, by hand, for its rack and its conduit alike", () => {
    const parts = componentsOf(gravityIntake, contextOf(productiveLake, 5, assumed));
    const expected = days * lostShare * (gravityIntake.demand[6] ?? Number.NaN) * 86_400;
    for (const part of parts) {
      const [line] = cleaningOutage(part, assumed, 6);
      expect(line?.quantity).toBeCloseTo(expected, 6);
      expect(line?.unitRate).toBe(gravityIntake.alternativeWater);
      expect(line?.assumptionIds).toContain("supply.outage-days");
    }
  });

  it("costs nothing while the intake hangs dry", () => {
    // The lake stands at 90 m in all of January.
    const high = { ...gravityIntake, elevation: 95 };
    const [part] = componentsOf(high, contextOf(drawnDownLake, 5, assumed));
    if (!part) throw new Error("an intake has parts");
    expect(cleaningOutage(part, assumed, 0)[0]?.quantity).toBe(0);
    expect(cleaningOutage(part, assumed, 6)[0]?.quantity).toBeGreaterThan(0);
  });

  it("is among the costs of a plan that cleans or coats", () => {
    const pinned = ["divers-12", "foul-release-12"].map((plan) => {
      // Half the length: the price of a coating holds up to ten times the size for which it is known.
      const conduit = { ...gravityIntake.conduit, length: gravityIntake.conduit.length / 2 };
      const each = { ...gravityIntake, conduit, pinned: [{ part: "conduit", plan, reason: "to try it" }] };
      const [result] = compare(studyOf([each]), assumed).structures;
      return result?.years.flat().filter(({ what }) => what.includes("in outages")) ?? [];
    });
    for (const lines of pinned) expect(lines.length).toBeGreaterThan(0);
    expect(pinned[1]?.some(({ what }) => what.includes("to install"))).toBe(true);
  });
});
