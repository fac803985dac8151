import { ParseSpeeds, PDFDocument } from "@cantoo/pdf-lib";
import type { z } from "zod";
import { contentDigest } from "./digest.js";
import { pagesDigest } from "./pages-digest.js";
import {
  assumptionsSchema,
  attachmentNames,
  type IssueContent,
  type IssueRecord,
  issueRecordSchema,
} from "./record.js";

/** The file is no issued report of this program; the message says why, for the person who gave it. */
export class NotIssuedError extends Error {}

/** An issued PDF as it was read. */
export interface ReadIssue {
  readonly record: IssueRecord;
  readonly content: IssueContent;
  /** False where the attachments are not those that the digest was made for. */
  readonly attachmentsStand: boolean;
  /** False where what is printed is not what was issued. */
  readonly pagesStand: boolean;
}

/** Reads what is attached to an issued PDF. @throws NotIssuedError */
export async function readIssue(pdf: Uint8Array): Promise<ReadIssue> {
  const document = await loaded(pdf);
  const texts = attachedTexts(document);
  if (texts.size === 0) {
    throw new NotIssuedError("This PDF has no attachments: it is a draft, or not from this program.");
  }
  const textOf = (name: string): string => {
    const text = texts.get(name);
    if (text === undefined) throw new NotIssuedError(`This PDF has no attachment ${name}: ${notOurs}`);
    return text;
  };
  const record = parsed(issueRecordSchema, textOf(attachmentNames.issue), attachmentNames.issue);
  const { format: _format, digest, pagesDigest: issuedPages, ...told } = record;
  const content: IssueContent = {
    ...told,
    studyText: textOf(attachmentNames.study),
    assumptions: parsed(assumptionsSchema, textOf(attachmentNames.assumptions), attachmentNames.assumptions),
    figures: jsonOf(textOf(attachmentNames.figures), attachmentNames.figures),
  };
  return {
    record,
    content,
    attachmentsStand: contentDigest(content) === digest,
    pagesStand: pagesDigest(document) === issuedPages,
  };
}

const notOurs = "it is not an issued report of this program, or was altered.";

async function loaded(pdf: Uint8Array): Promise<PDFDocument> {
  try {
    return await PDFDocument.load(pdf, { updateMetadata: false, parseSpeed: ParseSpeeds.Fastest });
  } catch {
    throw new NotIssuedError("This file cannot be read as a PDF, or is locked by a password.");
  }
}

function attachedTexts(document: PDFDocument): Map<string, string> {
  try {
    return new Map(
      document
        .getAttachments()
        .map(({ name, data }) => [name, new TextDecoder("utf-8", { ignoreBOM: true }).decode(data)]),
    );
  } catch {
    throw new NotIssuedError(`The attachments of this PDF cannot be read: ${notOurs}`);
  }
}

function parsed<Content>(schema: z.ZodType<Content>, text: string, name: string): Content {
  const found = schema.safeParse(jsonOf(text, name));
  if (found.success) return found.data;
  throw new NotIssuedError(`The attachment ${name} is not as this program writes it: ${notOurs}`);
}

function jsonOf(text: string, name: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new NotIssuedError(`The attachment ${name} is no JSON: ${notOurs}`);
  }
}
