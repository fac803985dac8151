import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { extractText, getDocumentProxy } from "unpdf";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { stableJson } from "../../src/issue/digest.js";
import type { MadeIssue } from "../../src/issue/make-issue.js";
import { attachmentNames } from "../../src/issue/record.js";
import { examplesFolder } from "../../src/report/assets.js";
import { createPrinter } from "../../src/report/printer.js";
import { issued } from "./issued.js";

const text = readFileSync(join(examplesFolder, "ninemoss.yaml"), "utf8");
let issue: MadeIssue;

beforeAll(async () => {
  const printer = createPrinter();
  issue = await issued(text, printer);
  await printer.close();
});

describe("the PDF of an issue", () => {
  it("prints number, revision, digest and what it takes the place of", async () => {
    const { text: pages } = await extractText(await getDocumentProxy(new Uint8Array(issue.pdf)));
    const [first = "", last = ""] = [pages[0], pages.at(-1)];
    const { number } = issue.record;
    expect(number).toBe(2);
    expect(first).toContain(`revision 3 · issue ${number}`);
    expect(last.replaceAll(/\s/g, "")).toContain(issue.record.digest);
    expect(last).toContain(`issue ${number - 1} of 2025-12-01`);
    expect(last).toContain("Ada <b>& Co");
  });

  const folder = mkdtempSync(join(tmpdir(), "issue-"));
  afterAll(() => rmSync(folder, { recursive: true }));
  const poppler = (program: string, ...args: string[]) =>
    execFileSync(program, args, { cwd: folder, encoding: "utf8" });
  const hasPoppler = (() => {
    try {
      execFileSync("pdfinfo", ["-v"], { stdio: "ignore" });
      return true;
    } catch {
      return false;
    }
  })();

  it("is tagged, with language, title and bookmarks, and small", async () => {
    const document = await getDocumentProxy(new Uint8Array(issue.pdf));
    expect(await document.getMarkInfo()).toMatchObject({ Marked: true });
    expect((await document.getOutline())?.length).toBeGreaterThan(0);
    const { info } = await document.getMetadata();
    expect(info).toMatchObject({ Language: "en", Title: expect.stringContaining("Ninemoss Lake") });
    expect(issue.pdf.length).toBeLessThan(3 * 1024 * 1024);
  });

  it.runIf(hasPoppler)("is whole for another reader, which takes the same attachments out of it", () => {
    writeFileSync(join(folder, "issue.pdf"), issue.pdf);
    expect(poppler("pdfinfo", "issue.pdf")).toMatch(/Tagged:\s+yes/);
    poppler("pdfdetach", "-saveall", "issue.pdf");
    expect(readFileSync(join(folder, attachmentNames.study), "utf8")).toBe(text);
    expect(readFileSync(join(folder, attachmentNames.figures), "utf8")).toBe(issue.figures);
    expect(readFileSync(join(folder, attachmentNames.issue), "utf8")).toBe(stableJson(issue.record));
  });
});
