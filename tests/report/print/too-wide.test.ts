import { extractText } from "unpdf";
import { afterAll, describe, expect, it } from "vitest";
import { renderReportBody } from "../../../src/report/document/html.js";
import { printSettings } from "../../../src/report/print/paper.js";
import { createPrinter } from "../../../src/report/print/printer.js";
import { smallRun } from "../edited.js";
import { exampleRun } from "../runs.js";

const printer = createPrinter();
afterAll(() => printer.close());

type Run = ReturnType<typeof exampleRun>;

async function pagesOf(run: Run): Promise<string[]> {
  const pdf = await printer.print(renderReportBody(run), printSettings(run.document));
  const { text } = await extractText(pdf);
  return text.map((page) => page.replace(/\s+/g, " "));
}

describe("what is wider than the paper", () => {
  it("wraps where it is a name of 140 letters", async () => {
    const name = "W".repeat(140);
    const pages = await pagesOf(smallRun([["structures.0.name", name]]));
    expect(pages.join("").replace(/\s/g, "")).toContain(name);
  });

  it("is refused elsewhere, with its section and what to do", async () => {
    const body = '<section><h2>The lake</h2><p style="width: 90rem; max-width: none">Sorrel</p></section>';
    const printed = printer.print(body, printSettings(exampleRun("sorrel-bend").document));
    await expect(printed).rejects.toThrow(
      /in “The lake”, what begins with “Sorrel” is wider than the paper.*Shorten/,
    );
  });
});
