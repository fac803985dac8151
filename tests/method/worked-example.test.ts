import { describe, expect, it, test } from "vitest";
import { renderMethodBody } from "../../src/method/method-document.js";
import { printed } from "../../src/method/worked/number.js";
import { substitute } from "../../src/method/worked/substitute.js";
import { type WorkedExample, workedExamples } from "../../src/method/worked-example.js";
import { reportContext } from "../../src/report/document/context.js";
import { runStudy, type StudyRun } from "../../src/study/prepare/compute.js";
import { halfUnits, reckon } from "../report/reckon.js";
import { assumptions, exampleDocument, exampleRun } from "../report/runs.js";
import { variants } from "../report/worked-variants.js";

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

const examplesOf = (run: StudyRun) => workedExamples(reportContext(run)).examples;
const stepsOf = (example: WorkedExample | undefined) => (example?.groups ?? []).flatMap(({ steps }) => steps);
const step = (example: WorkedExample | undefined, name: string) =>
  stepsOf(example).find((each) => each.name.startsWith(name));
const value = (text = "") => reckon(text);

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

const variant = (name: keyof typeof variants) => examplesOf(variants[name])[0];
const pumpOf = (name: keyof typeof variants) => variants[name].comparison.structures[0]?.hydraulics.pumps[0];
const number = (found = Number.NaN) => printed(found);

describe("a pump known by its curve", () => {
  it.each(["pump by one point", "pump by three points", "pump by straight lines"] as const)(
    "runs at the point of the pump table, where curve and system agree: %s",
    (name) => {
      const steps = stepsOf(variant(name));
      const flows = steps.filter((each) => each.name.startsWith("Flow at full speed"));
      const given = steps.filter((each) => each.name.startsWith("Head that the pump gives"));
      const needed = steps.filter((each) => each.name.startsWith("Head that the system needs"));
      const { clean, fouled } = pumpOf(name) ?? {};
      expect(flows.map(({ resultText }) => resultText)).toEqual([
        number(clean?.point.flow),
        number(fouled?.point.flow),
      ]);
      expect(given.map(({ resultText }) => resultText)).toEqual(needed.map(({ resultText }) => resultText));
      expect(given.map(({ substitution }) => substitution)).not.toContain("");
    },
  );

  it("of one point has no head at twice its flow, by its coefficient and exponent", () => {
    // EPANET's rule for one point: 4/3 of the head at no flow, none at twice the flow; exponent 2 follows.
    const example = variant("pump by one point");
    expect(step(example, "Exponent of the curve")?.resultText).toBe("2");
    const [shutOff, coefficient] = ["Head at no flow", "Coefficient"].map((name) =>
      value(step(example, name)?.resultText),
    );
    expect((shutOff ?? 0) - (coefficient ?? 0) * 4.4 ** 2).toBeCloseTo(0, 2);
  });

  it("of variable speed slows down to the demand, and runs at full speed where that is too little", () => {
    const spare = variant("pump of variable speed with speed to spare");
    expect(value(step(spare, "Speed over full speed")?.resultText)).toBeLessThan(1);
    expect(step(spare, "Flow at full speed")).toBeUndefined();
    const weak = variant("pump of variable speed, fouled at full speed");
    expect(step(weak, "Flow at full speed")?.resultText).toBe(
      number(pumpOf("pump of variable speed, fouled at full speed")?.fouled.delivered),
    );
    expect(value(step(weak, "Water that is missing")?.resultText)).toBeGreaterThan(0);
  });
});

describe("other descriptions of the same parts", () => {
  it("a gravity intake has the level above its outlet to spend, and nothing below it", () => {
    const example = variant("gravity from the lake's level");
    expect(step(example, "Head to spend")?.substitution).toMatch(/^\d+\.\d+ − 640$/);
    const below = variant("gravity from a lake below the outlet");
    expect(step(below, "Head to spend: the lake is below")?.resultText).toBe("0");
    expect(step(below, "Water that is missing")).toBeUndefined();
  });

  it("a wall known by its C loses by Hazen–Williams while clean, and never less when fouled", () => {
    const example = variant("wall by C");
    const { clean } = variants["wall by C"].comparison.structures[0]?.hydraulics.pipes[0] ?? {};
    expect(step(example, "Head lost with local")?.resultText).toBe(number(clean?.headLoss));
    expect(step(example, "Equivalent sand roughness")?.resultText).toBe(number(clean?.roughness));
    const rough = variant("wall by C at a flow that loses more when clean");
    const cleanLoss = value(step(rough, "Head lost, that of the clean pipe")?.resultText);
    expect(cleanLoss).toBeCloseTo(0.1, 6);
    expect(value(step(rough, "Head lost by Darcy–Weisbach, below")?.resultText)).toBeLessThan(cleanLoss);
  });

  it.each([
    ["rack by Kirschmer", "kirschmer"],
    ["rack by Reclamation", "reclamation"],
    ["rack by Clark", "clark"],
  ] as const)("a rack is worked by the formula that the costs use: %s", (name, formula) => {
    const { clean, fouled } = variants[name].comparison.structures[0]?.hydraulics.racks[0] ?? {};
    expect(step(variant(name), "Head lost, clean")?.resultText).toBe(number(clean?.[formula]));
    expect(step(variant(name), "Head lost, left to foul")?.resultText).toBe(number(fouled?.[formula]));
  });

  it("a turbine has the efficiency of the month's flow, and none below its smallest", () => {
    const efficiency = (name: keyof typeof variants) => step(variant(name), "Efficiency")?.resultText;
    expect(step(variant("Francis turbine at part load"), "Efficiency of the unit")?.substitution).toContain(
      "0.96",
    );
    expect(
      step(variant("Kaplan turbine below a fifth of its flow"), "Efficiency over")?.substitution,
    ).toMatch(/− 0\) ÷ \(20 − 0\)$/);
    expect(efficiency("Francis turbine below its smallest flow")).toBe("0");
  });
});

describe("studies at the edge", () => {
  test("a lake without intakes and plants has no example, and no empty page for one", () => {
    const structures = document.structures.filter(({ kind }) => kind === "dock" || kind === "ramp");
    const run = runStudy({ ...document, structures }, assumptions);
    expect(examplesOf(run)).toEqual([]);
    const [, own = ""] = renderMethodBody(assumptions, run).split("<h2>Sheets of ");
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
