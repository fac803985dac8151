import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { loadAssumptions } from "../../src/assumptions/load.js";
import { prepareStudy } from "../../src/study/prepare/prepared.js";
import { readStudyText } from "../../src/study/reading/read.js";
import { editedText, inputErrorOf, toldIn, wordsOfTheProgram } from "./example.js";

const set = loadAssumptions(fileURLToPath(new URL("../../assumptions", import.meta.url)));
const reason = "quote of a contractor";

const prepared = (overrides: unknown, money: ReadonlyArray<readonly [string, unknown]> = []) =>
  prepareStudy(readStudyText(editedText([["overrides", overrides], ...money]), "study.yaml"), set);

describe("the overrides of a study", () => {
  it("replace the values of the assumptions for the model", () => {
    const { assumed } = prepared([{ id: "cleaning.rack.visit", value: "$9,500", reason }]);
    expect(assumed("cleaning.rack.visit")).toBe(9500);
  });

  it.each([
    [
      "an id that no assumption has",
      { id: "cleaning.roof.rate", value: "$5/m2" },
      "id",
      '"cleaning.roof.rate"',
      "cleaning.",
    ],
    [
      "an id of the language",
      { id: "__proto__", value: 1 },
      "id",
      '"__proto__"',
      "an id from the assumptions",
    ],
    [
      "another unit",
      { id: "cleaning.rack.base", value: "$12/ft" },
      "value",
      '"$12/ft"',
      'money per area such as "$6/ft2"',
    ],
    ["a bare number for a price", { id: "cleaning.rack.base", value: 12 }, "value", '"12"', "money per area"],
    [
      "a share above 100 %",
      { id: "cleaning.dry-share", value: "140 %" },
      "value",
      '"140 %"',
      "at most 100 %",
    ],
    [
      "a layer thicker than any",
      { id: "conduit.largest-layer", value: "15 m" },
      "value",
      '"15 m"',
      "above 0 and at most 1 m",
    ],
    [
      "no life for what a plan installs",
      { id: "plan.foul-release.life", value: "0 yr" },
      "value",
      '"0 yr"',
      "above 0 and at most 200 yr",
    ],
    [
      "words for a number without unit",
      { id: "arrival.shape", value: "steep" },
      "value",
      '"steep"',
      "a bare number",
    ],
  ])("are refused with %s", (_what, override, field, found, allowed) => {
    const error = inputErrorOf(() => prepared([{ ...override, reason }]));
    expect(toldIn(error)).toEqual([
      {
        path: expect.stringMatching(new RegExp(`^overrides\\[0.*\\]\\.${field}$`)),
        found,
        allowed: expect.stringContaining(allowed),
        remedy: expect.stringContaining("this override"),
      },
    ]);
    expect(wordsOfTheProgram(error.message)).toBeUndefined();
  });

  it("are told of together if several cannot be used", () => {
    const wrong = [
      { id: "nothing.like-it", value: 1, reason },
      { id: "cleaning.rack.visit", value: "$9,500", reason },
      { id: "cleaning.rack.base", value: "5 kg", reason },
    ];
    expect(inputErrorOf(() => prepared(wrong)).problems.map(({ path }) => path)).toEqual([
      expect.stringContaining("overrides[0"),
      expect.stringContaining("overrides[2"),
    ]);
  });

  it("are held against the range of the assumption in the currency of the study", () => {
    const { low, high } = set.entries.get("cleaning.rack.visit") ?? { low: 0, high: 0 };
    const money = [["money.exchangeRate", 150]] as const;
    const within = [{ id: "cleaning.rack.visit", value: `$${((low + high) / 2) * 150}`, reason }];
    const above = [{ id: "cleaning.rack.visit", value: `$${high * 1.5 * 150}`, reason }];
    expect(prepared(within, money).overrides).toMatchObject([{ outsideRange: false }]);
    expect(prepared(above, money).overrides).toMatchObject([{ outsideRange: true }]);
  });

  it("are not multiplied by the exchange rate, as they are in the currency of the study", () => {
    const { assumed } = prepared(
      [{ id: "cleaning.rack.visit", value: "$8,000", reason }],
      [["money.exchangeRate", 0.9]],
    );
    const rate = set.entries.get("cleaning.rack.base")?.value ?? Number.NaN;
    expect(assumed("cleaning.rack.visit")).toBe(8000);
    expect(assumed("cleaning.rack.base")).toBeCloseTo(rate * 0.9, 12);
  });
});
