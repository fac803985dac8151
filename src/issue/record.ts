import { z } from "zod";

/** Marks the attachments of this program, and their shape. */
export const issueFormat = "ramp-and-rack issued report, format 2";
/** Before reports were signed: it had a digest of its pages, which anyone could make. */
const unsignedFormat = "ramp-and-rack issued report, format 1";

/** Names of the files inside an issued PDF, in the order of the alphabet, as a PDF wants them. */
export const attachmentNames = {
  assumptions: "assumptions.json",
  /** In the full report alone, signed by itself. */
  board: "board-part.pdf",
  figures: "figures.json",
  issue: "issue.json",
  study: "study.yaml",
} as const;

/** A record that the study names by its digest, in the alphabet between issue and study. */
export const recordAttachment = (digest: string): string => `record-${digest}.csv`;
export const isRecordAttachment = (name: string): boolean => /^record-[0-9a-f]{64}\.csv$/.test(name);

const hexDigest = z.string().regex(/^[0-9a-f]{64}$/);

const recordFields = {
  /** Counts from 1 in each study. */
  number: z.int().min(1),
  /** ISO 8601, UTC. */
  issuedAt: z.iso.datetime(),
  author: z.string(),
  note: z.string(),
  study: z.strictObject({
    id: z.string(),
    name: z.string(),
    revision: z.int().min(1),
    fileName: z.string(),
  }),
  /** The issue before it, which it takes the place of. */
  supersedes: z.strictObject({ number: z.int().min(1), issuedAt: z.iso.datetime() }).nullable(),
  /** Version of the program, with the digest of its assumptions. */
  engineVersion: z.string(),
  /** Of the draws behind the odds; null where none were drawn. */
  seed: z.int().nullable(),
  digest: hexDigest,
};

const signedRecordSchema = z.strictObject({
  format: z.literal(issueFormat),
  ...recordFields,
  /** Fingerprint of the certificate of the key that signs it. */
  signedBy: z.string(),
  /** SHA-256 of the content of the method document that it was computed by. */
  method: hexDigest,
  /** Which of the two documents of the issue it is; absent from the time when there was the full report alone. */
  part: z.enum(["board", "all"]).optional(),
});

const unsignedRecordSchema = z.strictObject({
  format: z.literal(unsignedFormat),
  ...recordFields,
  pagesDigest: hexDigest,
});

/** What an issued report says of itself. */
export const issueRecordSchema = z.discriminatedUnion("format", [signedRecordSchema, unsignedRecordSchema]);

/** As it is written now. */
export type IssueRecord = z.infer<typeof signedRecordSchema>;
/** As it may be read. */
export type ReadRecord = z.infer<typeof issueRecordSchema>;

export const assumptionsSchema = z.strictObject({
  /** Ids of the assumptions that the comparison read. */
  used: z.array(z.string()),
  /** Text of each file by its name. */
  files: z.record(z.string(), z.string()),
});

/** What an issue is made from, which its digest stands for: that of both its documents. */
export interface IssueContent extends Omit<IssueRecord, "format" | "digest" | "part"> {
  readonly studyText: string;
  readonly assumptions: z.infer<typeof assumptionsSchema>;
  /** Results as plain JSON. */
  readonly figures: unknown;
}
