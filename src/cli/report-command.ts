import { dirname, join } from "node:path";
import { loadAssumptions } from "../assumptions/load.js";
import type { DrawingThreads } from "../odds/threads.js";
import { assumptionsFolder, examplesFolder } from "../report/document/assets.js";
import { renderReport, renderReportBody } from "../report/document/html.js";
import { inlineAssets } from "../report/document/render-page.js";
import type { ReportPart } from "../report/document/sections.js";
import { printableOdds } from "../report/odds/printed-odds.js";
import { printSettings } from "../report/print/paper.js";
import { createPrinter } from "../report/print/printer.js";
import type { Odds } from "../study/odds/odds.js";
import type { StudyRun } from "../study/prepare/compute.js";
import { readStudyFile } from "../study/reading/read.js";
import { printNotes } from "./commands.js";
import { comparisonText } from "./comparison-text.js";
import { documentEnding } from "./document-ending.js";
import { type RunWithOdds, runWithOdds } from "./odds-command.js";
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
  settings: ReportArguments,
  print: Print,
  threads: DrawingThreads,
): Promise<void> {
  const document = readStudyFile(path);
  const assumptions = loadAssumptions(assumptionsFolder, dirname(path));
  await writeReport(settings, print, () => {
    printNotes(document, assumptions, print);
    return runWithOdds(document, assumptions, { threads, ahead });
  });
}

/** What a report tells beside its odds: worked out at once, since workers are busy loading what they need. */
function ahead({ ranges, traced, tracedChance }: StudyRun): void {
  ranges();
  traced();
  tracedChance();
}

/** @param answered asked for once the browser is starting */
async function writeReport(
  { out, paper, part }: ReportArguments,
  print: Print,
  answered: () => Promise<RunWithOdds<Odds>>,
): Promise<void> {
  const ending = documentEnding(out);
  const printer = createPrinter();
  if (ending === ".pdf") printer.warm();
  try {
    const { run, odds } = await answered();
    const printedOdds = printableOdds(run, odds);
    const settings = printSettings(run.document);
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
export async function demo(print: Print, threads: DrawingThreads): Promise<void> {
  await prepareBrowser(print);
  const document = readStudyFile(join(examplesFolder, "sorrel-bend.yaml"));
  await writeReport({ out: "sorrel-bend.pdf", paper: undefined, part: "all" }, print, async () => {
    const answer = await runWithOdds(document, loadAssumptions(assumptionsFolder), { threads, ahead });
    print(comparisonText(answer.run, answer.odds));
    return answer;
  });
}
