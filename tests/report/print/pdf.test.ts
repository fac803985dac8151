import { extractText, getDocumentProxy } from "unpdf";
import { afterAll, describe, expect, it } from "vitest";
import { renderReportBody } from "../../../src/report/document/html.js";
import { reportView } from "../../../src/report/document/report-view.js";
import { printSettings } from "../../../src/report/print/paper.js";
import { createPrinter } from "../../../src/report/print/printer.js";
import { appendixTitles } from "../../../src/study/format/report-schema.js";
import { exampleNames } from "../../study/example.js";
import { failures } from "../pdf-ua/conditions.js";
import { exampleRun } from "../runs.js";

const printer = createPrinter();
afterAll(() => printer.close());

type Example = Parameters<typeof exampleRun>[0];
const printed = new Map<Example, Promise<Uint8Array>>();

const ownText = [
  "Words of the *author*, **strongly**:",
  "- a list\n  - in a list",
  "| Ramp | Hours |\n|---|--:|\n| North | 3 |",
].join("\n\n");

/** An example with all that a report may have. */
function fullRun(name: Example) {
  const run = exampleRun(name);
  const report = { ask: {}, leaveOut: [], texts: [{ section: "lake" as const, text: ownText }] };
  return { ...run, document: { ...run.document, report } };
}

/** It printed once for all tests; a reader may take the bytes that it is given. */
async function pdfOf(name: Example): Promise<Uint8Array> {
  const run = fullRun(name);
  const pdf = printed.get(name) ?? printer.print(renderReportBody(run), printSettings(run.document));
  printed.set(name, pdf);
  return (await pdf).slice();
}

const plain = (text: string) => text.replace(/\s+/g, " ");

/** Titles of the printed list with the numbers that follow them there. */
const listed = (pages: readonly string[]) => {
  const list = pages.find((page) => page.includes(" Contents ")) ?? "";
  return Object.values(appendixTitles).flatMap((title) => {
    const [, page] = list.split(`${title.replace("Appendix ", "")} `);
    return page === undefined ? [] : [{ title, page: Number.parseInt(page, 10) }];
  });
};

describe("the printed report", () => {
  it.each(exampleNames)(
    "of %s, with all that it has, meets no condition of failure of PDF/UA-1 that is looked for",
    async (name) => {
      expect(await failures(await pdfOf(name))).toEqual({});
    },
  );

  it.each(exampleNames)("carries the figures of page 1 of %s, and page numbers", async (name) => {
    const document = await getDocumentProxy(await pdfOf(name));
    const { text, totalPages } = await extractText(document);
    const first = plain(text[0] ?? "");
    const { board } = reportView(fullRun(name));
    for (const { value } of board.figures) expect(first).toContain(value);
    expect(first).toContain(plain(board.answer));
    expect(text.map(plain).every((page, index) => page.includes(`page ${index + 1} of ${totalPages}`))).toBe(
      true,
    );
    expect(totalPages).toBeGreaterThan(8);
  });

  it("repeats the head of a table that runs over several pages", async () => {
    const { text } = await extractText(await getDocumentProxy(await pdfOf("sorrel-bend")));
    const pagesWithHead = text
      .map(plain)
      .filter((page) => page.includes("Unit rate") && page.includes("Assumptions"));
    expect(pagesWithHead.length).toBeGreaterThan(1);
  });
});

describe("the list of appendices in print", () => {
  it.each(["sorrel-bend", "ninemoss"] as const)("names in %s the page on which each begins", async (name) => {
    const { text } = await extractText(await getDocumentProxy(await pdfOf(name)));
    const pages = text.map(plain);
    const entries = listed(pages);
    expect(entries.length).toBeGreaterThan(7);
    for (const { title, page } of entries) expect(pages[page - 1]).toContain(title);
    expect(pages.join("")).not.toContain("page 00");
  });

  it("has links that say in words where they lead", async () => {
    const document = await getDocumentProxy(await pdfOf("ninemoss"));
    const pages = await Promise.all(
      Array.from({ length: document.numPages }, async (_, index) =>
        (await document.getPage(index + 1)).getAnnotations(),
      ),
    );
    const words = pages.flat().map((link) => String(link.contentsObj?.str));
    expect(words).toContain(appendixTitles["cost-lines"]?.replace("Appendix ", ""));
    expect(words.filter((each) => /section-|appendix-|table-/.test(each))).toEqual([]);
  });
});
