import { readXlsx, type Workbook } from "hucre";
import { beforeAll, describe, expect, it } from "vitest";
import { workbook } from "../../src/forms/workbook/workbook.js";
import { totalOf } from "../../src/model/money/line.js";
import { editedRun } from "../report/edited.js";
import { exampleRun } from "../report/runs.js";
import { recalculated } from "./recalculated.js";

const cent = 0.005;

function rowsOf({ sheets }: Workbook, name: string) {
  const found = sheets.find((sheet) => sheet.name === name);
  if (!found) throw new Error(`no sheet ${name}`);
  return found.rows;
}

describe.each(["sorrel-bend", "ninemoss"] as const)("the workbook of %s", (name) => {
  const run = exampleRun(name);
  const { baseline, options } = run.comparison;
  let file: Uint8Array;
  let read: Workbook;

  beforeAll(async () => {
    file = await workbook(run);
    read = await readXlsx(file);
  });

  it("has formulas that another program works out to the values kept beside them, to the cent", async () => {
    const cells = await recalculated(file);
    expect(cells.length).toBeGreaterThan(500);
    const wrong = cells.filter(
      ({ kept, found }) =>
        kept !== found &&
        (typeof kept !== "number" || typeof found !== "number" || Math.abs(kept - found) > cent),
    );
    expect(wrong).toEqual([]);
  });

  it("has the comparison's present values, sums of the lines and budget", () => {
    const rows = rowsOf(read, "The answer");
    for (const { result, netBenefit, addedProgramCost, avoidedLoss } of options) {
      const row = rows.find(([first, second]) => first === result.option.name && typeof second === "number");
      expect(Number(row?.[1])).toBeCloseTo(result.presentValue.program.toNumber(), 2);
      expect(Number(row?.[2])).toBeCloseTo(result.presentValue.infestation.toNumber(), 2);
      expect(Number(row?.[4])).toBeCloseTo(addedProgramCost.toNumber(), 2);
      expect(Number(row?.[5])).toBeCloseTo(avoidedLoss.toNumber(), 2);
      expect(Number(row?.[6])).toBeCloseTo(netBenefit.toNumber(), 2);
      const sum = rowsOf(read, "Program lines").find(
        ([option, , line]) => option === result.option.name && line === "Together",
      );
      expect(Number(sum?.[7])).toBeCloseTo(totalOf(result.programLines).toNumber(), 2);
    }
    const all = rowsOf(read, "Infestation lines").at(-1);
    expect(Number(all?.[7])).toBeCloseTo(baseline.presentValue.infestation.toNumber(), 2);
  });
});

describe("names that look like formulas or markup", () => {
  it("stay text, as typed, wherever they stand, and however long they are", async () => {
    const hostile = '=HYPERLINK("http://x","y")+<b>&\u200fשלום 🐚';
    const long = `='Inputs'!B20:${"x".repeat(180)}"`;
    const edited = editedRun([
      ["study.name", hostile],
      ["options[full-season].name", long],
      ["options[full-season].yearly[0].name", hostile],
      ["structures[city-intake].name", hostile],
    ]);
    const read = await readXlsx(await workbook(edited));
    expect(read.sheets[0]?.rows[0]?.[0]).toBe(hostile);
    const formulas = read.sheets.flatMap(({ cells }) =>
      [...(cells?.values() ?? [])].flatMap(({ formula }) => formula ?? []),
    );
    expect(formulas.length).toBeGreaterThan(500);
    expect(formulas.filter((each) => /HYPERLINK|xxx|שלום/.test(each))).toEqual([]);
    const texts = read.sheets.flatMap(({ rows }) => rows.flat());
    expect(texts.filter((each) => each === hostile).length).toBeGreaterThan(5);
    expect(texts).toContain(long);
  });
});
