import { describe, expect, it } from "vitest";
import { at, sumOf } from "../../../src/lists.js";
import { renderReportBody } from "../../../src/report/document/html.js";
import { reportView } from "../../../src/report/document/report-view.js";
import { resultsJson } from "../../../src/report/results/results.js";
import { amount, editedRun } from "../edited.js";
import { sampleTold } from "../sample-odds.js";
import { requestEdits } from "./request-study.js";

const run = editedRun(requestEdits);
const told = sampleTold("sorrel-bend");
const drawn = { ...told, odds: { ...told.odds, options: told.odds.options.map(withContingency) } };
const view = reportView(run, drawn);
const request = view.request;
if (!request) throw new Error("no request");

/** An invented spread of the program's own cost: 9,000 a year above its central value at 80 %. */
function withContingency<Option extends { readonly id: string }>(option: Option): Option {
  return { ...option, cleanProgram: { central: 150_000, value: 159_000, confidence: 0.8 } };
}

const rowsOf = ({ rows, total }: typeof request.amounts) =>
  new Map([...rows, ...(total ? [total] : [])].map(({ cells }) => [cells[0]?.text, amountsOf(cells)]));
const amountsOf = (cells: ReadonlyArray<{ readonly text: string }>) =>
  cells.slice(1).map(({ text }) => (text === "–" ? 0 : Math.round(amount(text) * 100)));
const amounts = rowsOf(request.amounts);
const line = (name: string) => amounts.get(name) ?? [];

describe("the request for a budget office", () => {
  it("adds up to the cent, by column and row, from cost to what is asked of the fund", () => {
    const parts = ["Capital: equipment bought", "One-time: paid to start", "Operation"].map(line);
    const cost = line("Cost");
    cost.forEach((each, year) => {
      expect(sumOf(parts.map((part) => at(part, year)))).toBe(each);
    });
    const below = [...amounts].filter(
      ([name]) => name !== "Asked of the fund" && !parts.includes(line(name ?? "")),
    );
    line("Asked of the fund").forEach((each, year) => {
      expect(sumOf(below.map(([, row]) => at(row, year)))).toBe(each);
    });
    for (const row of amounts.values()) expect(sumOf(row.slice(0, -1))).toBe(row.at(-1));
  });

  it("is the board's request, rounded", () => {
    const asked = view.board.ask?.byYear.total?.cells.slice(1).map(({ text }) => amount(text)) ?? [];
    const fund = line("Asked of the fund").map((cents) => cents / 100);
    expect(asked).toHaveLength(fund.length);
    for (const [year, each] of asked.slice(0, -1).entries())
      expect(Math.abs(each - at(fund, year))).toBeLessThanOrEqual(0.5);
    expect(view.board.motion).toContain(view.board.ask?.byYear.total?.cells[1]?.text);
  });

  it("is in the results to the cent, with who pays adding up to cost and contingency", () => {
    const json = JSON.parse(JSON.stringify(resultsJson(run, drawn.odds)));
    expect(json.request.fundInCents).toEqual(line("Asked of the fund").slice(0, -1));
    const payers = rowsOf(request.payers);
    const names = [...payers.keys()].filter((name) => name !== "Cost and contingency");
    expect(names).toContain("Authority general fund");
    expect(names).toContain("City water utility");
    const sum = payers.get("Cost and contingency") ?? [];
    line("Cost").forEach((cost, year) => {
      expect(sumOf(names.map((name) => at(payers.get(name) ?? [], year)))).toBe(at(sum, year));
      expect(at(sum, year)).toBe(cost + at(line("Contingency at 80%"), year));
    });
  });

  it("keeps each source within its terms, and says what follows when one ends", () => {
    // 40 % of a year's cost is above the cap of 40,000; the grant runs from FY 2027, and the first fiscal year is 2028.
    expect(line("State grant")).toEqual([-4_000_000, -4_000_000, 0, 0, 0, -8_000_000]);
    expect(line("Sheriff's patrol (in kind)").slice(0, 5)).toEqual(Array<number>(5).fill(-200_000));
    expect(line("Carryover")).toEqual([-1_250_000, 0, 0, 0, 0, -1_250_000]);
    const grant = request.notes.find((note) => note.startsWith("State grant"));
    expect(grant).toContain("From FY 2030 on its 40,000.00 a year falls to the fund. The fee is raised.");
  });

  it("has the staff by class: FTE of straight time, hours worked, overtime and benefits", () => {
    const [inspectors, supervisor] =
      request.staff?.rows.map(({ cells }) => cells.map(({ text }) => text)) ?? [];
    // By hand: 4,910/2,080 h; 4,910 + 120 h; 23 × 1.24 × (4,910 + 1.5 × 120), of which 24/124 benefits.
    expect(inspectors).toEqual([
      ...["Inspectors", "seasonal", "2.36", "4,910", "120", "5,030", "96", "$28,097", "$145,167"],
    ]);
    // 700 − 80 h worked; 36 × 1.38 × 700.
    expect(supervisor).toEqual([
      ...["Supervisor", "permanent", "0.337", "700", "–", "620", "–", "$9,576", "$34,776"],
    ]);
    expect(request.notes[0]).toMatch(
      /The queue needs [\d,]+ h of inspectors a year .*; the list pays 5,030 h/,
    );
  });

  it("sets the contingency aside at the chosen confidence, and the comparison does not know of it", () => {
    expect(request.notes[1]).toContain(
      "in 80% of the simulated outcomes the program alone costs at most $9,000",
    );
    // The example has no inflation.
    expect(line("Contingency at 80%").slice(0, 5)).toEqual(Array<number>(5).fill(900_000));
    const without = editedRun(requestEdits.filter(([path]) => path !== "report"));
    expect(JSON.stringify(run.comparison.options[0]?.netBenefit)).toBe(
      JSON.stringify(without.comparison.options[0]?.netBenefit),
    );
  });

  it("tells the fees that would carry it a launch, a day and a season", () => {
    const fees = request.notes.at(-1) ?? "";
    expect(fees).toMatch(/\$[\d.]+ a launch, \$[\d.]+ a day, and \$[\d.]+ a season/);
    const [launch = 0, , season = 0] = run.request()?.fees.map(({ fee }) => fee) ?? [];
    // f (1 − d f) n = C, with a loss d of 20 % at 40.
    const cost = run.traced().options.at(-1)?.fee.cost.toNumber() ?? 0;
    expect(launch * (1 - 0.005 * launch) * 20_000).toBeCloseTo(cost, 4);
    expect(season * (1 - 0.005 * season) * 6300).toBeCloseTo(cost, 4);
  });

  it("appropriates years together, as the fund is asked", () => {
    const fund = line("Asked of the fund");
    const first = (at(fund, 0) + at(fund, 1)) / 100;
    const text = first.toLocaleString("en-US", { minimumFractionDigits: 2 });
    expect(request.intro).toContain(`Appropriated 2 fiscal years at a time, after carryover: ${text}`);
    expect(request.intro).toContain("Fund: Fund 410, recreation.");
  });

  it.each([
    ["pay", "options[full-season].staff[0].wage", "$29/h", "Operation"],
    ["a price", "options[full-season].equipment[0].price", "$25,000", "Capital: equipment bought"],
    ["a grant", "report.ask.sources[0].cap", "$15,000", "State grant"],
    ["a season", "options[full-season].staff[0].hoursPerYear", 6000, "Operation"],
  ])("is made anew with %s", (_what, place, value, moved) => {
    const changed = reportView(editedRun([...requestEdits, [place, value]]), drawn);
    if (!changed.request) throw new Error("no request");
    const after = rowsOf(changed.request.amounts);
    expect(after.get(moved)).not.toEqual(line(moved));
    const fund = after.get("Asked of the fund") ?? [];
    expect(fund).not.toEqual(line("Asked of the fund"));
    const asked = changed.board.ask?.byYear.total?.cells[1]?.text;
    expect(Math.abs(amount(asked) - at(fund, 0) / 100)).toBeLessThanOrEqual(0.5);
    const payers = rowsOf(changed.request.payers);
    expect(payers.get("Cost and contingency")?.at(-2)).toBe(
      (after.get("Cost")?.at(-1) ?? 0) + (after.get("Contingency at 80%")?.at(-1) ?? 0),
    );
  });

  it("is an appendix only where a study says something of it", () => {
    expect(renderReportBody(run, drawn)).toContain('id="appendix-request"');
    expect(renderReportBody(editedRun([["report", {}]]))).not.toContain('id="appendix-request"');
  });
});
