import { describe, expect, it } from "vitest";
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
