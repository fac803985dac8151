import { describe, expect, it } from "vitest";
import { workable, workedExamples } from "../../src/method/worked-example.js";
import { reportContext } from "../../src/report/document/context.js";
import { halfUnits, reckon } from "../report/reckon.js";
import { exampleRun } from "../report/runs.js";
import { step, stepsOf, value } from "./worked-steps.js";

const planned = (["sorrel-bend", "ninemoss", "thistledown"] as const).flatMap((name) => {
  const context = reportContext(exampleRun(name));
  return workable(context).flatMap(({ id, name: title }) =>
    [0, 3, 7, 10].map((month) => {
      const { examples } = workedExamples(context, { structure: id, month, under: "plan" });
      return [`${name}, ${title}, month ${month}`, { id, month, examples, context }] as const;
    }),
  );
});

describe("any month and part, under the plan that its costs follow", () => {
  it.each(planned)("is reckoned from the printed numbers alone: %s", (_name, { examples }) => {
    for (const { substitution, resultText, name } of examples.flatMap((each) => stepsOf(each))) {
      if (substitution === "") continue;
      const result = reckon(substitution);
      const allowed = halfUnits(substitution).reduce(
        (sum, half, place) =>
          sum +
          Math.abs(reckon(substitution, (each, index) => (index === place ? each + half : each)) - result),
        (halfUnits(resultText)[0] ?? 0) *
          (resultText.includes("×") ? value(resultText.replace(/^[\d.]+ × /, "")) : 1),
      );
      const found = value(resultText);
      const off = Math.abs(result - found);
      expect(off, `${name}: ${substitution}`).toBeLessThanOrEqual(allowed * 1.01 + 1e-9 * Math.abs(found));
    }
  });

  it.each(planned)("sums its cohorts as their table prints them: %s", (_name, { examples }) => {
    const growth = examples.find(({ cohorts }) => cohorts.length > 0);
    if (!growth) return;
    const rows = growth.cohorts.map((cells) => cells.map((cell) => value(plainText(cell))));
    const summed = (of: (number: number, length: number, mass: number) => number) =>
      rows.reduce((sum, [, , number = 0, length = 0, mass = 0]) => sum + of(number, length, mass), 0);
    const sums = [
      summed((number) => number),
      summed((number, length) => (number * length ** 2) / 1e6),
      summed((number, _length, mass) => number * mass),
    ];
    for (const [index, name] of ["Mussels", "Cover, the sum", "Mass, the sum"].entries()) {
      const told = value(step(growth, name)?.resultText);
      expect(Math.abs((sums[index] ?? 0) / told - 1), name).toBeLessThan(3e-4);
    }
  });

  it.each(planned)("names the plan of the report's table: %s", (_name, { id, examples, context }) => {
    const { components = [] } =
      context.comparison.structures.find(({ structure }) => structure.id === id) ?? {};
    const labels = components.map(({ chosen }) => chosen.plan.label);
    const told = examples.flatMap(({ intro }) => [...intro.matchAll(/“([^”]*)”/g)].map(([, label]) => label));
    for (const label of told) expect(labels).toContain(label);
  });

  it("grows the layer that the costs of a month are taken from", () => {
    const context = reportContext(exampleRun("ninemoss"));
    const { thickestLayer } = context.comparison.structures[0]?.components[0] ?? {};
    const layers = Array.from({ length: 12 }, (_, month) => {
      const { examples } = workedExamples(context, { structure: "village-intake", month, under: "plan" });
      return value(step(examples[1], "Thickness")?.resultText);
    });
    expect(Math.max(...layers)).toBeLessThanOrEqual((thickestLayer?.thickness ?? 0) * 1.0001);
    expect(Math.max(...layers)).toBeGreaterThan((thickestLayer?.thickness ?? 0) * 0.9);
  });

  it("stands in the study's units beside SI, and in SI alone for a metric study", () => {
    const [us] = workedExamples(reportContext(exampleRun("sorrel-bend")), { under: "plan" }).examples;
    const bore = us?.given.find(({ meaning }) => meaning === "bore");
    expect(bore?.inStudyUnit).toBe("5 ft");
    const [si] = workedExamples(reportContext(exampleRun("ninemoss")), { under: "plan" }).examples;
    expect(si?.given.every(({ inStudyUnit }) => inStudyUnit === "")).toBe(true);
  });
});

const plainText = (html: string) => html.replace(/<sup>/g, "^").replace(/<[^>]*>/g, "");
