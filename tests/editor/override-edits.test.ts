import { describe, expect, it } from "vitest";
import { withOverride, withoutOverride } from "../../src/editor/override-edits.js";

const visit = { id: "cleaning.rack.visit", value: "$9,500", reason: "Quote" };
const none = "study: { name: Lake } # ours\n";
const two = `${none}overrides:
  - { id: cleaning.rack.visit, value: "$8,000", reason: Old } # of 2024
  - id: layer.density
    value: 3
    reason: Measured
`;

describe("an own value", () => {
  it("is put at the end of the list, which is made if need be", () => {
    expect(withOverride(none, "lake", visit)).toBe(
      `${none}overrides:\n  - id: cleaning.rack.visit\n    value: $9,500\n    reason: Quote\n`,
    );
  });

  it("takes the place of the one before, and leaves the rest as it was written", () => {
    const changed = withOverride(two, "lake", visit);
    expect(changed).toBe(two.replace('"$8,000"', '"$9,500"').replace("Old", "Quote"));
  });

  it("is taken out alone, and the list with the last", () => {
    const one = withoutOverride(two, "lake", "cleaning.rack.visit");
    expect(one).toBe(`${none}overrides:\n  - id: layer.density\n    value: 3\n    reason: Measured\n`);
    expect(withoutOverride(one, "lake", "layer.density")).toBe(none);
  });

  it("that is not there changes nothing", () => {
    expect(withoutOverride(two, "lake", "other")).toBe(two);
    expect(withoutOverride(none, "lake", "other")).toBe(none);
  });
});
