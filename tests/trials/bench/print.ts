import type { AssumptionSet } from "#product/assumptions/entry.js";
import { renderReportBody } from "#product/report/document/html.js";
import type { ReportPart } from "#product/report/document/sections.js";
import { printSettings } from "#product/report/print/paper.js";
import { createPrinter, type Printer } from "#product/report/print/printer.js";
import type { StudyDocument } from "#product/study/format/schema.js";
import { runStudy } from "#product/study/prepare/compute.js";
import { median } from "../median.js";

const repeats = 5;
const manyStructures = 150;
const atOnce = 8;

export interface PrintTimes {
  /** Milliseconds of the board's part, computation included: with a cold browser, and warm. */
  readonly cold: number;
  readonly warm: number;
  /** All with its appendices. */
  readonly full: number;
  readonly fullBytes: number;
  readonly manyStructures: { readonly structures: number; readonly board: number; readonly full: number };
  /** Several full reports asked for at once, and the memory of this process when they are done. */
  readonly together: { readonly reports: number; readonly all: number; readonly megabytes: number };
}

/** Speed of printing a study's report. */
export async function timePrints(document: StudyDocument, assumptions: AssumptionSet): Promise<PrintTimes> {
  const printer = createPrinter();
  const print = (study: StudyDocument, part: ReportPart) => {
    printer.warm();
    return printed(printer, { study, part, assumptions });
  };
  const cold = await timed(() => print(document, "board"));
  const { length: fullBytes } = await print(document, "all");
  const many = { ...document, structures: copies(document.structures, manyStructures) };
  await print(many, "board");
  const times: PrintTimes = {
    cold,
    warm: await medianOf(() => print(document, "board")),
    full: await medianOf(() => print(document, "all")),
    fullBytes,
    manyStructures: {
      structures: manyStructures,
      board: await medianOf(() => print(many, "board")),
      full: await timed(() => print(many, "all")),
    },
    together: {
      reports: atOnce,
      all: await timed(() => Promise.all(Array.from({ length: atOnce }, () => print(document, "all")))),
      megabytes: process.memoryUsage.rss() / 1e6,
    },
  };
  await printer.close();
  return times;
}

function printed(
  printer: Printer,
  { study, part, assumptions }: { study: StudyDocument; part: ReportPart; assumptions: AssumptionSet },
): Promise<Uint8Array> {
  return printer.print(
    renderReportBody(runStudy(study, assumptions), undefined, { part }),
    printSettings(study),
  );
}

function copies(structures: StudyDocument["structures"], count: number): StudyDocument["structures"] {
  const rounds = Math.ceil(count / structures.length);
  return Array.from({ length: rounds }, (_, round) =>
    structures.map((structure) => ({
      ...structure,
      id: `${structure.id}-${round}`,
      name: `${structure.name}, number ${round} of those along the shore between the old mill and the dam`,
    })),
  )
    .flat()
    .slice(0, count);
}

async function timed(action: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await action();
  return performance.now() - start;
}

async function medianOf(action: () => Promise<unknown>): Promise<number> {
  const times: number[] = [];
  for (let repeat = 0; repeat < repeats; repeat++) times.push(await timed(action));
  return median(times);
}
