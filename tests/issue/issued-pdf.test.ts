import { readFileSync } from "node:fs";
import { join } from "node:path";
import { extractText, getDocumentProxy } from "unpdf";
import { beforeAll, describe, expect, it } from "vitest";
import { z } from "zod";
import { stableJson } from "../../src/assumptions/digest.js";
import type { MadeIssue } from "../../src/issue/make-issue.js";
import { attachmentNames } from "../../src/issue/record.js";
import { methodDigest } from "../../src/method/method-document.js";
import { examplesFolder } from "../../src/report/document/assets.js";
import { createPrinter } from "../../src/report/print/printer.js";
import { assumptions } from "../report/runs.js";
import { issued, passingKey } from "./issued.js";

const text = readFileSync(join(examplesFolder, "ninemoss.yaml"), "utf8");
const key = passingKey();
let issue: MadeIssue;

beforeAll(async () => {
  const printer = createPrinter();
  issue = await issued(text, printer, key);
  await printer.close();
});

describe("the board's part of an issue", () => {
  it("is a document of its own: issued, with the same digest, and shorter", async () => {
    const board = await extractText(await getDocumentProxy(new Uint8Array(issue.boardPdf)));
    const full = await getDocumentProxy(new Uint8Array(issue.pdf));
    expect(board.text[0]).toContain("revision 3 · issue 2");
    expect(board.text.join("").replaceAll(/\s/g, "")).toContain(issue.record.digest);
    expect(board.text.join("")).not.toContain("draft, not issued");
    expect(board.totalPages).toBeLessThan(full.numPages);
  });
});

describe("the PDF of an issue", () => {
  it("prints number, revision, digest and what it takes the place of", async () => {
    const { text: pages } = await extractText(await getDocumentProxy(new Uint8Array(issue.pdf)));
    const [first = "", last = ""] = [pages[0], pages.at(-1)];
    const { number } = issue.record;
    expect(number).toBe(2);
    expect(first).toContain(`revision 3 · issue ${number}`);
    expect(last.replaceAll(/\s/g, "")).toContain(issue.record.digest);
    expect(issue.record.method).toBe(methodDigest(assumptions));
    expect(last.replaceAll(/\s/g, "")).toContain(issue.record.method);
    expect(last.replaceAll(/\s/g, "")).toContain(key.fingerprint()?.replaceAll(" ", ""));
    expect(last).toContain(`issue ${number - 1} of 2025-12-01`);
    expect(last).toContain("Ada <b>& Co");
  });

  it("is tagged, with language, title and bookmarks, and small", async () => {
    const document = await getDocumentProxy(new Uint8Array(issue.pdf));
    expect(await document.getMarkInfo()).toMatchObject({ Marked: true });
    expect((await document.getOutline())?.length).toBeGreaterThan(0);
    const { info } = await document.getMetadata();
    expect(info).toMatchObject({ Language: "en", Title: expect.stringContaining("Ninemoss Lake") });
    expect(issue.pdf.length).toBeLessThan(3 * 1024 * 1024);
  });

  it("is whole for another reader than the library that wrote it, which takes the same attachments out of it", async () => {
    const document = await getDocumentProxy(new Uint8Array(issue.pdf));
    const attached = z
      .record(z.string(), z.object({ filename: z.string(), content: z.instanceof(Uint8Array) }))
      .parse(await document.getAttachments());
    const contents = new Map(
      Object.values(attached).map(({ filename, content }) => [filename, Buffer.from(content)]),
    );
    expect(contents.get(attachmentNames.study)?.toString()).toBe(text);
    expect(contents.get(attachmentNames.figures)?.toString()).toBe(issue.figures);
    expect(contents.get(attachmentNames.issue)?.toString()).toBe(
      stableJson({ ...issue.record, part: "all" }),
    );
    expect(contents.get(attachmentNames.board)?.equals(issue.boardPdf)).toBe(true);
  });
});
