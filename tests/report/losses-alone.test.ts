import { describe, expect, it } from "vitest";
import { isControl } from "../../src/model/infestation-cost.js";
import { exampleRun } from "./runs.js";

describe("losses alone, before mussels are known", () => {
  it("hold no energy lost while a plant stands still to be cleaned", () => {
    // Nobody cleans what nobody knows of: a rule, not a figure.
    const lines = exampleRun("sorrel-bend").comparison.structures.flatMap(({ years }) => years.flat());
    const outages = lines.filter(({ what }) => what.includes("energy lost in outages"));
    expect(outages.length).toBeGreaterThan(0);
    expect(outages.every(isControl)).toBe(true);
    const derated = lines.filter(({ what }) => what.includes("energy lost to the rack"));
    expect(derated.some(isControl)).toBe(false);
  });
});
