import { deflateSync } from "node:zlib";
import { PDFDocument, PDFName, type PDFObject, PDFRawStream } from "@cantoo/pdf-lib";
import { expect, it, vi } from "vitest";
import { makeAccessible } from "../../src/report/print/accessible-pdf.js";

const description = { title: "Bay", targets: new Map<string, string>() };

/** As a browser prints it: one stream of drawing for each page. */
async function printed(pages: number): Promise<PDFDocument> {
  const document = await PDFDocument.create();
  const { context } = document;
  for (let page = 0; page < pages; page++) {
    const dict = context.obj({ Filter: "FlateDecode" });
    const drawn = PDFRawStream.of(dict, deflateSync("0 0 9 9 re\nf\n"));
    document.addPage().node.set(PDFName.of("Contents"), context.register(drawn));
  }
  return document;
}

it("four pages are unpacked at once, and all of them are marked", async () => {
  const document = await printed(20);
  const { context } = document;
  let [open, most, marked] = [0, 0, 0];
  const lookup = context.lookup.bind(context) as (reference: unknown) => PDFObject | undefined;
  const assign = context.assign.bind(context);
  vi.spyOn(context, "lookup").mockImplementation((reference: unknown) => {
    const object = lookup(reference);
    if (object instanceof PDFRawStream) most = Math.max(most, ++open);
    return object as never;
  });
  vi.spyOn(context, "assign").mockImplementation((reference, stream) => {
    [open, marked] = [open - 1, marked + 1];
    assign(reference, stream);
  });
  await makeAccessible(document, description);
  // That of the metadata is new.
  expect([most, marked - 1]).toEqual([4, 20]);
});

it("a page and the metadata that both fail are one fault, which whoever asked is told", async () => {
  const document = await printed(1);
  const failing = (what: string) => () => {
    throw new Error(`no ${what}`);
  };
  vi.spyOn(document, "getPages").mockImplementation(failing("pages"));
  vi.spyOn(document.context, "stream").mockImplementation(failing("metadata"));
  const unhandled = vi.fn();
  process.once("unhandledRejection", unhandled);
  await expect(makeAccessible(document, description)).rejects.toThrow("no pages");
  await new Promise(setImmediate);
  process.off("unhandledRejection", unhandled);
  expect(unhandled).not.toHaveBeenCalled();
});

it("the metadata of a report is well-formed XML whatever its title holds", async () => {
  const document = await PDFDocument.create();
  document.addPage();
  await makeAccessible(document, { title: "Nort\u0007h & \ud800 Bay\ufffe", targets: new Map() });
  const stream = document.context.lookup(document.catalog.get(PDFName.of("Metadata")));
  const text = stream instanceof PDFRawStream ? new TextDecoder().decode(stream.contents) : expect.fail();
  expect(text).toContain(">Nort\ufffdh &amp; \ufffd Bay\ufffd<");
});
