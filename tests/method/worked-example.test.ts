import { describe, expect, it, test } from "vitest";
import { renderMethodBody } from "../../src/method/method-document.js";
import { printed } from "../../src/method/worked/number.js";
import { substitute } from "../../src/method/worked/substitute.js";
import { runStudy, type StudyRun } from "../../src/study/prepare/compute.js";
import { halfUnits, reckon } from "../report/reckon.js";
import { assumptions, exampleDocument, exampleRun } from "../report/runs.js";
import { variants } from "../report/worked-variants.js";
import { examplesOf, step, stepsOf, value } from "./worked-steps.js";

const document = exampleDocument("sorrel-bend");
/** The gravity intake alone; of a little more than a metre of head, the conduit left to foul has not enough. */
const byGravity = (availableHead: { text: string; value: number }) =>
  runStudy(
    {
      ...document,
      structures: document.structures.flatMap((each) =>
        each.kind === "intake" && each.supply.by === "gravity"
          ? [
              {
                ...each,
                supply: { ...each.supply, availableHead: { ...availableHead, dimension: "length" as const } },
              },
            ]
          : [],
      ),
    },
    assumptions,
  );
const enough = byGravity({ text: "6.5 ft", value: 1.9812 });
const tooLittle = byGravity({ text: "1.2 m", value: 1.2 });
const cleanTooLittle = byGravity({ text: "0.5 m", value: 0.5 });
const smallDemand = exampleDocument("ninemoss");

const runs: ReadonlyArray<readonly [string, StudyRun]> = [
  ["Sorrel Bend", exampleRun("sorrel-bend")],
  ["Ninemoss", exampleRun("ninemoss")],
  ["gravity with head to spare", enough],
  ["gravity, fouled too narrow", tooLittle],
  ["gravity, clean too narrow", cleanTooLittle],
  ...Object.entries(variants),
];

const reckoned = runs.flatMap(([name, run]) =>
  examplesOf(run).flatMap((example) =>
    stepsOf(example)
      .filter(({ substitution }) => substitution !== "")
      .map((each) => [`${name}, ${example.title}: ${each.name}`, each] as const),
  ),
);

describe("a worked step", () => {
  /**
   * The rule: each printed number of five figures stands for anything within half a unit of its last figure. The
   * result reckoned from the printed numbers may differ from the printed result by what these make of the sum, to
   * first order, and half a unit of the result's own last figure.
   */
  it.each(reckoned)("follows from its printed numbers: %s", (_name, { substitution, resultText }) => {
    const result = reckon(substitution);
    const halves = halfUnits(substitution);
    const spread = halves.map((half, place) =>
      Math.abs(reckon(substitution, (number, index) => (index === place ? number + half : number)) - result),
    );
    const own = halfUnits(resultText)[0] ?? 0;
    const powerOfTen = resultText.includes("×") ? value(resultText.replace(/^[\d.]+ × /, "")) : 1;
    const allowed = spread.reduce((sum, each) => sum + each, own * powerOfTen);
    const found = value(resultText);
    expect(Math.abs(result - found)).toBeLessThanOrEqual(allowed * 1.01 + 1e-9 * Math.abs(found));
    // The rule has teeth: it never lets through more than a tenth of a per cent.
    expect(allowed).toBeLessThanOrEqual(1e-3 * Math.abs(found));
  });

  it("is there for all that the examples have to show", () => {
    expect(examplesOf(exampleRun("sorrel-bend"))).toHaveLength(2);
    expect(examplesOf(exampleRun("ninemoss"))).toHaveLength(1);
    expect(reckoned.length).toBeGreaterThan(60);
  });
});

describe("the worked intake", () => {
  const [intake] = examplesOf(exampleRun("sorrel-bend"));

  it("agrees with the hydraulic tables of the comparison", () => {
    const { hydraulics } = exampleRun("sorrel-bend").comparison.structures[0] ?? {};
    const pipe = hydraulics?.pipes[0];
    const rack = hydraulics?.racks[0];
    expect(step(intake, "Head lost, Darcy")?.resultText).toBe(printed(pipe?.clean.headLoss ?? Number.NaN));
    expect(step(intake, "Bore less")?.resultText).toBe(printed(pipe?.fouled?.bore ?? Number.NaN));
    expect(step(intake, "Head lost, left to foul")?.resultText).toBe(
      printed(rack?.fouled?.meusburger ?? Number.NaN),
    );
  });

  it("gives entered values with the study's own units beside them", () => {
    // 60 in = 1.524 m and 7,200 ft = 2,194.56 m, from 1 ft = 0.3048 m exactly.
    const given = new Map(
      intake?.given.map(({ meaning, entered, value: shown }) => [meaning, { entered, shown }]),
    );
    expect(given.get("bore")).toEqual({ entered: "60 in", shown: "1.524" });
    expect(given.get("length")).toEqual({ entered: "7,200 ft", shown: "2194.6" });
  });

  it("prices missing water by gravity, and energy where it is pumped", () => {
    const [gravity] = examplesOf(tooLittle);
    expect(step(gravity, "Extra energy")).toBeUndefined();
    expect(value(step(gravity, "Water that is missing")?.resultText)).toBeGreaterThan(0);
    expect(step(examplesOf(enough)[0], "Water that is missing")).toBeUndefined();
    expect(value(step(examplesOf(enough)[0], "Head left to spare")?.resultText)).toBeGreaterThan(0);
    expect(value(step(intake, "Extra energy")?.resultText)).toBeGreaterThan(0);
  });
});

describe("studies at the edge", () => {
  test("a lake without intakes and plants has no example, and no empty page for one", () => {
    const structures = document.structures.filter(({ kind }) => kind === "dock" || kind === "ramp");
    const run = runStudy({ ...document, structures }, assumptions);
    expect(examplesOf(run)).toEqual([]);
    const [, own = ""] = renderMethodBody(assumptions, run).split('<h2 id="own-sheets">Sheets of ');
    expect(own).toContain("there is nothing to work step by step");
    expect(own).not.toContain("<table");
  });

  test("a flow between laminar and turbulent is worked by the straight line between them", () => {
    const tiny = { text: "0.0006 m3/s", value: 0.0006, dimension: "flow" } as const;
    const structures = smallDemand.structures.map((each) =>
      each.kind === "intake"
        ? {
            ...each,
            demand: Object.fromEntries(
              Object.keys(each.demand).map((month) => [month, tiny]),
            ) as typeof each.demand,
          }
        : each,
    );
    const [intake] = examplesOf(runStudy({ ...smallDemand, structures }, assumptions));
    const share = step(intake, "Share of the way");
    expect(value(share?.substitution)).toBeCloseTo(value(share?.resultText), 4);
    const factor = step(intake, "Friction factor");
    expect(value(factor?.resultText)).toBeGreaterThan(0);
  });
});

describe("printed numbers", () => {
  // By the rule that the report states: exact to four figures as they stand, else five figures.
  it("tell the exact ones from the rounded ones by their figures", () => {
    expect(printed(1.524)).toBe("1.524");
    expect(printed(0.6096000000000001)).toBe("0.6096");
    expect(printed(2194.56)).toBe("2194.6");
    expect(printed(1.00004)).toBe("1.0000");
    expect(printed(123_456)).toBe("123,460");
    expect(printed(1e-6)).toBe("1 × 10^−6");
    expect(printed(-2.5)).toBe("−2.5");
    expect(printed(0)).toBe("0");
  });

  it("stand in the formula's place, every multiplication written out", () => {
    const values = new Map([
      ["Q", "1.8689"],
      ["D", "1.524"],
      ["ν", "1 × 10^−6"],
      ["α", "80°"],
    ]);
    expect(substitute("4 Q/(π D²)", values)).toBe("4 × 1.8689 ÷ (π × 1.524²)");
    expect(substitute("Q D/ν", values)).toBe("1.8689 × 1.524 ÷ (1 × 10^−6)");
    expect(substitute("−2 log₁₀(D/3.7) sin α", values)).toBe("−2 × log₁₀(1.524 ÷ 3.7) × sin 80°");
    expect(() => substitute("Q x", values)).toThrow(/no number for “x”/);
  });
});
