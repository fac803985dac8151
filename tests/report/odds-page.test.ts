import { extractText, getDocumentProxy } from "unpdf";
import { afterAll, expect, it } from "vitest";
import { renderReportBody } from "../../src/report/document/html.js";
import { printSettings } from "../../src/report/print/paper.js";
import { createPrinter } from "../../src/report/print/printer.js";
import { exampleRun } from "./runs.js";
import { sampleTold } from "./sample-odds.js";

const printer = createPrinter();
afterAll(() => printer.close());

it.each([
  ["sorrel-bend", "letter"],
  ["sorrel-bend", "a4"],
  ["ninemoss", "letter"],
  ["ninemoss", "a4"],
] as const)("the odds of %s take one page of %s", async (name, paper) => {
  const run = exampleRun(name);
  const told = sampleTold(name);
  const settings = { ...printSettings(run.document), paper };
  const pdf = await printer.print(renderReportBody(run, told, { part: "board" }), settings);
  const { text } = await extractText(await getDocumentProxy(pdf));
  const pages = text.map((page) => page.replace(/\s+/g, " "));
  const onPages = (words: string) => pages.flatMap((page, index) => (page.includes(words) ? [index] : []));
  const [first] = onPages("How sure are we");
  expect(onPages("A simulated outcome is one set of assumptions")).toEqual([first]);
  // what follows starts on its own page or below, and page 1 still holds all that it held
  expect(onPages("What the estimate leaves out")[0]).toBeGreaterThanOrEqual(first ?? Number.NaN);
  expect(pages[first ?? 0]).toContain("At central values the net benefit is");
  expect(pages[0]).toContain("A planning estimate for a budget decision");
});
