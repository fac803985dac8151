import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PDFDocument } from "@cantoo/pdf-lib";
import { afterAll } from "vitest";
import { assumptionFiles, readAssumptions } from "../../src/assumptions/load.js";
import type { AssumptionFiles } from "../../src/assumptions/yaml-file.js";
import { type IssueDraft, type MadeIssue, makeIssue } from "../../src/issue/make-issue.js";
import { signPdf } from "../../src/issue/signature.js";
import { type SigningKey, signingKeyIn } from "../../src/issue/signing-key.js";
import { assumptionsFolder } from "../../src/report/document/assets.js";
import type { Printer } from "../../src/report/print/printer.js";
import { runStudy } from "../../src/study/prepare/compute.js";
import { readStudyText } from "../../src/study/reading/read.js";
import { assumptions } from "../report/runs.js";

const shippedFiles = assumptionFiles(assumptionsFolder);

/** Prints any report as one page with a line on it and what is issued with it: its digest. */
export const onePagePrinter: Printer = {
  warm: () => undefined,
  print: async (body) => {
    const document = await PDFDocument.create();
    const page = document.addPage();
    page.drawText("a report", { x: 50, y: 500 });
    const digest = /[0-9a-f]{64}/.exec(body.replaceAll("<wbr>", ""))?.[0];
    if (digest) page.drawText(digest, { x: 50, y: 400, size: 8 });
    return document.save();
  },
  draw: async () => [],
  close: async () => undefined,
};

/** A key that is gone after the tests of the file. */
export function passingKey(): SigningKey {
  const folder = mkdtempSync(join(tmpdir(), "key-"));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return signingKeyIn(folder, () => new Date("2026-01-01T00:00:00Z"));
}

/** An issue of a study's text. */
export async function issued(
  text: string,
  printer: Printer,
  key: SigningKey,
  changes: Partial<IssueDraft> = {},
  files: AssumptionFiles = shippedFiles,
): Promise<MadeIssue> {
  const read = files === shippedFiles ? assumptions : readAssumptions(files);
  const run = runStudy(readStudyText(text, "lake.yaml"), read);
  const open = await key.open();
  const draft: IssueDraft = {
    number: 2,
    issuedAt: "2026-01-02T03:04:05.000Z",
    author: "Ada <b>& Co",
    note: "For the meeting of 5 January",
    supersedes: { number: 1, issuedAt: "2025-12-01T00:00:00.000Z" },
    study: { id: "lake", name: run.document.study.name, revision: 3, fileName: "lake.yaml", text },
    signedBy: open.fingerprint,
    ...changes,
  };
  const sign = (pdf: Uint8Array) => signPdf(pdf, open);
  return makeIssue(draft, { run, printedOdds: undefined, files }, { print: printer.print, sign });
}
