import { join } from "node:path";
import type { AssumptionSet } from "../assumptions/entry.js";
import { loadAssumptions } from "../assumptions/load.js";
import { counted } from "../counted.js";
import { assumptionsFolder, examplesFolder } from "../report/document/assets.js";
import { inlineAssets, renderReport, renderReportBody } from "../report/document/html.js";
import type { ReportPart } from "../report/document/sections.js";
import { printableOdds } from "../report/odds/printed-odds.js";
import { printSettings } from "../report/print/paper.js";
import { createPrinter } from "../report/print/printer.js";
import { resultsJson } from "../report/results/results.js";
import { studyNotes } from "../study/checks/study-notes.js";
import { type StudyDocument, studyJsonSchema } from "../study/format/schema.js";
import { runStudy } from "../study/prepare/compute.js";
import { prepareStudy } from "../study/prepare/prepared.js";
import { readStudyFile } from "../study/reading/read.js";
import { comparisonText } from "./comparison-text.js";
import { documentEnding } from "./document-ending.js";
import { drawnFutures, drawnOdds } from "./odds-command.js";
import { prepareBrowser } from "./prepare-browser.js";
import { writeWhole } from "./write-whole.js";

type Print = (text: string) => void;

export function check(path: string, print: Print): void {
  const document = readStudyFile(path);
  const assumptions = loadAssumptions(assumptionsFolder);
  prepareStudy(document, assumptions);
  const { structures, options, study } = document;
  print(
    `${study.name}: complete. ${counted(structures.length, "structure")}, ${counted(options.length, "option")}.`,
  );
  printNotes(document, assumptions, print);
}

/** What an author should know of a study that is in order. */
function printNotes(document: StudyDocument, set: AssumptionSet, print: Print): void {
  for (const { path, found, remedy } of studyNotes(document, set)) print(`${path}: ${found}. ${remedy}`);
}

/** Prints the comparison, on average over all that is uncertain and at central values. */
export async function compareCommand(path: string, asJson: boolean, print: Print): Promise<void> {
  const assumptions = loadAssumptions(assumptionsFolder);
  const document = readStudyFile(path);
  const run = runStudy(document, assumptions);
  if (asJson) {
    print(JSON.stringify(resultsJson(run, await drawnOdds(document, assumptions)), undefined, 2));
  } else {
    print(comparisonText(run, await drawnFutures(document, assumptions)));
  }
}

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
  printNotes(document, loadAssumptions(assumptionsFolder), print);
  const printer = createPrinter();
  if (ending === ".pdf") printer.warm();
  try {
    const assumptions = loadAssumptions(assumptionsFolder);
    const run = runStudy(document, assumptions);
    const printedOdds = printableOdds(run, await drawnOdds(document, assumptions));
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

export function schema(print: Print): void {
  print(JSON.stringify(studyJsonSchema(), undefined, 2));
}

/** The first example from end to end: comparison on the screen, report as PDF in the working folder. */
export async function demo(print: Print): Promise<void> {
  prepareBrowser(print);
  const path = join(examplesFolder, "sorrel-bend.yaml");
  await compareCommand(path, false, print);
  await report(path, { out: "sorrel-bend.pdf", paper: undefined, part: "all" }, print);
}
