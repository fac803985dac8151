import { describe, expect, it } from "vitest";
import { sumOf } from "../../src/lists.js";
import { renderReport } from "../../src/report/document/html.js";
import { reportView } from "../../src/report/document/report-view.js";
import { editedText, problemsIn } from "../study/example.js";
import { amount, editedRun } from "./edited.js";
import { exampleRun } from "./runs.js";

describe("a structure with several bearers in a study", () => {
  const run = editedRun([["structures[0].bearer", { authority: "62.5 %", city: "37.5 %" }]]);

  it("is printed with their names and shares", () => {
    expect(renderReport(run, { inline: false })).toContain(
      "Authority general fund 62.5%, City water utility 37.5%",
    );
  });

  it("leaves the sum of what bearers lose as it was", () => {
    const lossOf = (each: typeof run) => amount(reportView(each).comparison.bearers.total?.cells[1]?.text);
    expect(lossOf(run)).toBe(lossOf(editedRun([])));
  });

  it("shows the loss of a bearer who would pay, however small it is beside what all pay", () => {
    const rows = reportView(exampleRun("ninemoss")).comparison.bearers.rows;
    const trust = rows[0]?.cells.map(({ text }) => text);
    const exact = exampleRun("ninemoss").comparison.options.at(-1)?.bearers[0]?.lossWithout.toNumber() ?? 0;
    // Some tens of euros beside 661,000: a step of 100 for the whole table made nothing of it.
    expect(exact).toBeGreaterThan(0);
    expect(exact).toBeLessThan(100);
    expect(trust?.[1]).toBe("under €100");
    expect(amount(trust?.[4])).toBeGreaterThan(0);
  });

  it("is refused by name where a share has no meaning", () => {
    const [problem] = problemsIn(editedText([["structures[0].bearer", { authority: "60 kg" }]]));
    expect(problem?.allowed).toContain("ids with shares such as { city: 60 %, district: 40 % }");
  });
});

describe("grants and partners of a request", () => {
  const edits = (sources: readonly object[]) =>
    editedRun([["report", { ask: { fund: "Fund 410", sources } }]]);
  const run = edits([
    { name: "State grant", amount: "$30,000", to: 2029, origin: "invented" },
    { name: "Power agreement", payer: "power-fund", share: "5 %", origin: "invented" },
  ]);
  const paid = (each: typeof run) => {
    const { rows, total } = reportView(each).comparison.bearers;
    const all = [...rows, ...(total ? [total] : [])].map(({ cells }) => cells.map(({ text }) => text));
    return new Map(all.map(([name = "", , , paysNow]) => [name, paysNow === "–" ? 0 : amount(paysNow)]));
  };

  it("are under who pays now, and the rest stays with who asks: no total moves", () => {
    const [before, after] = [paid(editedRun([["report", {}]])), paid(run)];
    expect(after.get("All")).toBe(before.get("All"));
    const names = [...after.keys()].filter((name) => name !== "All");
    expect(sumOf(names.map((name) => after.get(name) ?? 0))).toBe(after.get("All"));
    expect(after.get("State grant")).toBeGreaterThan(0);
    // Three years of 30,000, before discounting and inflation.
    expect(after.get("State grant")).toBeLessThan(90_000);
    expect(after.get("Power fund")).toBeGreaterThan(before.get("Power fund") ?? Number.NaN);
    expect(after.get("Authority general fund")).toBeLessThan(before.get("Authority general fund") ?? 0);
    expect(run.comparison.options.map(({ netBenefit }) => netBenefit.toNumber())).toEqual(
      editedRun([]).comparison.options.map(({ netBenefit }) => netBenefit.toNumber()),
    );
  });
});
