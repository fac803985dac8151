import { describe, expect, it } from "vitest";
import { renderReport } from "../../../src/report/document/html.js";
import { reportView } from "../../../src/report/document/report-view.js";
import type { StudyRun } from "../../../src/study/prepare/compute.js";
import { amount, deeper, dryOut, type Edit, editedRun, smallRun, withSchedule } from "../edited.js";

const asked: readonly Edit[] = [...withSchedule, ["study.requestedOption", dryOut.id]];
const firstPage = (run: StudyRun) => {
  const { board } = reportView(run);
  const figures = board.figures.flatMap(({ label, value, note }) => [label, value, note]);
  return [board.question, board.answer, board.asked, ...figures, ...board.changes].join(" ");
};
const printed = (run: StudyRun) => renderReport(run, { inline: false }).replace(/<[^>]+>/g, " ");

describe("the first page for an option that only follows a schedule", () => {
  const run = smallRun(asked, dryOut);
  const { board, comparison } = reportView(run);
  const text = firstPage(run).replace(/“[^”]*”/g, "");

  it("asks and answers about levels, with no word of stations, fees or keeping mussels out", () => {
    expect(board.question).toContain(`following “${deeper.name}” save more than it costs`);
    expect(text).not.toMatch(/keeping mussels out|\bstation|\bfees|at the ramp|inspection/i);
    expect(board.balance?.bars[0]?.label).not.toContain("ramp");
    expect(board.figures).toHaveLength(5);
  });

  it("says that the chance of infestation stays as it is", () => {
    expect(board.certainty).toContain("leaves the chance of infestation");
    expect(board.figures[3]?.value).not.toContain("→");
  });

  it("prints the yearly cost of following it and answers by the sign of the net benefit", () => {
    const option = run.comparison.options.find(({ result }) => result.option.id === dryOut.id);
    const perYear = option?.result.schedulePerYear.toNumber() ?? Number.NaN;
    expect(amount(board.figures[0]?.value)).toBe(Number(perYear.toPrecision(3)));
    expect(board.answer.startsWith("Yes")).toBe(option?.netBenefit.greaterThan(0));
    expect(board.pays).toBe(option?.netBenefit.greaterThan(0));
  });

  it("says in the comparison what it follows", () => {
    expect(comparison.options.note).toContain(`“${dryOut.name}” follows “${deeper.name}”`);
  });

  it("prints no number that is not one", () => {
    expect(printed(run)).not.toMatch(/\bNaN\b|\bundefined\b|\bInfinity\b|\bnull\b/);
  });
});

describe("a schedule as high as the lake may stand", () => {
  const high = {
    ...deeper,
    drawdown: [
      { on: "02-01", elevation: "2,138 ft" },
      { on: "08-01", elevation: "2,139 ft" },
    ],
  };
  const run = editedRun(
    [
      ["lake.otherSchedules", [high]],
      ["study.requestedOption", dryOut.id],
    ],
    dryOut,
  );

  // A fuller lake makes more energy at the same flow: following it saves money, and the yearly cost is negative.
  it("is told as a saving, not as a cost of less than nothing", () => {
    const { schedules, board } = reportView(run);
    expect(run.comparison.options.at(-1)?.result.schedulePerYear.isNegative()).toBe(true);
    expect(schedules?.findings[0]).toContain("brings in");
    expect(board.figures[0]?.value).not.toContain("-");
    expect(board.asked).not.toContain("-$");
    expect(board.changes.join(" ")).not.toContain("-$");
  });
});

describe("the first page for stations with a schedule after them", () => {
  it("names both", () => {
    const both = { ...dryOut, id: "both", name: "Stations, then drying" };
    const steps = {
      coverage: "93 %",
      declaration: "60 %",
      quickCheck: "80 %",
      inspection: "79 %",
      hotWash: "84 %",
      deterrence: "30 %",
      origin: "invented",
    };
    const run = smallRun([...withSchedule, ["study.requestedOption", both.id]], { ...both, steps });
    const { board, program } = reportView(run);
    expect(board.question).toContain("Would “Stations, then drying”");
    expect(board.question).toContain(`with “${deeper.name}” once mussels are established`);
    expect(board.figures[0]?.note).toContain("for following its schedule");
    expect(program.funnel?.boats.rows.map(({ cells }) => cells[0]?.text)).toContain(both.name);
  });
});

describe("an infested lake with a schedule to follow", () => {
  it("weighs the schedule, since it can change what the mussels cost", () => {
    const run = smallRun([...asked, ["lake.infestedSince", 2024]], dryOut);
    const { board, comparison, program } = reportView(run);
    expect(board.question).toContain("has been infested since 2024: would following");
    expect(board.balance).toBeDefined();
    expect(comparison.balance?.rows).toHaveLength(1);
    expect(comparison.balance?.head.map(({ text }) => text).join(" ")).not.toContain("Break-even");
    expect(program.funnel).toBeUndefined();
    expect(firstPage(run)).not.toMatch(/once mussels|chance of infestation|No loss is avoided/i);
  });
});

describe("a study in which no option has steps", () => {
  it("has no funnel of boats and no heading of the ramp", () => {
    const none = { id: "none", name: "Nothing", afterInfestation: { share: "0 %" } };
    const { program } = reportView(smallRun([...asked, ["options", [none]]], dryOut));
    expect(program.funnel).toBeUndefined();
    expect(program.heading).not.toContain("ramp");
    expect(program.cost.note).not.toContain("Fees");
  });
});
