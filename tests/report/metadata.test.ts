import { PDFDocument, PDFName, PDFRawStream } from "@cantoo/pdf-lib";
import { expect, it } from "vitest";
import { makeAccessible } from "../../src/report/print/accessible-pdf.js";

it("the metadata of a report is well-formed XML whatever its title holds", async () => {
  const document = await PDFDocument.create();
  document.addPage();
  await makeAccessible(document, { title: "Nort\u0007h & \ud800 Bay\ufffe", targets: new Map() });
  const stream = document.context.lookup(document.catalog.get(PDFName.of("Metadata")));
  const text = stream instanceof PDFRawStream ? new TextDecoder().decode(stream.contents) : expect.fail();
  expect(text).toContain(">Nort\ufffdh &amp; \ufffd Bay\ufffd<");
});
