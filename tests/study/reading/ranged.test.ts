import { describe, expect, it, test } from "vitest";
import { rangedQuantities, withValues } from "../../../src/study/reading/ranged.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { expectContradiction } from "../contradicting.js";
import { editedText, modelOf } from "../example.js";

const edits = [
  ["structures[dock].wettedArea", "4,800 to 5,400 to 6,600 ft2"],
  ["structures[city-intake].alternativeWater", "$250 to $400/acre-ft"],
  ["options[steps].steps.quickCheck", "60 to 76 to 85 %"],
  ["boats.otherWays[0].chance", "one of 0.1 %/yr (70 %), 0.4 %/yr (30 %)"],
] as const;
const ranged = readStudyText(editedText(edits), "lake.yaml");

describe("quantities with a range", () => {
  it("are found by the ids of the groups that they stand in", () => {
    expect(rangedQuantities(ranged).map(({ id, quantity }) => [id, quantity.text])).toEqual([
      ["structures/city-intake/alternativeWater", edits[1][1]],
      ["structures/marina/wettedArea", edits[0][1]],
      ["boats/otherWays/Gear and aircraft/chance", edits[3][1]],
      ["options/weekends/steps/quickCheck", edits[2][1]],
    ]);
  });

  it("count with their most likely or middle value until they are drawn", () => {
    const alone = [
      ["structures[dock].wettedArea", "5,400 ft2"],
      ["structures[city-intake].alternativeWater", "$325/acre-ft"],
      ["options[steps].steps.quickCheck", "76 %"],
      ["boats.otherWays[0].chance", "0.1 %/yr"],
    ] as const;
    expect(modelOf(ranged)).toEqual(modelOf(readStudyText(editedText(alone), "lake.yaml")));
  });

  it("can each be set to another value, the rest shared", () => {
    const [, area] = rangedQuantities(ranged);
    if (!area) throw new Error("no range");
    const changed = withValues(ranged, [{ path: area.path, value: 123 }]);
    expect(rangedQuantities(changed)[1]?.quantity).toMatchObject({ value: 123, text: edits[0][1] });
    expect(changed.lake).toBe(ranged.lake);
    expect(changed.structures[0]).toBe(ranged.structures[0]);
    expect(rangedQuantities(ranged)[1]?.quantity.value).toBe(area.quantity.value);
  });

  test.each([
    {
      why: "shares that only add up in the middle",
      edits: [["boats.classes[contractors].share", "1 to 1.4 to 2 %"]] as const,
      found: "which would lead to shares that add up to",
      allowed: "a range all of whose values are possible",
    },
    {
      why: "an intake that may lie above the highest level",
      edits: [["structures[city-intake].elevation", "2,086 to 2,100 to 2,400 ft"]] as const,
      found: "which would lead to",
      allowed: "a range all of whose values are possible",
    },
  ])("are refused if an end is impossible: $why", expectContradiction);

  it("are held to the study's currency wherever the sign stands", () => {
    const text = editedText([["structures[city-intake].alternativeWater", "250 to 400 €/acre-ft"]]);
    expect(() => readStudyText(text, "lake.yaml")).toThrow(
      /found "250 to 400 €\/acre-ft"; allowed: an amount in the study's currency, USD/,
    );
  });
});
