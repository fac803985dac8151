import { PDFDocument } from "@cantoo/pdf-lib";
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { keptOf } from "../../src/app/kept-reports.js";
import { assumptionFiles } from "../../src/assumptions/load.js";
import { contentDigest } from "../../src/issue/digest.js";
import type { MadeIssue } from "../../src/issue/make-issue.js";
import { readIssue } from "../../src/issue/read-issue.js";
import { recompute } from "../../src/issue/recompute.js";
import { attachmentNames } from "../../src/issue/record.js";
import { addSignatureField, signPdf } from "../../src/issue/signature.js";
import type { SigningKey } from "../../src/issue/signing-key.js";
import { verifyIssue } from "../../src/issue/verify.js";
import { assumptionsFolder } from "../../src/report/document/assets.js";
import { storeConnection } from "../../src/store/connection.js";
import { issueStore } from "../../src/store/issues.js";
import { smallLakeText } from "../study/small-lake.js";
import { attempts, retold, withAttachment } from "./forging.js";
import { issued, onePagePrinter, passingKey } from "./issued.js";
import { keptAs } from "./keeping.js";

const text = smallLakeText;
const [key, otherKey] = [passingKey(), passingKey()];
const [here, elsewhere] = [issueStore(storeConnection(":memory:")), issueStore(storeConnection(":memory:"))];
let first: MadeIssue;
let issue: MadeIssue;

beforeAll(async () => {
  first = await issued(text, onePagePrinter, key, { number: 1, supersedes: null });
  issue = await issued(text, onePagePrinter, key);
  for (const each of [first, issue]) here.keep(keptAs(each));
});

const computed = new Map<string, ReturnType<typeof recompute>>();

/** Computes what is attached again, once for all files with the same attached: most alterations leave that as it is. */
const again: typeof recompute = (read, draw) => {
  const attached = JSON.stringify([read.content, read.record.engineVersion]);
  const known = computed.get(attached) ?? recompute(read, draw);
  computed.set(attached, known);
  return known;
};

const onIssuingServer = (pdf: Uint8Array) => verifyIssue(pdf, { kept: keptOf(here, key, pdf), again });
const onAnother = (pdf: Uint8Array) => verifyIssue(pdf, { kept: keptOf(elsewhere, otherKey, pdf), again });

const told = (verification: Awaited<ReturnType<typeof verifyIssue>>) =>
  [verification.answer, ...verification.sentences].join("\n");

const fingerprint = async (of: SigningKey) => (await of.open()).fingerprint;

describe("an issued report", () => {
  it("was issued here, unaltered, on the server that issued it, and its figures match", async () => {
    const found = await onIssuingServer(issue.pdf);
    expect(found, told(found)).toMatchObject({ standing: "issued here", stands: true, differences: [] });
    expect(told(found)).toMatch(/all [\d,]+ figures match/);
    expect(told(found)).toContain("to the byte the one that was issued");
  });

  it("was issued by the holder of a key, unaltered since, on any other", async () => {
    const found = await onAnother(issue.pdf);
    expect(found, told(found)).toMatchObject({ standing: "issued by a key", stands: true });
    expect(found.answer).toContain(await fingerprint(key));
    expect(told(found)).toContain("only its holder can say");
  });

  it("has its study to the byte inside, and the digest of all of it", async () => {
    const { content, record, attachmentsStand } = await readIssue(issue.pdf);
    expect(content.studyText).toBe(text);
    expect(attachmentsStand).toBe(true);
    expect(content.assumptions.used).toContain("arrival.founding-unknown");
    expect(contentDigest({ ...content })).not.toBe(record.digest);
  });
});

describe("the board's part of an issued report", () => {
  it("is issued like the full report, and named as what it is", async () => {
    const found = await onIssuingServer(issue.boardPdf);
    expect(found, told(found)).toMatchObject({ standing: "issued here", stands: true, differences: [] });
    expect(told(found)).toContain("It calls itself the board’s part of issue 2 of");
    expect(await onAnother(issue.boardPdf)).toMatchObject({ standing: "issued by a key", stands: true });
  });

  it("is told apart from the full report where it is altered", async () => {
    const alteration = attempts.find(({ what }) => what === "a note put on a page") ?? expect.fail();
    const found = await onIssuingServer(await alteration.forge(issue.boardPdf));
    expect(found, told(found)).toMatchObject({ standing: "altered", stands: false });
    expect(told(found)).toMatch(alteration.where);
    expect(told(found)).not.toContain("the number of pages");
    expect(told(found)).not.toContain("board-part.pdf");
  });
});

describe.each(attempts)("a report with $what", ({ forge, where }) => {
  it("is altered on the server that issued it, which says where", async () => {
    const found = await onIssuingServer(await forge(issue.pdf));
    expect(found, told(found)).toMatchObject({ standing: "altered", stands: false });
    expect(told(found)).toMatch(where);
  });

  it("is altered on any other", async () => {
    const found = await onAnother(await forge(issue.pdf));
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
    const forged = await signedBy(otherKey, await unsigned(issue.pdf));
    const found = await onIssuingServer(forged);
    expect(found, told(found)).toMatchObject({ standing: "unknown", stands: false });
    expect(told(found)).toContain("no such report was issued here");
    expect(told(found)).toContain(await fingerprint(otherKey));
  });

  it("does not stand elsewhere either, since its pages print another digest", async () => {
    const found = await onAnother(await signedBy(otherKey, await unsigned(issue.pdf)));
    expect(found, told(found)).toMatchObject({ standing: "unknown", stands: false });
    expect(told(found)).toContain("not the one printed on its pages");
  });
});

const unsigned = (pdf: Uint8Array) => {
  const attempt = attempts.find(({ what }) => what === "its signature taken out");
  if (!attempt) throw new Error("no way to take the signature out");
  return attempt.forge(pdf);
};

describe("a report signed with this server’s key that is not kept here", () => {
  it("does not stand, and what may have happened is said", async () => {
    const later = await issued(text, onePagePrinter, key, { number: 3, note: "lost with the disk" });
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
    const copy = await issued(text, onePagePrinter, otherKey, {}, files);
    const found = await verifyIssue(copy.pdf, { kept: keptOf(elsewhere, key, copy.pdf) });
    expect(found, told(found)).toMatchObject({ standing: "issued by a key", differences: [] });
    expect(found.answer).toContain("unaltered since. Its assumptions are not all the program’s own.");
    expect(found.stands).toBe(true);
    // What a method document lists has changed with them; that speaks against no report.
    expect(told(found)).toContain(`of digest ${copy.record.method}. The method document of this version has`);
    expect(told(found)).toContain("That does not speak against the report.");
    expect(told(await onIssuingServer(issue.pdf))).not.toContain("It was computed by the method of");
    expect(told(found)).toContain("Its assumptions are not those that version");
    expect(told(found)).toMatch(/arrival\.other-share: 0\.5 share .*; as shipped, 0\.11 share/);
    expect(told(await onIssuingServer(issue.pdf))).toContain("Its assumptions are those that version");
  });
});

describe("figures that are not those of the study", () => {
  it("are told one by one", async () => {
    const found = await onAnother(
      await withAttachment(issue.pdf, attachmentNames.figures, (figures) =>
        figures.replace(/"netBenefit":"-?[\d.]+"/, '"netBenefit":"1234567.00"'),
      ),
    );
    expect(found.differences).toMatchObject([
      { place: expect.stringContaining("netBenefit"), issued: "1234567.00" },
    ]);
  });

  it("are told where the study is another", async () => {
    const pdf = await withAttachment(issue.pdf, attachmentNames.study, (study) =>
      study.replace(/horizon: \d+/, "horizon: 20"),
    );
    expect((await onAnother(pdf)).differences.length).toBeGreaterThan(3);
  });

  it("cannot be computed again from a study that cannot be read, which is said", async () => {
    const pdf = await withAttachment(issue.pdf, attachmentNames.study, (study) =>
      study.replace(/horizon: \d+/, "horizon: x"),
    );
    const found = await onAnother(pdf);
    expect(told(found)).toContain("could not be computed again");
    expect(told(found)).toContain("horizon");
  });
});

describe("a report of another version", () => {
  const earlier = async () => {
    const files = new Map(assumptionFiles(assumptionsFolder));
    files.delete("checks-usual.yaml");
    return withAttachment(
      await retold({ engineVersion: "0.1.0" })(issue.pdf),
      attachmentNames.assumptions,
      (assumptions) => JSON.stringify({ ...JSON.parse(assumptions), files: Object.fromEntries(files) }),
    );
  };

  it("is computed again although its assumptions lack what came later, and held to what it told", async () => {
    const found = await onAnother(await earlier());
    expect(told(found)).toContain("Version 0.1.0 of the program made it; version");
    expect(told(found)).toMatch(/all [\d,]+ figures match/);
    expect(told(found)).not.toContain("could not be computed again");
  });

  it("stands where it is kept, though figures of this version may be others", async () => {
    const pdf = await withAttachment(await earlier(), attachmentNames.figures, (figures) =>
      figures.replace(/"netBenefit":"-?[\d.]+"/, '"netBenefit":"1234567.00"'),
    );
    const kept = issueStore(storeConnection(":memory:"));
    kept.keep(keptAs({ ...first, pdf }));
    const found = await verifyIssue(pdf, { kept: keptOf(kept, key, pdf) });
    expect(found, told(found)).toMatchObject({ standing: "issued here", stands: true });
    expect(found.differences).toHaveLength(1);
    expect(told(found)).toContain("Figures that differ may come from that");
  });
});

describe("a report from before reports were signed", () => {
  const unsignedFormat = async () =>
    withAttachment(await unsigned(issue.pdf), attachmentNames.issue, (record) => {
      const {
        signedBy: _signedBy,
        method: _method,
        format: _format,
        part: _part,
        ...rest
      } = JSON.parse(record);
      const format = "ramp-and-rack issued report, format 1";
      return JSON.stringify({ ...rest, format, pagesDigest: "0".repeat(64) });
    });

  it("was issued here where it is kept, and is unknown elsewhere", async () => {
    const pdf = await unsignedFormat();
    const kept = issueStore(storeConnection(":memory:"));
    kept.keep(keptAs({ ...first, pdf }));
    const found = await verifyIssue(pdf, { kept: keptOf(kept, key, pdf) });
    expect(found, told(found)).toMatchObject({ standing: "issued here", stands: true });
    const other = await onAnother(pdf);
    expect(other, told(other)).toMatchObject({ standing: "unknown", stands: false });
    expect(other.answer).toContain("before reports were signed");
  });

  it("is altered where another is kept under its number", async () => {
    const found = await onIssuingServer(await unsignedFormat());
    expect(found, told(found)).toMatchObject({ standing: "altered", stands: false });
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
      async () => withAttachment(issue.pdf, attachmentNames.issue, () => "{"),
      "is no JSON",
    ],
    [
      "a PDF with a record of another shape",
      async () => withAttachment(issue.pdf, attachmentNames.issue, () => "{}"),
      "not as this program writes it",
    ],
  ])("gets a plain answer: %s", async (_what, make, answer) => {
    const found = await onAnother(await make());
    expect(found.stands).toBe(false);
    expect(found.differences).toEqual([]);
    expect(told(found)).toContain(answer);
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
        const start = Math.floor(at * issue.pdf.length);
        const file = Buffer.concat([issue.pdf.slice(0, start), put, issue.pdf.slice(start + removed)]);
        const found = await onIssuingServer(file);
        expect(found.stands).toBe(Buffer.compare(file, issue.pdf) === 0);
        expect(found.answer).toMatch(/^(Altered|Unknown)\. |^Issued here/);
      }),
      { numRuns: 30 },
    );
  });
});
