import { describe, expect, it } from "vitest";
import { exportText } from "../../../src/study/exports/file-text.js";
import { inputErrorOf, toldIn } from "../example.js";

const bytesOf = (text: string, ...others: readonly number[]) =>
  Buffer.concat([Buffer.from(text), Buffer.from(others)]);

describe("the text of an exported file", () => {
  it("is without its mark of order", () => {
    expect(exportText(bytesOf("\ufeffdate,level (m)\n2011-01-01,ø\n"), "gauge.csv")).toBe(
      "date,level (m)\n2011-01-01,ø\n",
    );
  });

  it.each([
    ["Latin letters of one byte", bytesOf("a,b\n1,2\n3,", 0xf8, 0x0a), "line 3"],
    ["UTF-16", Buffer.from("\ufeffa,b\n1,2\n", "utf16le"), "line 1"],
    ["zeros", bytesOf("a,b\n1,2\n", 0), "line 3"],
  ])("is refused in %s, with the line", (_what, bytes, line) => {
    const told = toldIn(inputErrorOf(() => exportText(bytes, "gauge.csv")));
    expect(told).toEqual([expect.objectContaining({ path: line, allowed: "text in UTF-8" })]);
  });

  it("is refused at once where millions of lines come before", () => {
    const bytes = bytesOf("\n".repeat(20_000_000), 0xff);
    const before = process.cpuUsage();
    const told = toldIn(inputErrorOf(() => exportText(bytes, "gauge.csv")));
    const { user } = process.cpuUsage(before);
    expect(told[0]?.path).toBe("line 20000001");
    expect(user).toBeLessThan(3e6);
  });
});
