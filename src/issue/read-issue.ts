import { ParseSpeeds, PDFDocument } from "@cantoo/pdf-lib";
import type { z } from "zod";
import { takeRecord } from "../study/records/at-hand.js";
import { readAttachments } from "./attachments.js";
import { contentDigest } from "./digest.js";
import { atMost, checkFileLimits, FileLimitError, fileLimits } from "./file-limits.js";
import {
  assumptionsSchema,
  attachmentNames,
  type IssueContent,
  isRecordAttachment,
  issueRecordSchema,
  type ReadRecord,
} from "./record.js";

/** The file is no issued report of this program; the message says why, for the person who gave it. */
export class NotIssuedError extends Error {}

/** An issued PDF as it was read. */
export interface ReadIssue {
  readonly document: PDFDocument;
  readonly record: ReadRecord;
  readonly content: Pick<IssueContent, "study" | "seed" | "studyText" | "assumptions" | "figures">;
  /** False where the attachments are not those that the digest was made for. */
  readonly attachmentsStand: boolean;
}

/** Reads what is attached to an issued PDF. @throws NotIssuedError */
export async function readIssue(pdf: Uint8Array): Promise<ReadIssue> {
  const document = await readPdf(pdf);
  const texts = attachedTexts(document);
  if (texts.size === 0) {
    throw new NotIssuedError("This PDF has no attachments: it is a draft, or not from this program.");
  }
  // A record is known by the digest of its own text: one that was altered is not the one that the study names.
  for (const [name, text] of texts) if (isRecordAttachment(name)) takeRecord(text);
  const textOf = (name: string): string => {
    const text = texts.get(name);
    if (text === undefined) throw new NotIssuedError(`This PDF has no attachment ${name}: ${notOurs}`);
    return text;
  };
  const record = parsed(issueRecordSchema, textOf(attachmentNames.issue), attachmentNames.issue);
  const attached = {
    studyText: textOf(attachmentNames.study),
    assumptions: parsed(assumptionsSchema, textOf(attachmentNames.assumptions), attachmentNames.assumptions),
    figures: jsonOf(textOf(attachmentNames.figures), attachmentNames.figures),
  };
  const { study, seed } = record;
  return {
    document,
    record,
    content: { study, seed, ...attached },
    attachmentsStand: contentDigest({ ...digested(record), ...attached }) === record.digest,
  };
}

/** What the digest stands for, of what a record says. */
function digested(record: ReadRecord): object {
  if ("signedBy" in record) {
    const { format: _format, digest: _digest, part: _part, ...recordFields } = record;
    return recordFields;
  }
  const { format: _format, digest: _digest, pagesDigest: _pages, ...recordFields } = record;
  return recordFields;
}

const notOurs = "it is not an issued report of this program, or was altered.";

/** Reads a PDF that may be anybody's, within limits. @throws NotIssuedError */
async function readPdf(pdf: Uint8Array): Promise<PDFDocument> {
  try {
    checkFileLimits(pdf);
    const document = await PDFDocument.load(pdf, { updateMetadata: false, parseSpeed: ParseSpeeds.Fastest });
    atMost(document.context.enumerateIndirectObjects().length, fileLimits.objects, "objects");
    atMost(document.getPageCount(), fileLimits.pages, "pages");
    return document;
  } catch (error) {
    if (error instanceof FileLimitError) {
      throw new NotIssuedError(`This file is no issued report of this program. ${error.message}`);
    }
    throw new NotIssuedError("This file cannot be read as a PDF, or is locked by a password.");
  }
}

function attachedTexts(document: PDFDocument): Map<string, string> {
  const decoder = new TextDecoder("utf-8", { ignoreBOM: true });
  try {
    return new Map(readAttachments(document).map(({ name, bytes }) => [name, decoder.decode(bytes)]));
  } catch (error) {
    const why = error instanceof FileLimitError ? ` ${error.message}` : "";
    throw new NotIssuedError(`The attachments of this PDF cannot be read: ${notOurs}${why}`);
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
