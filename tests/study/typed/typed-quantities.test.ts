import { describe, expect, it } from "vitest";
import { readStudyText } from "../../../src/study/reading/read.js";
import { typedQuantities } from "../../../src/study/typed/typed-quantities.js";
import { typedRange, valueAtPlace } from "../../../src/study/typed/typed-range.js";
import { assumptionSet } from "../../model/assumptions.js";
import { editedText } from "../example.js";

const sizes = new Map([
  ["typed.price", { value: 0.2 }],
  ["typed.deterrence", { value: 1 }],
  ["typed.temperature", { value: 1 }],
]);
const rangeOf = (id: "typed.price" | "typed.deterrence" | "typed.temperature", value: number) =>
  typedRange(
    {
      id,
      value,
      dimension: (
        { "typed.price": "money", "typed.deterrence": "share", "typed.temperature": "temperature" } as const
      )[id],
    },
    { entries: sizes },
  );

describe("the range of a quantity typed as one number", () => {
  it("is a share of it either way, log odds of a share, kelvins of a temperature", () => {
    expect(rangeOf("typed.price", 250)).toEqual({ low: 200, high: 300 });
    // By hand: 30 % are odds of 3/7; over and times e they are 0.157663 and 1.164978: shares 0.13619 and 0.53810.
    const share = rangeOf("typed.deterrence", 0.3);
    expect(share?.low).toBeCloseTo(0.13619, 5);
    expect(share?.high).toBeCloseTo(0.5381, 4);
    expect(rangeOf("typed.temperature", 20)).toEqual({ low: 19, high: 21 });
  });

  it("is none of nothing and of a whole, and holds nothing that its dimension does not allow", () => {
    expect(rangeOf("typed.price", 0)).toBeUndefined();
    expect(rangeOf("typed.deterrence", 0)).toBeUndefined();
    expect(rangeOf("typed.deterrence", 1)).toBeUndefined();
    expect(rangeOf("typed.temperature", 59.5)).toEqual({ low: 58.5, high: 60 });
  });

  it("leads from its low over the value to its high", () => {
    // By hand: half of the way from 30 down to 10, and up to 70.
    const places = [-1, -0.5, 0, 0.5, 1].map((place) => valueAtPlace(30, { low: 10, high: 70 }, place));
    expect(places).toEqual([10, 20, 30, 50, 70]);
  });
});

const typedOf = (edits: Parameters<typeof editedText>[0]) =>
  new Map(
    typedQuantities(readStudyText(editedText(edits), "study.yaml"), assumptionSet).map((each) => [
      each.id,
      each,
    ]),
  );

describe("what is varied of a study", () => {
  const plain = typedOf([]);

  it("moves months of a list together, and one quantity of several options", () => {
    const launches = plain.get("typed/boats/launches");
    expect(launches).toMatchObject({ kind: "typed.count", name: "boats, launches" });
    // January and December have none, which nothing moves.
    expect(launches?.members).toHaveLength(10);
    const deterrence = plain.get("typed/options/steps/deterrence");
    expect(deterrence?.name).toBe("steps, deterrence, all options");
    expect(deterrence?.members.map(({ quantity }) => quantity.value)).toEqual([0.12, 0.3]);
  });

  it("leaves out limits, levels, fees, shares of a whole, dates and rates of interest", () => {
    const ids = [...plain.keys()].join("\n");
    for (const word of [
      "Limit",
      "levation",
      "fee",
      "Fee",
      "classes/clean-waters/share",
      "money/",
      "drawdown",
    ]) {
      expect(ids).not.toContain(word);
    }
  });

  it("leaves out what the author gives a range, or calls exact", () => {
    const id = "typed/structures/marina/wettedArea";
    expect(plain.has(id)).toBe(true);
    const place = "structures[marina].wettedArea";
    expect(typedOf([[place, "4,000 to 5,400 to 9,000 ft2"]]).has(id)).toBe(false);
    expect(typedOf([[place, "5,400 ft2 exact"]]).has(id)).toBe(false);
  });

  it("can be switched off by an assumption of 0", () => {
    const entries = new Map(
      [...assumptionSet.entries].map(([id, entry]) => [
        id,
        id.startsWith("typed.") ? { ...entry, value: 0 } : entry,
      ]),
    );
    expect(typedQuantities(readStudyText(editedText([]), "study.yaml"), { entries })).toEqual([]);
  });
});
