import { PDFArray, PDFDict, PDFDocument, PDFName, PDFRawStream, PDFString, rgb } from "@cantoo/pdf-lib";
import { stableJson } from "../../src/assumptions/digest.js";
import { readAttachments } from "../../src/issue/attachments.js";
import { contentDigest } from "../../src/issue/digest.js";
import { attachmentNames, type ReadRecord } from "../../src/issue/record.js";
import { finishPdf } from "../../src/report/print/finished-pdf.js";

/** A way of altering an issued report, and what the issuing server should say of the place. */
export interface Attempt {
  readonly what: string;
  readonly forge: (pdf: Uint8Array) => Promise<Uint8Array> | Uint8Array;
  readonly where: RegExp;
}

/** Opened, changed and saved by another program. */
const edited = (change: (document: PDFDocument) => void | Promise<void>) => async (pdf: Uint8Array) => {
  const document = await PDFDocument.load(pdf, { updateMetadata: false });
  await change(document);
  return document.save({ useObjectStreams: true, updateFieldAppearances: false });
};

export const attempts: readonly Attempt[] = [
  {
    what: "a note put on a page",
    where: /page 1: notes and links/,
    forge: edited((document) => {
      const { context } = document;
      const note = {
        Type: "Annot",
        Subtype: "Text",
        Rect: [9, 9, 30, 30],
        Contents: PDFString.of("Approved"),
      };
      document.getPage(0).node.addAnnot(context.register(context.obj(note)));
    }),
  },
  {
    what: "“Approve” painted over page 1",
    where: /page 1: what is drawn/,
    forge: edited((document) => {
      const page = document.getPage(0);
      page.drawRectangle({ x: 40, y: 480, width: 300, height: 60, color: rgb(1, 1, 1) });
      page.drawText("Approve", { x: 50, y: 500 });
    }),
  },
  {
    what: "a page that is cropped",
    where: /page 1: its size and what is cropped/,
    forge: edited((document) => document.getPage(0).setCropBox(0, 0, 200, 200)),
  },
  {
    what: "another font",
    where: /page 1: its fonts and pictures/,
    forge: edited((document) => {
      for (const [, object] of document.context.enumerateIndirectObjects()) {
        if (object instanceof PDFDict && object.get(PDFName.of("Type")) === PDFName.of("Font")) {
          object.set(PDFName.of("BaseFont"), PDFName.of("Symbol"));
        }
      }
    }),
  },
  {
    what: "a text layer taken out",
    where: /page 1: what is drawn/,
    forge: edited((document) => {
      const { node } = document.getPage(0);
      const contents = node.lookup(PDFName.of("Contents"));
      const streams = contents instanceof PDFArray ? contents.asArray() : [];
      if (!streams.every((each) => document.context.lookup(each) instanceof PDFRawStream))
        throw new Error("no text");
      node.set(PDFName.of("Contents"), document.context.obj([]));
    }),
  },
  {
    what: "another title",
    where: /title, author and dates/,
    forge: edited((document) => document.setTitle("Approved request")),
  },
  {
    what: "an attachment more",
    where: /attachment quote\.txt/,
    forge: edited((document) =>
      document.attach(Buffer.from("a lower quote"), "quote.txt", { mimeType: "text/plain" }),
    ),
  },
  {
    what: "a script that runs when it is opened",
    where: /settings of the file/,
    forge: edited((document) => document.addJavaScript("vote", "app.alert('Approve')")),
  },
  {
    what: "a page more",
    where: /number of pages/,
    forge: edited((document) => {
      document.addPage();
    }),
  },
  {
    what: "nothing but being saved anew",
    where: /no reader’s program shows/,
    forge: edited(() => undefined),
  },
  {
    what: "its signature taken out",
    where: /signature is missing[\s\S]*form fields/,
    forge: edited((document) => {
      for (const key of ["AcroForm", "Perms"]) document.catalog.delete(PDFName.of(key));
      document.getPage(0).node.delete(PDFName.of("Annots"));
      for (const [reference, object] of document.context.enumerateIndirectObjects()) {
        if (object instanceof PDFDict && object.get(PDFName.of("Type")) === PDFName.of("Sig")) {
          document.context.delete(reference);
        }
      }
    }),
  },
  {
    what: "an end cut off",
    where: /cut off[\s\S]*starts as a report/,
    forge: (pdf) => pdf.subarray(0, pdf.length - 700),
  },
  {
    what: "half of it cut off",
    where: /starts as a report/,
    forge: (pdf) => pdf.subarray(0, Math.floor(pdf.length / 2)),
  },
  {
    what: "bytes added behind its end",
    where: /behind the bytes that were signed it has \d+ bytes more/,
    forge: (pdf) => Buffer.concat([pdf, Buffer.from("1 0 obj << >> endobj %%EOF")]),
  },
  {
    what: "another author",
    where: /author was “Ada <b>& Co” and is “The chair”/,
    forge: retold({ author: "The chair" }),
  },
  {
    what: "another date",
    where: /date of issue was “2026-01-02/,
    forge: retold({ issuedAt: "2026-02-02T03:04:05.000Z" }),
  },
  {
    what: "a blank added to the note",
    where: /note was “For the meeting of 5 January”/,
    forge: retold({ note: "For the meeting of 5 January " }),
  },
];

/** The record is another, with the digest that goes with it. */
export function retold(changes: Partial<ReadRecord>): (pdf: Uint8Array) => Promise<Uint8Array> {
  return async (pdf) => {
    const files = new Map(
      readAttachments(await PDFDocument.load(pdf)).map(({ name, bytes }) => [
        name,
        new TextDecoder().decode(bytes),
      ]),
    );
    const text = (name: string) => files.get(name) ?? "";
    const { format, digest: _digest, ...told } = { ...JSON.parse(text(attachmentNames.issue)), ...changes };
    const digest = contentDigest({
      ...told,
      studyText: text(attachmentNames.study),
      assumptions: JSON.parse(text(attachmentNames.assumptions)),
      figures: JSON.parse(text(attachmentNames.figures)),
    });
    return withAttachment(pdf, attachmentNames.issue, () => stableJson({ format, digest, ...told }));
  };
}

/** One of the attachments altered as text. */
export async function withAttachment(
  pdf: Uint8Array,
  name: string,
  alter: (text: string) => string,
): Promise<Uint8Array> {
  const document = await PDFDocument.load(pdf, { updateMetadata: false });
  const attachments = document.getAttachments().map((each) => ({
    name: each.name,
    type: each.mimeType ?? "",
    description: each.description ?? "",
    bytes: each.name === name ? Buffer.from(alter(new TextDecoder().decode(each.data))) : each.data,
  }));
  for (const each of attachments) document.detach(each.name);
  return finishPdf(await document.save({ useObjectStreams: true }), { attachments });
}
