import { describe, expect, it } from "vitest";
import { isControl } from "../../src/model/infestation-cost.js";
import { exampleRun } from "./runs.js";

describe("losses alone, before mussels are known", () => {
  it("hold no energy lost while a plant stands still to be cleaned as planned", () => {
    // Nobody cleans what nobody knows of, but a limit that is reached forces a standstill: a rule, not a figure.
    const lines = exampleRun("sorrel-bend").comparison.structures.flatMap(({ years }) => years.flat());
    const outages = lines.filter(({ what }) => what.includes("energy lost in outages"));
    const planned = outages.filter(({ what }) => !what.endsWith("forced"));
    expect(planned.length).toBeGreaterThan(0);
    expect(planned.every(isControl)).toBe(true);
    expect(outages.some((line) => !isControl(line))).toBe(true);
  });
});
