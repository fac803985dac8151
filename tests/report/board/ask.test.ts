import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import { reportView } from "../../../src/report/document/report-view.js";
import { runStudy } from "../../../src/study/prepare/compute.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { exampleDocument, inputErrorOf, put } from "../../study/example.js";
import { amount, smallRun } from "../edited.js";
import { assumptions, exampleRun } from "../runs.js";

/** Amounts of a row of a table by its first cell; a dash is nothing. */
const amountsOf = (cells: ReadonlyArray<{ readonly text: string }> | undefined) =>
  (cells ?? []).slice(1).map(({ text }) => (text === "–" ? 0 : amount(text)));

describe("the request", () => {
  it.each(["sorrel-bend", "ninemoss"] as const)("adds up as printed, in columns and rows, in %s", (name) => {
    const { ask } = reportView(exampleRun(name)).board;
    if (!ask) throw new Error("no request");
    const rows = ask.byYear.rows.map(({ cells }) => amountsOf(cells));
    const requests = amountsOf(ask.byYear.total?.cells);
    expect(requests.length).toBeGreaterThan(2);
    for (const [column, request] of requests.entries())
      expect(rows.reduce((sum, row) => sum + (row[column] ?? 0), 0)).toBe(request);
    for (const row of [...rows, requests])
      expect(row.slice(0, -1).reduce((sum, each) => sum + each, 0)).toBe(row.at(-1));
  });

  it("is one figure on page 1, in the motion, in the picture, among the options and in the budget to the cent", () => {
    const view = reportView(exampleRun("sorrel-bend"));
    const first = view.board.ask?.table.total?.cells[1]?.text ?? "none";
    expect(view.board.motion).toContain(`with ${first} for FY 2027`);
    expect(view.board.ask?.picture.rows[0]?.value).toBe(first);
    expect(view.board.ask?.picture.title).toContain(first);
    const asked = view.program.asked.rows.find(({ cells }) => cells[0]?.text === "Full-season stations");
    expect(asked?.cells[2]?.text).toBe(first);
    const cents = amount(view.program.budget?.total?.cells[2]?.text);
    const sources = view.request?.amounts.rows.flatMap(({ cells }) =>
      ["State prevention grant", "Agreement with the power fund"].includes(cells[0]?.text ?? "")
        ? [amount(cells[1]?.text)]
        : [],
    );
    // The state's grant is 25 % up to 40,000; no odds are drawn here, so there is no contingency.
    expect(sources?.[0]).toBe(-40_000);
    expect(Math.abs(cents + (sources?.[0] ?? 0) + (sources?.[1] ?? 0) - amount(first))).toBeLessThanOrEqual(
      0.5,
    );
  });

  it("stands beside last year's budget and spending where they are entered", () => {
    const ask = { lastYearBudget: "$101,250", lastYearActual: "$98,400" };
    const { board } = reportView(smallRun([["report", { ask }]]));
    expect(board.ask?.picture.rows.slice(0, 3).map(({ name, value }) => [name, value])).toEqual([
      ["Last year, budget", "$101,250"],
      ["Last year, actual", "$98,400"],
      ["FY 2027", board.ask?.table.total?.cells[1]?.text],
    ]);
    expect(board.ask?.picture.title).toContain("more than last year’s budget");
  });

  it.each(["The board", "the Board of Directors", "Board of Directors"])(
    "names %s with one article",
    (name) => {
      // What costs next to nothing pays, so that the board is asked.
      const { document } = exampleRun("sorrel-bend");
      const options = document.options.map((option) => ({ ...option, staff: [], equipment: [] }));
      const structures = document.structures.filter(({ kind }) => kind === "lake-wide");
      const study = { ...document.study, board: name };
      const { board } = reportView(runStudy({ ...document, study, options, structures }, assumptions));
      expect(board.motion).toMatch(/^Moved, that the (board|Board of Directors) approve /);
      expect(board.asked).toMatch(/^The (board|Board of Directors) is asked to approve /);
    },
  );

  it("has its author's motion, what follows if it fails, and who checked it", () => {
    const ask = { motion: "Moved, as discussed.", ifNotFunded: "The ramps close.", checkedBy: "A. Reader" };
    const view = reportView(smallRun([["report", { ask }]]));
    expect([view.board.motion, view.board.notFunded, view.checkedBy]).toEqual([
      ask.motion,
      ask.ifNotFunded,
      ask.checkedBy,
    ]);
  });

  it.each([
    ["an empty motion", { motion: "  " }, "report.ask.motion", "leave it out for the usual wording"],
    [
      "a motion left empty",
      { motion: null },
      "report.ask.motion",
      "found nothing; allowed: a text. Enter a value, or take the line out.",
    ],
    ["a motion too long", { motion: "m".repeat(20_000) }, "report.ask.motion", "at most 2,000 characters"],
    [
      "another currency",
      { lastYearBudget: "€90,000" },
      "report.ask.lastYearBudget",
      "an amount in the study's currency, USD. Convert the amount to USD",
    ],
  ])("is refused with its place and what is allowed: %s", (_why, ask, place, allowed) => {
    const document = exampleDocument();
    put(document, "report", { ask });
    const told = inputErrorOf(() => readStudyText(stringify(document), "study.yaml"));
    expect(told.message).toContain(place);
    expect(told.message).toContain(allowed);
  });
});
