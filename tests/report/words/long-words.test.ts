import { describe, expect, it } from "vitest";
import { withPageReferences } from "../../../src/report/document/page-references.js";
import { breakLongWords } from "../../../src/report/words/long-words.js";

describe("a word longer than its line", () => {
  const long = "W".repeat(140);

  it("may break every few letters, and keeps each of them", () => {
    const html = breakLongWords(`<td title="${long}">${long}</td>`);
    expect(html).toContain(`title="${long}"`);
    expect(html.replaceAll("<wbr>", "")).toBe(`<td title="${long}">${long}</td>`);
    const pieces = html.replace(/<\/?td[^>]*>/g, "").split("<wbr>");
    expect(Math.max(...pieces.map((piece) => piece.length))).toBeLessThanOrEqual(6);
  });

  it("breaks after its own signs before it breaks elsewhere", () => {
    expect(breakLongWords("(plan.second-line.reference-size)")).toBe(
      "(plan.<wbr>second-<wbr>line.<wbr>reference-<wbr>size)",
    );
  });

  it("breaks within no character reference, and words of usual length and pictures stay", () => {
    const html = breakLongWords("&amp;".repeat(40));
    expect(html.split("<wbr>").every((piece) => /^(&amp;)+$/.test(piece))).toBe(true);
    for (const same of ["<p>hydroelectric 2,500,000</p>", `<svg><text>${long}</text></svg>`])
      expect(breakLongWords(same)).toBe(same);
  });
});

describe("a mention of an appendix in print", () => {
  it("has a place for its page where that appendix is printed", () => {
    const html = withPageReferences("<p>See appendix A and appendix B.</p>", [{ id: "cost-lines" }]);
    expect(html).toBe(
      '<p>See appendix A, page <span data-page-of="appendix-cost-lines"></span> and appendix B.</p>',
    );
  });
});
