import { PDFDocument, PDFName } from "@cantoo/pdf-lib";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { methodPrintSettings, renderMethodBody } from "../../src/method/method-document.js";
import { renderReportBody } from "../../src/report/document/html.js";
import { withArtifacts } from "../../src/report/print/artifacts.js";
import { printSettings } from "../../src/report/print/paper.js";
import { createPrinter } from "../../src/report/print/printer.js";
import { runStudy } from "../../src/study/prepare/compute.js";
import { failures } from "./pdf-ua/conditions.js";
import { markedContent } from "./pdf-ua/marked-content.js";
import { assumptions, exampleDocument, exampleRun } from "./runs.js";

const printer = createPrinter();
afterAll(() => printer.close());

describe("the printed method document", () => {
  it.each([
    ["alone", undefined],
    ["with the worked sheets of a study and its own drying", exampleWithOwnDrying()],
  ] as const)("%s, meets none either", async (_what, run) => {
    const pdf = await printer.print(renderMethodBody(assumptions, run), methodPrintSettings(run));
    expect(await failures(pdf)).toEqual({});
  });
});

function exampleWithOwnDrying() {
  const document = exampleDocument("ninemoss");
  const override = { id: "drying.reference-hours", value: "130 h", reason: "own trial" };
  return runStudy({ ...document, overrides: [...document.overrides, override] }, assumptions);
}

describe("what looks for conditions of failure", () => {
  let document: PDFDocument;

  beforeAll(async () => {
    const run = exampleRun("ninemoss");
    // a link, which the board's part has none of
    const link = '<p><a href="#question">The question</a></p>';
    const body = renderReportBody(run, undefined, { part: "board" }) + link;
    document = await PDFDocument.load(await printer.print(body, printSettings(run.document)));
  });

  it("finds none in the board's part, and what is then taken away", async () => {
    expect(await failures(await document.save())).toEqual({});
    for (const entry of ["Metadata", "Lang", "ViewerPreferences"]) document.catalog.delete(PDFName.of(entry));
    for (const { node } of document.getPages()) node.delete(PDFName.of("Tabs"));
    const found = Object.keys(await failures(await document.save()));
    expect(found.sort()).toEqual(["06-001", "06-002", "06-003", "07-001", "11-001", "28-008"]);
  });
});

describe("a page's drawing", () => {
  // Operators as ISO 32000-1 writes them; the drawing is made up.
  const drawing = "q\n0 0 9 9 re\nf\n/P <</MCID 0 >>BDC\nBT\n(f BDC\\) S) Tj\nET\nEMC\nBT\n(1) Tj\nET\nQ\n";

  it("has what no tag holds marked as an artifact, once", () => {
    const marked =
      "/Artifact BMC\nq\n0 0 9 9 re\nf\nEMC\n/P <</MCID 0 >>BDC\nBT\n(f BDC\\) S) Tj\nET\nEMC\n/Artifact BMC\nBT\n(1) Tj\nET\nQ\nEMC\n";
    expect(withArtifacts(drawing)).toBe(marked);
    expect(withArtifacts(marked)).toBe(marked);
  });

  it("is told to be unmarked, and no longer once it is", () => {
    expect(markedContent(drawing).unmarked).toHaveLength(2);
    expect(markedContent(withArtifacts(drawing)).unmarked).toEqual([]);
    expect(markedContent("/Artifact BMC\n/P <</MCID 0 >>BDC\nEMC\nEMC\n").taggedInArtifact).toBe(1);
    expect(markedContent("/P <</MCID 0 >>BDC\n/Artifact BMC\nEMC\n").artifactInTagged).toBe(1);
    expect(markedContent("/P <</MCID 0 >>BDC\n").isBalanced).toBe(false);
  });
});
