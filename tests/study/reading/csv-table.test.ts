import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CsvTable, csvTable } from "../../../src/study/reading/csv-table.js";

/** A table with one column of names and two of numbers. */
function tableOf(csv: string): CsvTable {
  const table = csvTable(csv, 1000, (head) => head !== "name");
  return "found" in table ? expect.fail(table.found) : table;
}

const read = (csv: string) =>
  tableOf(csv).body.map(({ cells, problem }) => (problem ? problem.found : cells.slice(1).join(" ")));

const lines = (...all: readonly string[]) => ["name;size;count", ...all].join("\n");
const tabbed = (csv: string) => csv.replaceAll(";", "\t");

describe("decimal commas", () => {
  it.each([
    ["semicolons", lines("A;40,5;2", "B;1.240,5;1.000.000")],
    ["tabs", tabbed(lines("A;40,5;2", "B;1.240,5;1.000.000"))],
  ])("are read where %s stand between values and no number has a decimal point", (_name, csv) => {
    expect(read(csv)).toEqual(["40.5 2", "1240.5 1000000"]);
  });

  it("are read within amounts and ranges, and names keep theirs", () => {
    const [line] = tableOf(lines("Pier 3,5;6,5 to 9,25 m;€ 1.200,50")).body;
    expect(line?.cells).toEqual(["Pier 3,5", "6.5 to 9.25 m", "€ 1200.50"]);
    expect(line?.typed).toEqual(["Pier 3,5", "6,5 to 9,25 m", "€ 1.200,50"]);
  });

  it("are told by line where another number has a decimal point; that one is read", () => {
    expect(read(lines("A;40,5;2", "B;40.5;2"))).toEqual(['"40,5", with a decimal comma', "40.5 2"]);
  });

  it("are told, in quotation marks too, where commas stand between values", () => {
    expect(read('name,size,count\nA,"40,5",2\nB,"12,000",2')).toEqual([
      '"40,5", with a decimal comma',
      '"12,000", which may be 12.000 or 12000',
    ]);
  });
});

describe("a number that may be twelve or twelve thousand", () => {
  it.each([
    ["decimal commas elsewhere", lines("A;40,5;2", "B;12,000;2")],
    ["decimal commas elsewhere, tabs", tabbed(lines("A;40,5;2", "B;12,000;2"))],
    ["no sign elsewhere", lines("A;40;2", "B;12,000;2")],
  ])("is asked about: %s", (_name, csv) => {
    expect(read(csv)[1]).toBe('"12,000", which may be 12.000 or 12000');
  });

  it("with a point is asked about as well", () => {
    expect(read(lines("A;40,5;2", "B;12.000;2"))[1]).toBe('"12.000", which may be 12.000 or 12000');
  });

  it.each([
    ["another number has a decimal point", lines("A;40.5;2", "B;12,000;2")],
    ["another number has two commas", lines("A;1,240,000;2", "B;12,000;2")],
    ["commas stand between values", 'name,size,count\nA,40,2\nB,"12,000",2'],
  ])("is a thousand where %s", (_name, csv) => {
    expect(read(csv)[1]).toBe("12,000 2");
  });

  it.each(["12000", "12,0000", "0,125", "1240,125"])("is no longer one as %s", (number) => {
    expect(read(lines("A;40,5;2", `B;${number};2`))[1]).toBe(`${number.replace(",", ".")} 2`);
  });

  it("can be written as its message says", () => {
    const decimal = fc
      .integer({ min: 1, max: 999 })
      .chain((whole) =>
        fc.tuple(
          fc.constant(whole),
          fc.integer({ min: 0, max: 999 }),
          fc.constantFrom(",", "."),
          fc.boolean(),
        ),
      );
    fc.assert(
      fc.property(decimal, ([whole, rest, sign, hasCommas]) => {
        const digits = String(rest).padStart(3, "0");
        const others = hasCommas ? "A;40,5;2" : "A;40;2";
        const { remedy = "" } = tableOf(lines(others, `B;${whole}${sign}${digits};2`)).body[1]?.problem ?? {};
        const [, thousands = "", decimals = ""] = /^Write (\d+) .* or ([\d.,]+), /.exec(remedy) ?? [];
        expect(read(lines(others, `B;${thousands};2`))[1]).toBe(`${whole}${digits} 2`);
        expect(read(lines(others, `B;${decimals};2`))[1]).toBe(`${whole}.${digits}0 2`);
      }),
      { seed: 61, numRuns: 200 },
    );
  });
});

describe("a line with values that no column is for", () => {
  it.each([
    ["thousands without quotation marks", "name,size,count\nA,12,000,2", "4 values"],
    ["a decimal comma", "name,size,count\nA,40,5,2", "4 values"],
    ["a value below no name", "name,,count\nA,5,2", '"5" in column 2, which has no name'],
    ["a value below a comma at the end of the head", "name,size,count,\nA,40,5,2", "4 values"],
  ])("is told: %s", (_name, csv, found) => {
    expect(read(csv)).toEqual([found]);
  });

  it("is sound where they are empty, as spreadsheets leave them", () => {
    expect(read("name,size,count,,\nA,40,2,,\n")).toEqual(["40 2"]);
  });

  it("never changes a figure without a word", () => {
    const size = fc.double({ min: 0.01, max: 99_999, noNaN: true }).map((value) => Number(value.toFixed(2)));
    const written = (value: number, language: string) => value.toLocaleString(language);
    fc.assert(
      fc.property(
        fc.array(size, { minLength: 1, maxLength: 5 }),
        // Commas between values and points between thousands say nothing of it: 1.234 is read as with a decimal point.
        fc.constantFrom([",", "en"], [";", "en"], ["\t", "en"], [";", "de"], ["\t", "de"]),
        (sizes, [between = "", language = ""]) => {
          const body = sizes.map((value) => ["A", written(value, language), "2"].join(between));
          const table = tableOf([["name", "size", "count"].join(between), ...body].join("\n"));
          table.body.forEach(({ cells, problem }, index) => {
            if (!problem) expect(Number(cells[1]?.replaceAll(",", ""))).toBe(sizes[index]);
          });
        },
      ),
      { seed: 62, numRuns: 400 },
    );
  });
});
