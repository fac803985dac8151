import { describe, expect, it } from "vitest";
import { impliedTexts } from "../../../src/report/document/check-rows.js";
import { reportView } from "../../../src/report/document/report-view.js";
import { comparedRun } from "../../../src/study/compared/compared.js";
import { runStudy } from "../../../src/study/prepare/compute.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { impliedValues } from "../../../src/study/traced/implied.js";
import { assumptions } from "../../report/runs.js";
import { editedText } from "../example.js";

const textsIn = (edits: Parameters<typeof editedText>[0] = [], name?: "ninemoss") => {
  const run = comparedRun(readStudyText(editedText(edits, name), "study.yaml"), assumptions);
  return { run, texts: impliedTexts({ ...run, implied: impliedValues(run.comparison) }) };
};
const at = (texts: ReturnType<typeof textsIn>["texts"], place: string) =>
  texts
    .filter(({ at: keys }) => keys.join("/") === place)
    .map(({ text }) => text)
    .join(" ");

describe("what an entry implies, said beside it", () => {
  it("is a velocity in a pipe, without the name of the structure it stands in", () => {
    const { run, texts } = textsIn([], "ninemoss");
    const index = run.document.structures.findIndex(({ kind }) => kind === "intake");
    // By hand: 0.028 m³/s in 250 mm is 0.028/(π 0.125²) = 0.570 m/s.
    expect(at(texts, `structures/${index}/conduit/diameter`)).toBe(
      "Conduit: velocity when clean, at the largest flow: 0.57 m/s (usual: 0.1 m/s to 3 m/s).",
    );
  });

  it("is the power that flow and head give", () => {
    const { run, texts } = textsIn();
    const index = run.document.structures.findIndex(({ kind }) => kind === "hydropower");
    const [energy] = run.comparison.structures
      .map(({ cleanEnergy }) => cleanEnergy)
      .filter(({ length }) => length > 0);
    expect(energy).toHaveLength(12);
    const told = at(texts, `structures/${index}/tailwaterElevation`);
    const megawatts = Number(/([\d.]+) MW/.exec(told)?.[1]);
    // A year of the mean power of the strongest month is at least the year's energy, and no unit gives twice that.
    const mean = (energy ?? []).reduce((sum, each) => sum + each, 0) / 8760 / 1000;
    expect(megawatts).toBeGreaterThan(mean * 0.99);
    expect(megawatts).toBeLessThan(mean * 6);
  });

  it("is launches a day, and days under water", () => {
    const months = Object.fromEntries(
      ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"].map((month) => [
        month,
        month === "jul" ? 3100 : 310,
      ]),
    );
    const { run, texts } = textsIn([["boats.launches", months]]);
    // By hand: 3,100 launches in the 31 days of July.
    expect(at(texts, "boats/launches")).toContain("busiest month: 100.");
    const index = run.document.structures.findIndex(({ kind }) => kind === "ramp");
    expect(at(texts, `structures/${index}/bottomElevation`)).toMatch(/days in a mean year: \d{1,3}/);
  });

  it("is the cost per launch, of a program that costs anything", () => {
    const { run, texts } = textsIn();
    const index = run.document.options.findIndex(({ id }) => id === run.document.study.requestedOption);
    const launches = run.comparison.input.boats.launches.reduce((sum, each) => sum + each, 0);
    const result = run.comparison.options.find(
      ({ result: { option } }) => option.id === run.document.study.requestedOption,
    );
    const each = (result?.result.programPerYear.toNumber() ?? 0) / launches;
    const told = Number(/\$(\d+\.\d+)/.exec(at(texts, `options/${index}/staff`))?.[1]);
    expect(told / each).toBeCloseTo(1, 2);
  });
});

describe("a discount rate with a percent sign too many", () => {
  it("stands on page 1 with what is usual and what to do", () => {
    const text = editedText([["money.discountRate", "0.03 %/yr"]]);
    const { board } = reportView(runStudy(readStudyText(text, "study.yaml"), assumptions));
    expect(board.failedChecks.join()).toContain(
      "Discount rate of a year, above inflation: 0.03%; expected 0.5% to 12%",
    );
  });
});
