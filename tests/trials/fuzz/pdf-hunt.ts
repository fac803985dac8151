import fc from "fast-check";
import { verifyIssue } from "#product/issue/verify.js";
import type { Hunt } from "./hunt.js";
import { issuedPdf } from "./issued-pdf.js";
import { judgeWork } from "./judge-work.js";

/** A change to a file's bytes: at a place, so many are taken out and others put in. */
interface Edit {
  readonly at: number;
  readonly taken: number;
  readonly put: Uint8Array;
}

const words = [
  ...["/Length 99999999999", "<<", ">>", "endobj", "stream\n", "0 0 R", "/Kids [1 0 R]", "xref", "/Names"],
  ...["%%EOF", "startxref 0", "/Prev 0", "/ByteRange [0 1 2 3]", "/Filter /FlateDecode"],
];

const edit: fc.Arbitrary<Edit> = fc.record({
  at: fc.nat(10_000_000),
  taken: fc.oneof(fc.nat(4), fc.nat(4000)),
  put: fc.oneof(
    fc.uint8Array({ maxLength: 40 }),
    fc.constantFrom(...words).map((text) => new TextEncoder().encode(text)),
  ),
});

function edited(bytes: Uint8Array, edits: readonly Edit[]): Uint8Array {
  return edits.reduce((before, { at, taken, put }) => {
    const start = at % (before.length + 1);
    return Buffer.concat([before.subarray(0, start), put, before.subarray(start + taken)]);
  }, bytes);
}

/** Computing a report again has trials of its own. */
const asIssued = {
  figuresMatch: true,
  isOfThisVersion: true,
  alterations: 0,
  sentences: [],
  differences: [],
};

const unknownHere = { isSame: false, isKnown: false, isOwnStudy: false, fingerprint: undefined };

/** An issued report with some of its bytes changed: it is told what it is, whatever it holds. */
export async function pdfHunt(): Promise<Hunt<readonly Edit[]>> {
  const issued = await issuedPdf();
  return {
    name: "PDFs",
    cases: fc.array(edit, { minLength: 1, maxLength: 4 }),
    judge: (edits) =>
      judgeWork(async () => {
        const { standing, answer, sentences } = await verifyIssue(edited(issued, edits), {
          kept: () => unknownHere,
          again: async () => asIssued,
        });
        const isSilent = [answer, ...sentences].some((sentence) => sentence.trim() === "");
        const faults = isSilent ? [{ what: "told without a word", detail: standing }] : [];
        return { faults, ending: standing };
      }),
  };
}
