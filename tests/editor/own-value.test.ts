import { describe, expect, it } from "vitest";
import { ownValueIndex, ownValues, withOwnValue } from "../../src/editor/own-value.js";
import { rawOf } from "../../src/editor/study-text.js";

const text = `study: { name: Our lake } # kept
overrides:
  - { id: growth.settlers-per-month, value: 900, reason: plates } # of 2025
  - { id: cleaning.rack.visit, value: "$9,500", reason: quote }
`;
const own = (changed: string) => Object.fromEntries(ownValues(rawOf(changed, "study.yaml")));

describe("own values in a study's text", () => {
  it("are found with their reasons, numbers as typed", () => {
    expect(own(text)).toEqual({
      "growth.settlers-per-month": { value: "900", reason: "plates" },
      "cleaning.rack.visit": { value: "$9,500", reason: "quote" },
    });
  });

  it("are put in place of one that there is, or after the others", () => {
    const added = { value: "0.3 to 0.5 to 0.8", reason: "counted" };
    const changed = withOwnValue(text, "study.yaml", "growth.settlers-per-month", added);
    expect(own(changed)).toEqual({ ...own(text), "growth.settlers-per-month": added });
    expect(ownValueIndex(rawOf(text, "study.yaml"), "growth.settlers-per-month")).toBe(0);
    expect(own(withOwnValue(text, "study.yaml", "steps.dependence", added))["steps.dependence"]).toEqual(
      added,
    );
    expect(ownValueIndex(rawOf(text, "study.yaml"), "steps.dependence")).toBe(2);
  });

  it("are written as numbers where they are plain ones, and as texts where not: 1e3 and 007 are kept as typed", () => {
    const written = withOwnValue("overrides: []\n", "study.yaml", "x", { value: "1200", reason: "typed" });
    expect(written).toContain("value: 1200\n");
    for (const value of ["1e3", "007", "2 d"]) {
      const changed = withOwnValue("overrides: []\n", "study.yaml", "x", { value, reason: "typed" });
      expect(own(changed).x?.value).toBe(value);
    }
  });
});
