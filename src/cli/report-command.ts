import { dirname, join } from "node:path";
import { loadAssumptions } from "../assumptions/load.js";
import { assumptionsFolder, examplesFolder } from "../report/document/assets.js";
import { renderReport, renderReportBody } from "../report/document/html.js";
import { inlineAssets } from "../report/document/render-page.js";
import type { ReportPart } from "../report/document/sections.js";
import { printableOdds } from "../report/odds/printed-odds.js";
import { printSettings } from "../report/print/paper.js";
import { createPrinter } from "../report/print/printer.js";
import { readStudyFile } from "../study/reading/read.js";
import { printNotes } from "./commands.js";
import { compareCommand } from "./compare-command.js";
import { documentEnding } from "./document-ending.js";
import { runWithOdds } from "./odds-command.js";
import { prepareBrowser } from "./prepare-browser.js";
import { writeWhole } from "./write-whole.js";

type Print = (text: string) => void;

interface ReportArguments {
  readonly out: string;
  readonly paper: "letter" | "a4" | undefined;
  readonly part: ReportPart;
}

/** Writes the report; the kind of file follows from the ending of `out`. */
export async function report(
  path: string,
  { out, paper, part }: ReportArguments,
  print: Print,
): Promise<void> {
  const ending = documentEnding(out);
  const document = readStudyFile(path);
  const assumptions = loadAssumptions(assumptionsFolder, dirname(path));
  printNotes(document, assumptions, print);
  const printer = createPrinter();
  if (ending === ".pdf") printer.warm();
  try {
    const { run, odds } = await runWithOdds(document, assumptions);
    const printedOdds = printableOdds(run, odds);
    const settings = printSettings(document);
    const content =
      ending === ".html"
        ? renderReport(run, inlineAssets(), {}, printedOdds, part)
        : await printer.print(renderReportBody(run, printedOdds, { part }), {
            ...settings,
            paper: paper ?? settings.paper,
          });
    writeWhole(out, content);
  } finally {
    await printer.close();
  }
  print(`Wrote ${out}`);
}

/** The first example from end to end: comparison on the screen, report as PDF in the working folder. */
export async function demo(print: Print): Promise<void> {
  await prepareBrowser(print);
  const path = join(examplesFolder, "sorrel-bend.yaml");
  await compareCommand(path, { settings: [], asJson: false }, print);
  await report(path, { out: "sorrel-bend.pdf", paper: undefined, part: "all" }, print);
}
