import { PDFDocument } from "@cantoo/pdf-lib";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { keptOf } from "../../src/app/kept-reports.js";
import { assumptionFiles } from "../../src/assumptions/load.js";
import { contentDigest } from "../../src/issue/digest.js";
import { readIssue } from "../../src/issue/read-issue.js";
import { addSignatureField, signPdf } from "../../src/issue/signature.js";
import type { SigningKey } from "../../src/issue/signing-key.js";
import { verifyIssue } from "../../src/issue/verify.js";
import { assumptionsFolder } from "../../src/report/document/assets.js";
import { smallLakeText } from "../study/small-lake.js";
import { attempts, retold } from "./forging.js";
import { issued, onePagePrinter } from "./issued.js";
import { fingerprint, told, twoServers, unsigned } from "./verifying.js";

const { key, otherKey, elsewhere, issue, onIssuingServer, onAnother } = twoServers();

describe("an issued report", () => {
  it("was issued here, unaltered, on the server that issued it, and its figures match", async () => {
    const found = await onIssuingServer(issue().pdf);
    expect(found, told(found)).toMatchObject({ standing: "issued here", stands: true, differences: [] });
    expect(told(found)).toMatch(/all [\d,]+ figures match/);
    expect(told(found)).toContain("to the byte the one that was issued");
  });

  it("was issued by the holder of a key, unaltered since, on any other", async () => {
    const found = await onAnother(issue().pdf);
    expect(found, told(found)).toMatchObject({ standing: "issued by a key", stands: true });
    expect(found.answer).toContain(await fingerprint(key));
    expect(told(found)).toContain("only its holder can say");
  });

  it("has its study to the byte inside, and the digest of all of it", async () => {
    const { content, record, attachmentsStand } = await readIssue(issue().pdf);
    expect(content.studyText).toBe(smallLakeText);
    expect(attachmentsStand).toBe(true);
    expect(content.assumptions.used).toContain("arrival.founding-unknown");
    expect(contentDigest({ ...content })).not.toBe(record.digest);
  });
});

describe("the board's part of an issued report", () => {
  it("is issued like the full report, and named as what it is", async () => {
    const found = await onIssuingServer(issue().boardPdf);
    expect(found, told(found)).toMatchObject({ standing: "issued here", stands: true, differences: [] });
    expect(told(found)).toContain("It calls itself the board’s part of issue 2 of");
    expect(await onAnother(issue().boardPdf)).toMatchObject({ standing: "issued by a key", stands: true });
  });

  it("is told apart from the full report where it is altered", async () => {
    const alteration = attempts.find(({ what }) => what === "a note put on a page") ?? expect.fail();
    const found = await onIssuingServer(await alteration.forge(issue().boardPdf));
    expect(found, told(found)).toMatchObject({ standing: "altered", stands: false });
    expect(told(found)).toMatch(alteration.where);
    expect(told(found)).not.toContain("the number of pages");
    expect(told(found)).not.toContain("board-part.pdf");
  });
});

describe.each(attempts)("a report with $what", ({ forge, where }) => {
  it("is altered on the server that issued it, which says where", async () => {
    const found = await onIssuingServer(await forge(issue().pdf));
    expect(found, told(found)).toMatchObject({ standing: "altered", stands: false });
    expect(told(found)).toMatch(where);
  });

  it("is altered on any other", async () => {
    const found = await onAnother(await forge(issue().pdf));
    expect(found, told(found)).toMatchObject({ standing: "altered", stands: false });
  });
});

/** Signed anew by the holder of another key, who puts their own fingerprint into the record. */
async function signedBy(of: SigningKey, pdf: Uint8Array): Promise<Uint8Array> {
  const own = await of.open();
  const document = await PDFDocument.load(await retold({ signedBy: own.fingerprint })(pdf));
  addSignatureField(document, new Date("2026-01-02T03:04:05Z"));
  const saved = await document.save({ useObjectStreams: true, updateFieldAppearances: false });
  // The blanks of the first signature are gone with its dictionary: one place is left to fill.
  return signPdf(saved, own);
}

describe("a report that somebody signed with a key of their own", () => {
  it("never stands on the server that keeps its study", async () => {
    const forged = await signedBy(otherKey, await unsigned(issue().pdf));
    const found = await onIssuingServer(forged);
    expect(found, told(found)).toMatchObject({ standing: "unknown", stands: false });
    expect(told(found)).toContain("no such report was issued here");
    expect(told(found)).toContain(await fingerprint(otherKey));
  });

  it("does not stand elsewhere either, since its pages print another digest", async () => {
    const found = await onAnother(await signedBy(otherKey, await unsigned(issue().pdf)));
    expect(found, told(found)).toMatchObject({ standing: "unknown", stands: false });
    expect(told(found)).toContain("not the one printed on its pages");
  });
});
describe("a report signed with this server’s key that is not kept here", () => {
  it("does not stand, and what may have happened is said", async () => {
    const later = await issued(smallLakeText, onePagePrinter, key, { number: 3, note: "lost with the disk" });
    const found = await onIssuingServer(later.pdf);
    expect(found, told(found)).toMatchObject({ standing: "unknown", stands: false });
    expect(told(found)).toContain("own key: it may have been issued after the backup");
  });
});

describe("a report from a copy of the program with altered assumptions", () => {
  it("is issued by the holder of its key, and every assumption that was altered is told", async () => {
    const files = new Map(assumptionFiles(assumptionsFolder));
    const arrival = files.get("arrival.yaml") ?? "";
    const certain = arrival.replace(
      "value: 0.11, unit: share, low: 0.05, high: 0.4",
      "value: 0.5, unit: share, low: 0.05, high: 0.9",
    );
    files.set("arrival.yaml", certain);
    const copy = await issued(smallLakeText, onePagePrinter, otherKey, {}, files);
    const found = await verifyIssue(copy.pdf, { kept: keptOf(elsewhere, key, copy.pdf) });
    expect(found, told(found)).toMatchObject({ standing: "issued by a key", differences: [] });
    expect(found.answer).toContain("unaltered since. Its assumptions are not all the program’s own.");
    expect(found.stands).toBe(true);
    // What a method document lists has changed with them; that speaks against no report.
    expect(told(found)).toContain(`of digest ${copy.record.method}. The method document of this version has`);
    expect(told(found)).toContain("That does not speak against the report.");
    expect(told(await onIssuingServer(issue().pdf))).not.toContain("It was computed by the method of");
    expect(told(found)).toContain("Its assumptions are not those that version");
    expect(told(found)).toMatch(/arrival\.other-share: 0\.5 share .*; as shipped, 0\.11 share/);
    expect(told(await onIssuingServer(issue().pdf))).toContain("Its assumptions are those that version");
  });
});

describe("any file", () => {
  it("gets an answer, and stands only if it is the report itself", async () => {
    const splice = fc.record({
      at: fc.double({ min: 0, max: 1, noNaN: true }),
      removed: fc.nat(200),
      put: fc.uint8Array({ minLength: 1, maxLength: 50 }),
    });
    await fc.assert(
      fc.asyncProperty(splice, async ({ at, removed, put }) => {
        const start = Math.floor(at * issue().pdf.length);
        const file = Buffer.concat([issue().pdf.slice(0, start), put, issue().pdf.slice(start + removed)]);
        const found = await onIssuingServer(file);
        expect(found.stands).toBe(Buffer.compare(file, issue().pdf) === 0);
        expect(found.answer).toMatch(/^(Altered|Unknown)\. |^Issued here/);
      }),
      { numRuns: 30 },
    );
  });
});
