import { describe, expect, it } from "vitest";
import { comparedRun } from "../../../src/study/compared/compared.js";
import { parsedStudyText, readStudyText } from "../../../src/study/reading/read.js";
import { recordReaders } from "../../../src/study/reading/record-readers.js";
import { withSettings } from "../../../src/study/swept/settings.js";
import { sweep } from "../../../src/study/swept/sweep.js";
import { assumptions } from "../../report/runs.js";
import { inputErrorOf, toldIn } from "../example.js";
import { smallLakeText } from "../small-lake.js";

const parsed = parsedStudyText(smallLakeText, "small.yaml");

/** The same change made in the study's text and computed as every study is. */
function comparedWith(text: string) {
  const { comparison } = comparedRun(readStudyText(text, "changed.yaml"), assumptions);
  return comparison.options.map(({ result, netBenefit }) => [result.option.id, netBenefit.toNumber()]);
}

const benefits = (options: readonly { readonly id: string; readonly netBenefit: number }[]) =>
  options.slice(1).map(({ id, netBenefit }) => [id, netBenefit]);

const ownValue = (id: string, value: number) =>
  `${smallLakeText}\noverrides: [{ id: ${id}, value: ${value}, reason: mine }]\n`;

describe("a sweep", () => {
  it("gives at each point what the study has when its text is changed", () => {
    const { points } = sweep(
      parsed,
      [
        { id: "money.discountRate", values: ["2 %/yr", "5 %/yr"] },
        { id: "arrival.shape", values: [1, "2"] },
        { id: "growth.settlers-per-month", values: [900] },
      ],
      assumptions,
    );
    expect(points.map(({ settings }) => settings.map(({ value }) => value))).toEqual([
      ["2 %/yr", 1, 900],
      ["2 %/yr", "2", 900],
      ["5 %/yr", 1, 900],
      ["5 %/yr", "2", 900],
    ]);
    const text = ownValue("growth.settlers-per-month", 900)
      .replace("overrides: [", "overrides: [{ id: arrival.shape, value: 2, reason: mine }, ")
      .replace(/discountRate: [^\n]+/, "discountRate: 5 %/yr");
    expect(benefits(points[3]?.options ?? [])).toEqual(comparedWith(text));
  });

  it("takes an item of a list by its id, by its index and as messages write it", () => {
    const values = ["40 %"];
    const [byId, byIndex, written] = [
      "options.summer-checks.steps.quickCheck",
      "options[2].steps.quickCheck",
      'options[2 "summer-checks"].steps.quickCheck',
    ].map((id) => sweep(parsed, [{ id, values }], assumptions).points[0]?.options);
    expect(byIndex).toEqual(byId);
    expect(written).toEqual(byId);
    expect(byId).not.toEqual(sweep(parsed, [], assumptions).points[0]?.options);
  });

  it("gives an origin to no rate but one that is set here: a study without it stays refused", () => {
    const without = parsedStudyText(smallLakeText.replace(/\n +discountRateOrigin: [^\n]+/, ""), "a.yaml");
    const withOne = (id: string, value: string) => () =>
      withSettings(without, [{ id, value }], assumptions, recordReaders());
    expect(toldIn(inputErrorOf(withOne("arrival.shape", "1")))[0]?.path).toBe("money.discountRateOrigin");
    expect(withOne("money.discountRate", "3 %/yr")().money.discountRate.value).toBeCloseTo(0.03, 9);
  });

  it("takes one rate in place of two that are planned with, which needs no origin for one computation", () => {
    const planned = parsedStudyText(
      smallLakeText
        .replace(
          /discountRate: [^\n]+/,
          "discountRate: { planningRate: { meanYield: 4.5 %/yr, previousRate: 2.75 %/yr, fiscalYear: 2025, origin: invented } }",
        )
        .replace(/\n +discountRateOrigin: [^\n]+/, ""),
      "planned.yaml",
    );
    const values = ["2 %/yr"];
    const [one, other] = [planned, parsed].map(
      (each) => sweep(each, [{ id: "money.discountRate", values }], assumptions).points[0],
    );
    expect(one?.problems).toEqual([]);
    expect(one?.options).toEqual(other?.options);
  });

  it("computes the other points where a study contradicts itself at one, and says why there", () => {
    const { points } = sweep(
      parsed,
      [{ id: "money.discountRate", values: ["30 yards", "3 %/yr"] }],
      assumptions,
    );
    expect(points.map(({ options, problems }) => [options.length, problems.length])).toEqual([
      [0, 1],
      [3, 0],
    ]);
    expect(points[0]?.problems[0]).toMatchObject({ path: "money.discountRate", found: '"30 yards"' });
  });

  it("says why an own value does not fit", () => {
    const { points } = sweep(parsed, [{ id: "arrival.shape", values: ["7 acres"] }], assumptions);
    expect(points[0]?.problems[0]).toMatchObject({ found: '"7 acres"' });
  });

  it.each([
    ["arrival.shap", ["arrival.shap"], "neither an assumption nor a place in the study", "arrival.shape"],
    [
      "an item that is not there",
      ["options[9].steps.quickCheck"],
      "neither an assumption nor a place",
      "an assumption",
    ],
    ["a section without a field", ["money"], "neither an assumption nor a place", "an assumption"],
    ["the same twice", ["arrival.shape", "arrival.shape"], "set a second time", "one list of values"],
  ])("is refused for %s", (_what, ids, found, allowed) => {
    const swept = ids.map((id) => ({ id, values: [1] }));
    const [told] = toldIn(inputErrorOf(() => sweep(parsed, swept, assumptions)));
    expect(told?.path).toBe(ids[0]);
    expect(told?.found).toContain(found);
    expect(told?.allowed).toContain(allowed);
  });

  it("tells its problems with a place where a setting has no name", () => {
    const swept = [
      { id: "", values: [] },
      { id: " ", values: [1] },
    ];
    const unnamed = (values: typeof swept) => toldIn(inputErrorOf(() => sweep(parsed, values, assumptions)));
    const place = { path: "a setting without a name" };
    expect(unnamed(swept)).toMatchObject([{ ...place, found: "no values" }]);
    expect(unnamed(swept.slice(1))).toMatchObject([{ ...place, found: expect.stringContaining("neither") }]);
  });

  it("is refused before anything is computed where it has 100,000 points", () => {
    const many = Array.from({ length: 1000 }, (_, index) => 1 + index / 1000);
    const swept = [
      { id: "arrival.shape", values: many },
      { id: "growth.settlers-per-month", values: many.slice(0, 100) },
    ];
    expect(toldIn(inputErrorOf(() => sweep(parsed, swept, assumptions)))).toEqual([
      {
        path: "arrival.shape × growth.settlers-per-month",
        found: "1,000 × 100 values, 100,000 points",
        allowed: "at most 2,000 points in one sweep",
        remedy: "Take wider steps, or ask in several requests.",
      },
    ]);
  });
});
