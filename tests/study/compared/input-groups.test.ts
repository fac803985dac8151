import { describe, expect, it } from "vitest";
import type { InputDifference } from "../../../src/study/compared/input-differences.js";
import { inputGroups } from "../../../src/study/compared/input-groups.js";

/** So many changed inputs of one owner. */
function inputs(owner: string, count: number, ownerName = owner): InputDifference[] {
  return Array.from({ length: count }, (_, index) => ({
    place: `${owner}/field${index + 1}`,
    name: `field ${index + 1} of ${ownerName}`,
    owner,
    ownerName,
    kind: "changed",
    left: "1",
    right: "2",
    movesFigures: true,
  }));
}

const told = (differences: readonly InputDifference[], most = 8) =>
  inputGroups(differences, most).map(({ name, inputs: { length } }) => [name, length]);

describe("groups of changed inputs", () => {
  it("are single inputs up to the most of which all orders are taken; names and notes are in none", () => {
    expect(told(inputs("lake", 8))).toHaveLength(8);
    const printed = inputs("lake", 3).map((each) => ({ ...each, movesFigures: false }));
    expect(told(printed)).toEqual([]);
  });

  it("are owners beyond that, the smallest left apart as far as there is room", () => {
    const differences = [...inputs("structures/a", 6), ...inputs("structures/b", 2), ...inputs("money", 3)];
    expect(told(differences)).toEqual([
      ["structures/a", 6],
      ["field 1 of structures/b", 1],
      ["field 2 of structures/b", 1],
      ["field 1 of money", 1],
      ["field 2 of money", 1],
      ["field 3 of money", 1],
    ]);
  });

  it("stay owners up to 24, of which orders are drawn", () => {
    const differences = Array.from({ length: 12 }, (_, index) => inputs(`structures/s${index}`, 2)).flat();
    expect(told(differences)).toHaveLength(12);
    expect(told(differences)[0]).toEqual(["structures/s0", 2]);
  });

  it("are the parts of a study beyond 24 owners, what is requested with the options", () => {
    const structures = Array.from({ length: 25 }, (_, index) => inputs(`structures/s${index}`, 1)).flat();
    const differences = [
      ...structures,
      ...inputs("options/x", 1),
      ...inputs("study", 1),
      ...inputs("money", 2),
    ];
    expect(told(differences)).toEqual([
      ["structures", 25],
      ["program options", 2],
      ["money", 2],
    ]);
  });

  it("tell the structure or option of an input whose own name leaves it open", () => {
    const [input] = inputs("options/full", 1, "Full-season stations");
    if (!input) throw new Error("one input");
    const named = { ...input, name: "hours per year of Inspectors" };
    expect(told([named])).toEqual([["hours per year of Inspectors, Full-season stations", 1]]);
  });
});
