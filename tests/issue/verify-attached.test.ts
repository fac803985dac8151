import { PDFDocument } from "@cantoo/pdf-lib";
import { describe, expect, it } from "vitest";
import { keptOf } from "../../src/app/kept-reports.js";
import { assumptionFiles } from "../../src/assumptions/load.js";
import { attachmentNames } from "../../src/issue/record.js";
import { verifyIssue } from "../../src/issue/verify.js";
import { assumptionsFolder } from "../../src/report/document/assets.js";
import { storeConnection } from "../../src/store/connection.js";
import { issueStore } from "../../src/store/issues.js";
import { retold, withAttachment } from "./forging.js";
import { keptAs } from "./keeping.js";
import { told, twoServers, unsigned } from "./verifying.js";

const { key, first, issue, onIssuingServer, onAnother } = twoServers();

describe("figures that are not those of the study", () => {
  it("are told one by one", async () => {
    const found = await onAnother(
      await withAttachment(issue().pdf, attachmentNames.figures, (figures) =>
        figures.replace(/"netBenefit":"-?[\d.]+"/, '"netBenefit":"1234567.00"'),
      ),
    );
    expect(found.differences).toMatchObject([
      { place: expect.stringContaining("netBenefit"), issued: "1234567.00" },
    ]);
  });

  it("are told where the study is another", async () => {
    const pdf = await withAttachment(issue().pdf, attachmentNames.study, (study) =>
      study.replace(/horizon: \d+/, "horizon: 20"),
    );
    expect((await onAnother(pdf)).differences.length).toBeGreaterThan(3);
  });

  it("cannot be computed again from a study that cannot be read, which is said", async () => {
    const pdf = await withAttachment(issue().pdf, attachmentNames.study, (study) =>
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
      await retold({ engineVersion: "0.1.0" })(issue().pdf),
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
    kept.keep(keptAs({ ...first(), pdf }));
    const found = await verifyIssue(pdf, { kept: keptOf(kept, key, pdf) });
    expect(found, told(found)).toMatchObject({ standing: "issued here", stands: true });
    expect(found.differences).toHaveLength(1);
    expect(told(found)).toContain("Figures that differ may come from that");
  });
});

describe("a report from before reports were signed", () => {
  const unsignedFormat = async () =>
    withAttachment(await unsigned(issue().pdf), attachmentNames.issue, (record) => {
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
    kept.keep(keptAs({ ...first(), pdf }));
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
      async () => withAttachment(issue().pdf, attachmentNames.issue, () => "{"),
      "is no JSON",
    ],
    [
      "a PDF with a record of another shape",
      async () => withAttachment(issue().pdf, attachmentNames.issue, () => "{}"),
      "not as this program writes it",
    ],
  ])("gets a plain answer: %s", async (_what, make, answer) => {
    const found = await onAnother(await make());
    expect(found.stands).toBe(false);
    expect(found.differences).toEqual([]);
    expect(told(found)).toContain(answer);
  });
});
