import { describe, expect, it } from "vitest";
import { reportView } from "../../src/report/document/report-view.js";
import type { TableView } from "../../src/report/words/view-types.js";
import type { StudyRun } from "../../src/study/prepare/compute.js";
import { amount, smallRun } from "./edited.js";
import { exampleRun } from "./runs.js";

const run = exampleRun("sorrel-bend");

function classesOf(study: StudyRun): TableView {
  const { classes } = reportView(study).program;
  if (!classes) throw new Error("the report has no table of classes");
  return classes;
}

const names = ({ head }: TableView) => head.map(({ text }) => text);
const column = (table: TableView, name: string) =>
  table.rows.map(({ cells }) => cells[names(table).indexOf(name)]?.text ?? "no such column");

describe("the table of vessel classes", () => {
  const table = classesOf(run);
  const { classes } = run.comparison.input.boats;

  it("prints the chances and launches that the model had", () => {
    expect(column(table, "Class")).toEqual(classes.map(({ name }) => name));
    const printed = column(table, "Fouled").map((text) => amount(text) / 100);
    classes.forEach(({ fouled }, index) => {
      expect(Math.abs((printed[index] ?? 1) - fouled)).toBeLessThanOrEqual(fouled * 0.005);
    });
    const arriving = run.comparison.baseline.arrivals.classes;
    column(table, "Launches a year").forEach((text, index) => {
      const launches = arriving[index]?.launches ?? 0;
      expect(Math.abs(amount(text) - launches)).toBeLessThanOrEqual(launches * 0.005);
    });
  });

  it("prints what was believed, counted and learned, by hand", () => {
    // Seasons of the example summed by hand; 25 of 830 weighing half: 13/416 = 3.1 %, then 26/861 = 3.02 %;
    // 14 % worth 100 boats, then 18/132 = 13.6 %.
    expect(column(table, "Own seasons")).toEqual(["", "", "13 of 445", "4 of 32", ""]);
    expect(column(table, "Fouled, before own seasons")).toEqual(["", "", "3.1%", "14%", ""]);
    expect(column(table, "Fouled")).toEqual(["0%", "0.005%", "3.02%", "13.6%", "0.2%"]);
    expect(column(table, "Fouled, as used (5–95%)")[2]).toMatch(/^3% \(2\.\d%–4%\)$/);
    expect(table.note).toContain("log of weekend checks");
  });

  it("has only the columns that some class uses", () => {
    const plain = classesOf(smallRun([]));
    expect(names(plain)).not.toContain("Own seasons");
    expect(names(plain)).not.toContain("Residual water");
    expect(plain.note).toMatch(
      /^Shares as entered\. Fouled: with mussels, dead or alive\. Origins\. Never left the lake/,
    );
    const place = "boats.classes[long-moored]";
    const counts = { found: 7, of: 50, weight: "100 %", origin: "invented" };
    const described = classesOf(
      smallRun([
        [`${place}.residualWater`, "standing"],
        [`${place}.fouled`, counts],
        [`${place}.living`, "60 %"],
        [`${place}.sinceInfestedWater`, "4 d"],
      ]),
    );
    expect(column(described, "Residual water")).toEqual(["", "", "", "standing", ""]);
    expect(column(described, "Of these with living mussels")).toEqual(["", "", "", "60%", ""]);
    expect(column(described, "Since infested water")).toEqual(["", "", "", "4 d", ""]);
    expect(names(described)).not.toContain("Fouled, before own seasons");
    expect(described.note).toContain("invented; fouled 7 of 50, weighing 100%: invented.");
  });

  it("is left out of the budget of a lake that is infested already", () => {
    expect(reportView(smallRun([["lake.infestedSince", 2024]])).program.classes).toBeUndefined();
  });
});
