import { isDigestPrinted } from "./printed-digest.js";
import { NotIssuedError, type ReadIssue, readIssue } from "./read-issue.js";
import { type Signature, signatureOf } from "./signature-check.js";
import { whereAltered } from "./where-altered.js";

/** What a file turned out to be. */
export type Authenticity = "issued here" | "issued by a key" | "altered" | "unknown";

/** What is kept here of what a file claims to be. */
export interface Kept {
  /** The file is to the byte one that was issued here. */
  readonly isSame: boolean;
  /** What was issued here under its digest or else its number, or, of a file that is cut off, what it is the start of. */
  readonly pdf?: Uint8Array;
  /** A report of its digest was issued here. */
  readonly isKnown: boolean;
  /** It claims to be of a study that is kept here. */
  readonly isOwnStudy: boolean;
  /** Of the key that reports are signed with here, if there is one yet. */
  readonly fingerprint: string | undefined;
}

export interface Findings {
  readonly standing: Authenticity;
  readonly answer: string;
  readonly sentences: readonly string[];
}

/** A file as far as it can be read. */
interface GivenFile {
  readonly pdf: Uint8Array;
  readonly signature: Signature;
  /** The issued report that it is, or why it is none. */
  readonly issue: ReadIssue | NotIssuedError;
}

export const givenFile = async (pdf: Uint8Array): Promise<GivenFile> => ({
  pdf,
  signature: await signatureOf(pdf),
  issue: await readOrWhyNot(pdf),
});

async function readOrWhyNot(pdf: Uint8Array): Promise<ReadIssue | NotIssuedError> {
  try {
    return await readIssue(pdf);
  } catch (error) {
    if (error instanceof NotIssuedError) return error;
    throw error;
  }
}

/** Tells what a file is from its signature, from what is in it, and from what is kept here. */
export async function authenticityOf(given: GivenFile, kept: Kept): Promise<Findings> {
  const { signature, issue } = given;
  if (kept.isSame) return issuedHere;
  const isSigned = signature.state === "sound" && !(issue instanceof NotIssuedError);
  if (isSigned && !kept.isKnown) return signedElsewhere(given.pdf, issue, signature.fingerprint, kept);
  if (kept.pdf) return altered(given, await heldAgainst(issue, kept.pdf));
  if (signature.state === "broken") return altered(given);
  if (isCutOff(given.pdf))
    return altered(given, ["It is cut off: a PDF ends with a mark that this one lacks."]);
  if (issue instanceof NotIssuedError) return unknown(issue.message);
  return "signedBy" in issue.record ? altered(given) : unknown(notSigned);
}

const [startMark, endMark] = ["%PDF-", "%%EOF"];

/** Readers look for the mark in the last kilobyte (ISO 32000-1, 7.5.5, for the mark; the last kilobyte is common practice, no source). */
const isCutOff = (pdf: Uint8Array): boolean =>
  Buffer.from(pdf.subarray(0, startMark.length)).toString("latin1") === startMark &&
  !Buffer.from(pdf.subarray(-1024)).toString("latin1").includes(endMark);

const issuedHere: Findings = {
  standing: "issued here",
  answer: "Issued here, unaltered.",
  sentences: ["The file is to the byte the one that was issued and is kept here."],
};

const notSigned =
  "It is from before reports were signed, and was not issued here: nothing in it shows who issued it, or whether it is unaltered.";

const unknown = (why: string, ...sentences: readonly string[]): Findings => ({
  standing: "unknown",
  answer: `Unknown. ${why}`,
  sentences,
});

function altered({ signature, issue }: GivenFile, where: readonly string[] = []): Findings {
  const wasSigned = issue instanceof NotIssuedError || "signedBy" in issue.record;
  return {
    standing: "altered",
    answer: "Altered. This is not the report as it was issued.",
    sentences: [...(wasSigned ? [signatureSentence(signature)] : []), ...where],
  };
}

function signatureSentence(signature: Signature): string {
  if (signature.state === "none") {
    return "Its signature is missing, or another program wrote it anew and it covers nothing any more.";
  }
  if (signature.state === "broken") return `Its signature does not hold: ${signature.why}.`;
  return `It is signed with the key ${signature.fingerprint}.`;
}

async function heldAgainst(issue: GivenFile["issue"], kept: Uint8Array): Promise<string[]> {
  if (!(issue instanceof NotIssuedError)) return whereAltered(await readIssue(kept), issue);
  return [
    "It starts as a report that was issued and is kept here, and cannot be read to its end.",
    issue.message,
  ];
}

/** A signature that holds, on a report of a digest that is not known here. */
async function signedElsewhere(
  pdf: Uint8Array,
  issue: ReadIssue,
  fingerprint: string,
  kept: Kept,
): Promise<Findings> {
  const { record, attachmentsStand } = issue;
  const isOwnKey = fingerprint === kept.fingerprint;
  if (kept.isOwnStudy) {
    return unknown(
      "It names a study that is kept here, and no such report was issued here.",
      isOwnKey
        ? "It is signed with this installation’s own key: it may have been issued after the backup that the present data came from."
        : `It is signed with the key ${fingerprint}, which is not this installation’s.`,
      ...(kept.pdf ? await heldAgainst(issue, kept.pdf) : []),
    );
  }
  const faults = [
    ...("signedBy" in record && record.signedBy === fingerprint ? [] : ["The report names another key."]),
    ...(attachmentsStand ? [] : ["What is attached is not what its digest was made for."]),
    ...((await isDigestPrinted(pdf, record.digest))
      ? []
      : ["Its digest is not the one printed on its pages."]),
  ];
  if (faults.length > 0) {
    return unknown(`It is signed with the key ${fingerprint}, but is no report of this program.`, ...faults);
  }
  return {
    standing: "issued by a key",
    answer: `Issued by the holder of the key ${fingerprint}, unaltered since.`,
    sentences: [
      isOwnKey
        ? "That is this installation’s own key."
        : "Whose key that is, only its holder can say: compare it with the fingerprint that the issuing server shows.",
    ],
  };
}
