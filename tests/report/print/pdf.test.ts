import { extractText, getDocumentProxy } from "unpdf";
import { afterAll, describe, expect, it } from "vitest";
import { renderReportBody } from "../../../src/report/document/html.js";
import { reportView } from "../../../src/report/document/report-view.js";
import { printSettings } from "../../../src/report/print/paper.js";
import { createPrinter } from "../../../src/report/print/printer.js";
import { exampleRun } from "../runs.js";

const printer = createPrinter();
afterAll(() => printer.close());

const plain = (text: string) => text.replace(/\s+/g, " ");

describe("the printed report", () => {
  it.each(["sorrel-bend", "ninemoss"] as const)(
    "carries the figures of page 1 of %s, and page numbers",
    async (name) => {
      const run = exampleRun(name);
      const pdf = await printer.print(renderReportBody(run), printSettings(run.document));
      const document = await getDocumentProxy(pdf);
      const { text, totalPages } = await extractText(document);
      const first = plain(text[0] ?? "");
      const { board } = reportView(run);
      for (const { value } of board.figures) expect(first).toContain(value);
      expect(first).toContain(plain(board.answer));
      expect(
        text.map(plain).every((page, index) => page.includes(`page ${index + 1} of ${totalPages}`)),
      ).toBe(true);
      expect(totalPages).toBeGreaterThan(8);
    },
  );

  it("repeats the head of a table that runs over several pages", async () => {
    const run = exampleRun("sorrel-bend");
    const pdf = await printer.print(renderReportBody(run), printSettings(run.document));
    const { text } = await extractText(await getDocumentProxy(pdf));
    const pagesWithHead = text
      .map(plain)
      .filter((page) => page.includes("(low–high), unit") && page.includes("Source and note"));
    expect(pagesWithHead.length).toBeGreaterThan(2);
  });
});
