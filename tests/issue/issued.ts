import { PDFDocument } from "@cantoo/pdf-lib";
import { assumptionFiles } from "../../src/assumptions/load.js";
import { type IssueDraft, type MadeIssue, makeIssue } from "../../src/issue/make-issue.js";
import { assumptionsFolder } from "../../src/report/assets.js";
import type { Printer } from "../../src/report/printer.js";
import { runStudy } from "../../src/study/compute.js";
import { readStudyText } from "../../src/study/read.js";
import { assumptions } from "../report/runs.js";

/** Prints any report as one page with a line on it. */
export const onePagePrinter: Printer = {
  warm: () => undefined,
  print: async () => {
    const document = await PDFDocument.create();
    document.addPage().drawText("a report", { x: 50, y: 500 });
    return document.save();
  },
  draw: async () => [],
  close: async () => undefined,
};

/** An issue of a study's text. */
export function issued(text: string, printer: Printer): Promise<MadeIssue> {
  const run = runStudy(readStudyText(text, "lake.yaml"), assumptions);
  const draft: IssueDraft = {
    number: 2,
    issuedAt: "2026-01-02T03:04:05.000Z",
    author: "Ada <b>& Co",
    note: "For the meeting of 5 January",
    supersedes: { number: 1, issuedAt: "2025-12-01T00:00:00.000Z" },
    study: { id: "lake", name: run.document.study.name, revision: 3, fileName: "lake.yaml", text },
  };
  return makeIssue(draft, { run, told: undefined, files: assumptionFiles(assumptionsFolder) }, printer);
}
