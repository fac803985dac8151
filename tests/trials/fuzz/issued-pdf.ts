import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PDFDocument } from "@cantoo/pdf-lib";
import { assumptionFiles, readAssumptions } from "#product/assumptions/load.js";
import { makeIssue } from "#product/issue/make-issue.js";
import { signPdf } from "#product/issue/signature.js";
import { signingKeyIn } from "#product/issue/signing-key.js";
import { assumptionsFolder, examplesFolder } from "#product/report/document/assets.js";
import { runStudy } from "#product/study/prepare/compute.js";
import { readStudyText } from "#product/study/reading/read.js";

/** The signed board's part of a small lake, printed as one page with its attachments. */
export async function issuedPdf(): Promise<Uint8Array> {
  const folder = mkdtempSync(join(tmpdir(), "fuzz-key-"));
  try {
    const key = await signingKeyIn(folder, () => new Date("2026-01-01T00:00:00Z")).open();
    const files = assumptionFiles(assumptionsFolder);
    const text = readFileSync(join(examplesFolder, "ninemoss.yaml"), "utf8");
    const run = runStudy(readStudyText(text, "lake.yaml"), readAssumptions(files));
    const draft = {
      ...{ number: 1, issuedAt: "2026-01-02T03:04:05.000Z", author: "Ada", note: "", supersedes: null },
      study: { id: "lake", name: run.document.study.name, revision: 1, fileName: "lake.yaml", text },
      signedBy: key.fingerprint,
    };
    const sign = (pdf: Uint8Array) => signPdf(pdf, key);
    const made = await makeIssue(draft, { run, printedOdds: undefined, files }, { print: onePage, sign });
    return made.boardPdf;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

async function onePage(): Promise<Uint8Array> {
  const document = await PDFDocument.create();
  document.addPage().drawText("a report", { x: 50, y: 500 });
  return document.save();
}
