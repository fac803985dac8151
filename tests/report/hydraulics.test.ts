import { describe, expect, it } from "vitest";
import { workedExamples } from "../../src/method/worked-example.js";
import { reportContext } from "../../src/report/document/context.js";
import { renderReport } from "../../src/report/document/html.js";
import { method } from "../../src/report/document/method.js";
import { hydraulicsView } from "../../src/report/rack/hydraulics-view.js";
import type { TableView } from "../../src/report/words/view-types.js";
import { runStudy, type StudyRun } from "../../src/study/prepare/compute.js";
import { assumptions, exampleDocument, exampleRun } from "./runs.js";
import { variants } from "./worked-variants.js";

const tableOf = (run: StudyRun, id: string) =>
  hydraulicsView(reportContext(run)).tables.find((each) => each.id === id);
const texts = (table: TableView | undefined) =>
  (table?.rows ?? []).map(({ cells }) => cells.map(({ text }) => text));
const column = (table: TableView | undefined, title: string) => {
  const index = table?.head.findIndex(({ text }) => text.startsWith(title)) ?? -1;
  return texts(table).flatMap((cells) => (cells.length > 1 ? [cells[index] ?? ""] : []));
};
const headings = (table: TableView | undefined) =>
  texts(table).flatMap((cells) => (cells.length === 1 ? cells : []));

const sorrelBend = exampleRun("sorrel-bend");

describe("the table of pipes", () => {
  it("has the regime and the law of the clean wall of every pipe", () => {
    const table = tableOf(sorrelBend, "table-pipes");
    const regimes = sorrelBend.comparison.structures.flatMap(({ hydraulics }) =>
      hydraulics.pipes.flatMap(({ clean, fouled }) => [clean.regime, fouled?.regime ?? "–"]),
    );
    expect(column(table, "Flow")).toEqual(regimes);
    for (const heading of headings(table)) expect(heading).toContain("wall by its roughness");
    expect(table?.note).not.toContain("known by its C,");
    const byC = tableOf(variants["wall by C"], "table-pipes");
    expect(headings(byC)[0]).toContain("wall by Hazen–Williams C 130 while clean");
    expect(column(byC, "Same loss as C")[0]).toBe("130");
    expect(byC?.note).toContain("known by its C,");
  });

  it("marks each wall rougher than a twentieth of the bore, and those beyond half of it apart", () => {
    const states = sorrelBend.comparison.structures.flatMap(({ hydraulics }) =>
      hydraulics.pipes.flatMap(({ clean, fouled }) => (fouled ? [clean, fouled] : [clean])),
    );
    const relative = states.map(({ roughness, bore }) => roughness / bore);
    const marks = relative.map((share) => (share > 0.5 ? "‡" : share > 0.05 ? "†" : ""));
    const table = tableOf(sorrelBend, "table-pipes");
    expect(column(table, "Roughness").map((text) => text.replace(/[\d., ]/g, ""))).toEqual(marks);
    expect(new Set(marks)).toContain("†");
    expect(tableOf(variants["penstock by C"], "table-pipes")?.note).not.toContain("‡");
  });
});

describe("the table of racks", () => {
  it.each([
    ["rack by Kirschmer", "Kirschmer"],
    ["rack by Reclamation", "Reclamation"],
    ["rack by Clark", "Clark"],
    ["wall by C", "Meusburger"],
  ] as const)("marks the formula that the costs use: %s", (name, formula) => {
    const table = tableOf(variants[name], "table-racks");
    for (const other of ["Meusburger", "Kirschmer", "Reclamation", "Clark"]) {
      const marked = column(table, other).every((text) => text.startsWith("• "));
      expect(marked, other).toBe(other === formula);
    }
    expect(headings(table)[0]).toContain(`costs by ${formula}`);
  });
});

describe("the table of pumps", () => {
  it("is there for a pump known by its curve alone", () => {
    const table = tableOf(variants["pump of variable speed, fouled at full speed"], "table-pumps");
    expect(headings(table)[0]).toContain("pump of variable speed");
    const [clean, fouled] = column(table, "Speed over full speed");
    expect(fouled).toBe("100%");
    expect(Number.parseFloat(clean ?? "")).toBeLessThan(100);
    expect(tableOf(variants["pump by its margin, with head to spare"], "table-pumps")).toBeUndefined();
  });

  it("says which year of a record its level is of", () => {
    const run = variants["pump by one point in a lake known by a record"];
    expect(tableOf(run, "table-pumps")?.note).toContain("in 2019, the first year of the record");
    expect(tableOf(sorrelBend, "table-pumps")?.note).not.toContain("record");
    const [example] = workedExamples(reportContext(run)).examples;
    expect(example?.given.find(({ symbol }) => symbol === "<i>z</i>")?.meaning).toContain("in 2019");
  });
});

describe("the table of service lines", () => {
  it("tells heat from water where a line cools an exchanger", () => {
    const table = tableOf(variants["cooling water through an exchanger"], "table-service-lines");
    expect(column(table, "Of what")).toEqual(["heat"]);
    expect(column(tableOf(sorrelBend, "table-service-lines"), "Of what")).toEqual(["water", "water"]);
  });

  it("has the cooling water of every plant and every service line, with what is left of each", () => {
    const table = tableOf(sorrelBend, "table-service-lines");
    expect(texts(table).map(([name]) => name)).toEqual([
      "Sorrel Bend powerhouse, cooling-water line",
      "Powerhouse fire and seal-water lines, service line",
    ]);
    for (const left of column(table, "Service left")) {
      expect(Number.parseFloat(left)).toBeGreaterThan(0);
      expect(Number.parseFloat(left)).toBeLessThan(100);
    }
  });
});

describe("words that hold for every study", () => {
  it("tell of both kinds of levels, and name no rack formula as the one in use", () => {
    const text = method.steps.join(" ");
    expect(text).toMatch(/schedule.+record/);
    expect(text).not.toMatch(/Racks\. Meusburger/);
    expect(tableOf(variants["rack by Clark"], "table-racks")?.note).toContain("costs stand on: Clark.");
  });

  it("say so where a study has nothing that carries water", () => {
    const document = exampleDocument("ninemoss");
    const structures = document.structures.filter(({ kind }) => kind === "dock");
    const html = renderReport(runStudy({ ...document, structures }, assumptions), { inline: false });
    expect(html).toContain("This study has no pipes, pumps or racks.");
  });
});
