import { describe, expect, it } from "vitest";
import { renderMethodBody } from "../../../src/method/method-document.js";
import { pathsOf } from "../../../src/method/paths/paths.js";
import { structureKinds } from "../../../src/model/structures/kinds.js";
import { reportContext } from "../../../src/report/document/context.js";
import { reckon } from "../../report/reckon.js";
import { assumptions, exampleRun } from "../../report/runs.js";
import { densityIn } from "./lake-by-hand.js";
import { lakeOf, layersOf, lineByHand, rampYears, tableOf } from "./lines-by-hand.js";
import { column, numberOf, printedPaths } from "./printed.js";

/*
 * Everything below is reckoned from the numbers on the rendered page by the relations that the same page states, in
 * arithmetic of its own. Entries and assumptions stand to five figures, so that results agree to about one in ten thousand.
 */
const printed = printedPaths(renderMethodBody(assumptions));
const near = 5e-4;

const expectNear = (found: number, expected: number, what: string, gap = near) =>
  expect(Math.abs(found - expected), `${what}: ${found} for ${expected}`).toBeLessThanOrEqual(
    gap * Math.abs(expected) + 1e-12,
  );

const told = pathsOf(assumptions, reportContext);
const cases = printed.flatMap(({ water, paths }, lake) =>
  paths.map((path, index) => [told[lake]?.paths[index]?.kind ?? "", path, lakeOf(water)] as const),
);

describe("a path from entries to a cost line", () => {
  it("is there for each kind of structure", () => {
    expect(cases.map(([kind]) => kind).sort()).toEqual(structureKinds.map(({ kind }) => kind).sort());
  });

  it.each(cases)("ends at the printed line, reckoned from entries alone: %s", (kind, path, lake) => {
    const reckoned = lineByHand[kind];
    if (!reckoned) throw new Error(`no reckoning of ${kind}`);
    const [quantity, rate] = reckoned(path, lake);
    const { result = "" } = path.steps.at(-1) ?? {};
    // The line itself is rounded to the cent.
    expect(Math.abs(quantity * rate - numberOf(result))).toBeLessThanOrEqual(near * quantity * rate + 0.005);
  });

  const sheets = cases.flatMap(([kind, path]) =>
    path.steps
      .filter(({ substitution }) => substitution !== "")
      .map((step) => [`${kind}: ${step.name}`, step] as const),
  );

  it.each(sheets)("follows from the numbers of its step: %s", (_name, { substitution, result }) => {
    const isMoney = /^Cost of the line/.test(_name.replace(/^[^:]+: /, ""));
    const found = numberOf(result);
    expect(Math.abs(reckon(substitution) - found)).toBeLessThanOrEqual(
      2e-4 * Math.abs(found) + (isMoney ? 0.005 : 0),
    );
  });
});

describe("the tables of a path", () => {
  const grown = cases.filter(([, path]) => tableOf(path, "The layer"));

  it.each(grown)("have the conditions of each month: %s", (_kind, path, lake) => {
    const table = tableOf(path, "Conditions");
    const { months } = layersOf(path, lake);
    const bore = path.steps.find(({ name }) => name.includes("V = Q/B"));
    months.forEach((month, index) => {
      expectNear(column(table, "Depth")[index] ?? Number.NaN, month.depth, "depth", 2e-3);
      expectNear(column(table, "Water T")[index] ?? Number.NaN, month.temperature, "temperature");
      expectNear(column(table, "Share of settlers")[index] ?? Number.NaN, month.settlers, "settlers");
      expectNear(column(table, "Degree-days")[index] ?? Number.NaN, month.warmth, "warmth");
      if (!bore) return;
      const flow = column(table, "Flow")[index] ?? Number.NaN;
      expectNear(column(table, "Velocity")[index] ?? Number.NaN, flow / numberOf(bore.result), "velocity");
    });
  });

  it.each(grown)("have the layer of each month: %s", (_kind, path, lake) => {
    const { stands, rows } = layersOf(path, lake);
    column(rows, "Month since").forEach((month, row) => {
      expectNear(column(rows, "Density")[row] ?? Number.NaN, densityIn(month - 1, lake), "density");
      const { number = Number.NaN, cover = Number.NaN, mass = Number.NaN } = stands[row] ?? {};
      // The program forgets a brood of less than one mussel to a square kilometre, 1e-6 to a square metre, of 30 mm at most.
      const apart = (head: string) => column(rows, head)[row] ?? Number.NaN;
      expect(Math.abs(apart("Number") - number)).toBeLessThanOrEqual(near * number + 1e-5);
      expect(Math.abs(apart("Cover") - cover)).toBeLessThanOrEqual(near * cover + 1e-8);
      expect(Math.abs(apart("Mass") - mass)).toBeLessThanOrEqual(near * mass + 4e-8);
    });
  });

  it("have what each drawdown leaves on the ramp", () => {
    const [, path, lake] = cases.find(([kind]) => kind === "ramp") ?? [];
    if (!path || !lake) throw new Error("no ramp");
    const table = tableOf(path, "What the drawdown");
    rampYears(path, lake).forEach(({ killed, height, shells, thickness, sweeps, left }, year) => {
      const inYear = (head: string) => column(table, head)[year] ?? Number.NaN;
      expectNear(inYear("Killed"), killed, "killed", 2e-3);
      expectNear(inYear("Height"), height, "height");
      expectNear(inYear("Shells"), shells, "shells", 2e-3);
      expectNear(inYear("Thickness"), thickness, "thickness", 2e-3);
      expect(inYear("Sweeps")).toBe(sweeps);
      expectNear(inYear("Left"), left, "left", 5e-3);
    });
  });
});

describe("the line at a path's end", () => {
  it("is one of the study's", () => {
    const names = ["sorrel-bend", "copperhithe", "ninemoss"] as const;
    const all = names.map((name) => exampleRun(name).comparison.structures);
    printed.forEach(({ paths }, lake) => {
      for (const { intro, steps } of paths) {
        const [, what = ""] = /line “([^”]+)”/.exec(intro) ?? [];
        const year = Number(/in year (\d+)/.exec(intro)?.[1]) - 1;
        const lines = (all[lake] ?? [])
          .flatMap(({ years }) => years[year] ?? [])
          .filter((line) => line.what === what);
        const cost = numberOf(steps.at(-1)?.result ?? "");
        expect(lines.some(({ cents }) => Math.abs(cents / 100 - cost) <= 5e-5 * cost)).toBe(true);
      }
    });
  });
});
