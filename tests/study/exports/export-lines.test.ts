import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { exportLines } from "../../../src/study/exports/export-lines.js";

const linesOf = (text: string, separator: "," | ";" | "\t" = ",") => [...exportLines(text, separator)];

describe("lines of an exported file", () => {
  it("pass over comments, with quotation marks in them, and empty lines, and count them", () => {
    const text = '# a "comment\n\n  # another\na\tb\r\n1\t2\r\n';
    expect(linesOf(text, "\t")).toEqual([
      { line: 4, cells: ["a", "b"] },
      { line: 5, cells: ["1", "2"] },
    ]);
  });

  it("may end as an old spreadsheet ends them, and begin with a mark of order", () => {
    expect(linesOf("\ufeffa,b\r1,2\r3,4")).toEqual([
      { line: 1, cells: ["a", "b"] },
      { line: 2, cells: ["1", "2"] },
      { line: 3, cells: ["3", "4"] },
    ]);
  });

  it("go on where a quoted value does", () => {
    expect(linesOf('a,b\n"one\ntwo",2\nx,y')).toEqual([
      { line: 1, cells: ["a", "b"] },
      { line: 2, cells: ["one\ntwo", "2"] },
      { line: 4, cells: ["x", "y"] },
    ]);
  });

  it("are broken by a quotation mark too many, and those after it are read", () => {
    const text = `a,b\n1,2"\n${"3,4\n".repeat(30)}`;
    const lines = linesOf(text);
    expect(lines[1]).toEqual({ line: 2, broken: true });
    expect(lines).toHaveLength(32);
  });

  it("are broken one by one by marks within values, and swallow no line between two of them", () => {
    expect(linesOf('a,b\n1,24" crack\n2,x\n3,5" hole\n4,"y" z\n5, "w" \n')).toEqual([
      { line: 1, cells: ["a", "b"] },
      { line: 2, broken: true },
      { line: 3, cells: ["2", "x"] },
      { line: 4, broken: true },
      { line: 5, broken: true },
      { line: 6, cells: ["5", "w"] },
    ]);
  });

  it("take time in proportion to their quotation marks", () => {
    const marks = '"'.repeat(99_998);
    const text = `a,b\n${`${marks}\n`.repeat(20)}"\n${marks.repeat(20)}`;
    const before = process.cpuUsage();
    const lines = linesOf(text);
    const { user } = process.cpuUsage(before);
    expect(lines).toHaveLength(23);
    expect(user).toBeLessThan(2e6);
  });

  it("are cut as csv-parse cuts them", () => {
    const cell = fc.stringMatching(/^[a-z0-9 .,;"]{0,8}$/).map((text) => text.trim());
    const table = fc.array(fc.array(cell, { minLength: 2, maxLength: 5 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(table, fc.constantFrom(",", ";"), (rows, separator) => {
        const quoted = (each: string) => (/[",;]/.test(each) ? `"${each.replaceAll('"', '""')}"` : each);
        const text = rows.map((row) => row.map(quoted).join(separator)).join("\n");
        const settings = { delimiter: separator, trim: true, relax_column_count: true };
        const expected: string[][] = parse(text, { ...settings, skip_empty_lines: true });
        const found = linesOf(text, separator as ",").map((line) => ("cells" in line ? line.cells : []));
        expect(found).toEqual(expected.map((row) => row.map((each) => each.trim())));
      }),
    );
  });
});
