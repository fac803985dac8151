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

  it("are at most as many as asked: the structures with the fewest changes are one", () => {
    const counts = [2, 1, 3, 2, 2, 2, 4, 2, 2, 2, 2, 2];
    const differences = counts.flatMap((count, index) => inputs(`structures/s${index}`, count));
    // 12 owners into 8: five are one, the one with a single change first, then the last of those with two.
    expect(told(differences)).toEqual([
      ["structures/s0", 2],
      ["structures/s2", 3],
      ["structures/s3", 2],
      ["structures/s4", 2],
      ["structures/s5", 2],
      ["structures/s6", 4],
      ["structures/s7", 2],
      ["other structures", 9],
    ]);
  });

  it("are whole parts of a study where there is no more room, and the smallest of these are one", () => {
    const structures = Array.from({ length: 25 }, (_, index) => inputs(`structures/s${index}`, 1)).flat();
    const differences = [
      ...structures,
      ...inputs("options/x", 1),
      ...inputs("study", 1),
      ...inputs("money", 2),
      ...inputs("boats", 4),
    ];
    expect(told(differences, 4)).toEqual([
      ["money", 2],
      ["boats", 4],
      ["structures", 25],
      ["program options", 2],
    ]);
    expect(told(differences, 3)).toEqual([
      ["boats", 4],
      ["structures", 25],
      ["money and program options", 4],
    ]);
  });

  it("hold each changed input once, and are never more than asked", () => {
    for (const most of [1, 2, 5, 6, 8]) {
      const differences = ["structures/a", "structures/b", "options/x", "study", "money", "lake"].flatMap(
        (owner) => inputs(owner, 3),
      );
      const groups = inputGroups(differences, most);
      expect(groups.length).toBeLessThanOrEqual(most);
      expect(groups.flatMap((group) => group.inputs.map(({ place }) => place)).sort()).toEqual(
        differences.map(({ place }) => place).sort(),
      );
    }
  });

  it("tell the structure or option of an input whose own name leaves it open", () => {
    const [input] = inputs("options/full", 1, "Full-season stations");
    if (!input) throw new Error("one input");
    const named = { ...input, name: "hours per year of Inspectors" };
    expect(told([named])).toEqual([["hours per year of Inspectors, Full-season stations", 1]]);
  });
});
