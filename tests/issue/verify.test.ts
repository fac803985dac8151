import { readFileSync } from "node:fs";
import { join } from "node:path";
import { PDFDocument } from "@cantoo/pdf-lib";
import { beforeAll, describe, expect, it } from "vitest";
import { contentDigest } from "../../src/issue/digest.js";
import type { MadeIssue } from "../../src/issue/make-issue.js";
import { readIssue } from "../../src/issue/read-issue.js";
import { attachmentNames } from "../../src/issue/record.js";
import { verifyIssue } from "../../src/issue/verify.js";
import { examplesFolder } from "../../src/report/assets.js";
import { finishPdf } from "../../src/report/finished-pdf.js";
import { issued, onePagePrinter } from "./issued.js";

const text = readFileSync(join(examplesFolder, "ninemoss.yaml"), "utf8");
let issue: MadeIssue;

beforeAll(async () => {
  issue = await issued(text, onePagePrinter);
});

/** The issue with one of its attachments altered as text. */
async function withAttachment(name: string, alter: (text: string) => string): Promise<Uint8Array> {
  const document = await PDFDocument.load(issue.pdf, { updateMetadata: false });
  const files = document.getAttachments().map((each) => ({
    name: each.name,
    type: each.mimeType ?? "",
    description: each.description ?? "",
    bytes: each.name === name ? Buffer.from(alter(new TextDecoder().decode(each.data))) : each.data,
  }));
  for (const each of files) document.detach(each.name);
  return finishPdf(await document.save({ useObjectStreams: true }), files);
}

const told = (verification: Awaited<ReturnType<typeof verifyIssue>>) =>
  [verification.answer, ...verification.sentences].join("\n");

describe("an issued report", () => {
  it("stands, and its figures match when computed again", async () => {
    const found = await verifyIssue(issue.pdf, { kept: () => issue.pdf });
    expect(found.stands, told(found)).toBe(true);
    expect(told(found)).toMatch(/All [\d,]+ figures match/);
    expect(told(found)).toContain("to the byte the one that was issued");
    expect(found.differences).toEqual([]);
  });

  it("has its study to the byte inside, and the digest of all of it", async () => {
    const { content, record } = await readIssue(issue.pdf);
    expect(content.studyText).toBe(text);
    expect(contentDigest(content)).toBe(record.digest);
    expect(content.assumptions.used).toContain("arrival.establishment-per-fouled-launch");
  });

  it("does not stand when a figure in it is another", async () => {
    const pdf = await withAttachment(attachmentNames.figures, (figures) =>
      figures.replace(/"netBenefit":"-?[\d.]+"/, '"netBenefit":"1234567.00"'),
    );
    const found = await verifyIssue(pdf);
    expect(found.stands).toBe(false);
    expect(told(found)).toContain("its digest is another");
    expect(found.differences).toMatchObject([
      { place: expect.stringContaining("netBenefit"), issued: "1234567.00" },
    ]);
  });

  it("does not stand when its study is another, and tells which figures follow from that", async () => {
    const pdf = await withAttachment(attachmentNames.study, (study) =>
      study.replace(/horizon: \d+/, "horizon: 20"),
    );
    const found = await verifyIssue(pdf);
    expect(found.stands).toBe(false);
    expect(found.differences.length).toBeGreaterThan(3);
  });

  it("says so when its study cannot be read any more", async () => {
    const pdf = await withAttachment(attachmentNames.study, (study) =>
      study.replace(/horizon: \d+/, "horizon: x"),
    );
    const found = await verifyIssue(pdf);
    expect(found.stands).toBe(false);
    expect(told(found)).toContain("could not be computed again");
    expect(told(found)).toContain("horizon");
  });

  it("does not stand when something was drawn over a page, or another file bears its digest", async () => {
    const document = await PDFDocument.load(issue.pdf, { updateMetadata: false });
    document.getPages()[0]?.drawText("$1", { x: 50, y: 50 });
    const found = await verifyIssue(await document.save(), { kept: () => issue.pdf });
    expect(found.stands).toBe(false);
    expect(told(found)).toContain("The pages were altered");
    expect(told(found)).toContain("not the one that was issued and is kept here");
  });

  it("names the version that made it", async () => {
    const pdf = await withAttachment(attachmentNames.issue, (record) =>
      record.replace(/"engineVersion":"[^"]+"/, '"engineVersion":"0.0.7"'),
    );
    expect(told(await verifyIssue(pdf))).toContain("Version 0.0.7 of the program made it");
  });
});

describe("a file that is no issued report", () => {
  it.each([
    ["nothing", async () => new Uint8Array(), "cannot be read as a PDF"],
    ["another file", async () => Buffer.from("Dear board"), "cannot be read as a PDF"],
    [
      "a PDF without attachments",
      async () => {
        const document = await PDFDocument.create();
        document.addPage();
        return document.save();
      },
      "has no attachments",
    ],
    [
      "a PDF with other attachments",
      async () => {
        const document = await PDFDocument.create();
        document.addPage();
        await document.attach(Buffer.from("x"), "x.txt", { mimeType: "text/plain" });
        return document.save();
      },
      "has no attachment issue.json",
    ],
    [
      "a PDF with a broken record",
      async () => withAttachment(attachmentNames.issue, () => "{"),
      "is no JSON",
    ],
    [
      "a PDF with a record of another shape",
      async () => withAttachment(attachmentNames.issue, () => "{}"),
      "not as this program writes it",
    ],
  ])("gets a plain answer: %s", async (_what, make, answer) => {
    const found = await verifyIssue(await make());
    expect(found).toMatchObject({ stands: false, sentences: [], differences: [] });
    expect(found.answer).toContain(answer);
  });
});
