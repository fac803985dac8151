import { readXlsx } from "hucre";
import { describe, expect, it } from "vitest";
import { workbook } from "../../src/forms/workbook/workbook.js";
import { at } from "../../src/lists.js";
import { editedRun } from "../report/edited.js";
import { requestEdits } from "../report/papers/request-study.js";
import { sampleOdds } from "../report/sample-odds.js";
import { recalculated } from "./recalculated.js";

const odds = sampleOdds("sorrel-bend");
const contingent = {
  ...odds,
  options: odds.options.map((option) => ({
    ...option,
    cleanProgram: { central: 150_000, value: 159_000, confidence: 0.8 },
  })),
};

// An independent program works every formula out again; terms of the sources are cells that it reads.
describe.each(["jan", "jul"])("the request's sheets, fiscal years from %s", async (start) => {
  const run = editedRun([...requestEdits, ["money.fiscalYearStart", start]]);
  const request = run.request(contingent);
  const file = await workbook(run, contingent);
  const { sheets } = await readXlsx(file);
  const rows = sheets.find(({ name }) => name === "Request")?.rows ?? [];
  const amounts = (name: string) =>
    rows
      .find(([first]) => first === name)
      ?.slice(7, 12)
      .map(Number) ?? [];

  it("are formulas that come to the amounts kept, to the cent", async () => {
    const cells = (await recalculated(file)).filter(({ place }) => place.startsWith("Request"));
    expect(cells.length).toBeGreaterThan(80);
    const wrong = cells.filter(({ kept, found }) => Math.abs(Number(kept) - Number(found)) > 0.005);
    expect(wrong).toEqual([]);
  });

  it("ask the fund for what the results do", () => {
    const fund = request?.funded.fund.map((cents) => cents / 100) ?? [];
    expect(fund.length).toBe(5);
    for (const [year, each] of amounts("Asked of the fund").entries())
      expect(each).toBeCloseTo(at(fund, year), 2);
    expect(amounts("Less cost and contingency above: nothing")).toEqual(Array<number>(5).fill(0));
  });
});
