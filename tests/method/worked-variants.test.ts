import { describe, expect, it } from "vitest";
import { printed } from "../../src/method/worked/number.js";
import { variants } from "../report/worked-variants.js";
import { examplesOf, step, stepsOf, value } from "./worked-steps.js";

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
