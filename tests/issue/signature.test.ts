import { createHash, verify, X509Certificate } from "node:crypto";
import { PDFDocument } from "@cantoo/pdf-lib";
import { Set as Asn1Set, fromBER, OctetString } from "asn1js";
import fc from "fast-check";
import { Certificate, ContentInfo, EncapsulatedContentInfo, SignedData } from "pkijs";
import { beforeAll, describe, expect, it } from "vitest";
import { addSignatureField, dataContent, signPdf } from "../../src/issue/signature.js";
import { signatureOf } from "../../src/issue/signature-check.js";
import { fingerprintOf, type OpenKey } from "../../src/issue/signing-key.js";
import { passingKey } from "./issued.js";

let key: OpenKey;
let signed: Buffer;

beforeAll(async () => {
  key = await passingKey().open();
  signed = Buffer.from(await signPdf(await unsigned(), key));
});

async function unsigned(): Promise<Uint8Array> {
  const document = await PDFDocument.create();
  document.addPage().drawText("a report");
  addSignatureField(document, new Date("2026-01-02T03:04:05Z"));
  return document.save({ useObjectStreams: true, updateFieldAppearances: false });
}

/** Where the signature stands in a file, and what it holds. */
function hole(pdf: Buffer) {
  const text = pdf.toString("latin1");
  const [, before = "", after = ""] = /\/ByteRange \[0 (\d+) (\d+) \d+\]/.exec(text) ?? [];
  const [start, end] = [Number(before), Number(after)];
  return { start, end, bytes: Buffer.from(text.slice(start + 1, end - 1), "hex") };
}

/** The file with another signature in the place of its own. */
function withSignature(pdf: Buffer, signature: Uint8Array): Buffer {
  const { start, end } = hole(pdf);
  const digits = Buffer.from(signature)
    .toString("hex")
    .padEnd(end - start - 2, "0");
  return Buffer.concat([pdf.subarray(0, start + 1), Buffer.from(digits), pdf.subarray(end - 1)]);
}

const signedDataOf = (pdf: Buffer) =>
  new SignedData({ schema: new ContentInfo({ schema: fromBER(hole(pdf).bytes).result }).content });

const asBytes = (data: SignedData) =>
  new Uint8Array(
    new ContentInfo({ contentType: ContentInfo.SIGNED_DATA, content: data.toSchema(true) })
      .toSchema()
      .toBER(),
  );

describe("a signature", () => {
  it("is sound, and names the key by its certificate", async () => {
    expect(await signatureOf(signed)).toEqual({
      state: "sound",
      fingerprint: fingerprintOf(key.certificate),
    });
  });

  // RFC 5652, section 5.4: the digest of the attributes, encoded as a set, is signed. OpenSSL checks it, through node:crypto.
  it("holds for OpenSSL too, over all bytes of the file but its own", () => {
    const { start, end, bytes } = hole(signed);
    const signer = signedDataOf(signed).signerInfos[0];
    const covered = Buffer.concat([signed.subarray(0, start), signed.subarray(end)]);
    expect(end + (signed.length - end)).toBe(signed.length);
    const attributes = new Asn1Set({
      value: (signer?.signedAttrs?.attributes ?? []).map((each) => each.toSchema()),
    });
    const digest = signer?.signedAttrs?.attributes.find(({ type }) => type.endsWith(".9.4"))?.values[0];
    expect(Buffer.from(digest.valueBlock.valueHexView).toString("hex")).toBe(
      createHash("sha256").update(covered).digest("hex"),
    );
    const { publicKey } = new X509Certificate(key.certificate);
    const signature = signer?.signature.valueBlock.valueHexView ?? new Uint8Array();
    expect(verify("sha256", Buffer.from(attributes.toBER()), publicKey, signature)).toBe(true);
    expect(bytes.length).toBeLessThan((end - start) / 2);
  });

  const flipped = (at: number, flip: number) => {
    const altered = Buffer.from(signed);
    altered[at] = (altered[at] ?? 0) ^ flip;
    return altered;
  };

  it("does not hold where any byte that it covers is another", async () => {
    const { start, end } = hole(signed);
    const covered = fc.oneof(fc.nat(start - 1), fc.integer({ min: end, max: signed.length - 1 }));
    await fc.assert(
      fc.asyncProperty(covered, fc.integer({ min: 1, max: 255 }), async (at, flip) => {
        expect((await signatureOf(flipped(at, flip))).state).not.toBe("sound");
      }),
      { numRuns: 300 },
    );
  });

  // Some bits of its own encoding mean nothing; none of them may make it the signature of another key.
  it("is never that of another key where any byte of its own is another", async () => {
    const { start, end } = hole(signed);
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: start, max: end - 1 }),
        fc.integer({ min: 1, max: 255 }),
        async (at, flip) => {
          const found = await signatureOf(flipped(at, flip));
          if (found.state === "sound") expect(found.fingerprint).toBe(key.fingerprint);
          else expect(found.state).toBe("broken");
        },
      ),
      { numRuns: 300 },
    );
  });

  it.each<[string, (pdf: Buffer) => Buffer, RegExp]>([
    [
      "bytes behind the end",
      (pdf) => Buffer.concat([pdf, Buffer.from("\n%%EOF")]),
      /behind the bytes that were signed it has 6 bytes more/,
    ],
    ["an end cut off", (pdf) => pdf.subarray(0, -10), /cut off: [\d,]+ bytes were signed/],
    [
      "another file's end",
      (pdf) => Buffer.concat([pdf.subarray(0, -9), Buffer.alloc(9, 32)]),
      /not those that were signed/,
    ],
    ["words where its digits stand", (pdf) => withText(pdf, ">> endobj"), /something else stands/],
    ["room behind it that is not empty", (pdf) => withText(pdf, "00ff>"), /cannot be read/],
    ["no range that it covers", (pdf) => replaced(pdf, "[0 ", "[9 "), /does not say which bytes/],
  ])("is broken by %s", async (_what, alter, why) => {
    expect(await signatureOf(alter(signed))).toEqual({ state: "broken", why: expect.stringMatching(why) });
  });

  // Without the check, the signature of any report could be put into another file together with the bytes it stands for.
  it("is none where it brings the bytes that it stands for", async () => {
    const { start, end } = hole(signed);
    const data = signedDataOf(signed);
    const covered = Buffer.concat([signed.subarray(0, start), signed.subarray(end)]);
    data.encapContentInfo = new EncapsulatedContentInfo({
      eContentType: dataContent,
      eContent: new OctetString({ valueHex: new Uint8Array(covered).buffer }),
    });
    const forged = replaced(signed, "/PageMode", "/PageXode");
    const larger = withRoom(forged, asBytes(data).length);
    expect(await signatureOf(withSignature(larger, asBytes(data)))).toMatchObject({ state: "broken" });
  });

  it("is none of two signers, or of a certificate that is missing", async () => {
    const twice = signedDataOf(signed);
    twice.signerInfos = [...twice.signerInfos, ...twice.signerInfos];
    const bare = signedDataOf(signed);
    bare.certificates = [];
    for (const data of [twice, bare]) {
      expect(await signatureOf(withSignature(signed, asBytes(data)))).toMatchObject({
        state: "broken",
        why: "its signature cannot be read",
      });
    }
  });

  // NIST SP 800-57 part 1, table 2: 1,024 bits of RSA have a strength of 80 bits at most, which nothing is signed with any more.
  it("is none of a kind of key that could be weak", async () => {
    const algorithm = { name: "RSASSA-PKCS1-v1_5", hash: "SHA-256", modulusLength: 1024 };
    const keys = await crypto.subtle.generateKey(
      { ...algorithm, publicExponent: new Uint8Array([1, 0, 1]) },
      true,
      ["sign", "verify"],
    );
    const data = signedDataOf(signed);
    const [certificate] = data.certificates ?? [];
    if (!(certificate instanceof Certificate)) throw new Error("no certificate");
    await certificate.subjectPublicKeyInfo.importKey(keys.publicKey);
    await certificate.sign(keys.privateKey, "SHA-256");
    const { start, end } = hole(signed);
    const covered = Buffer.concat([signed.subarray(0, start), signed.subarray(end)]);
    await data.sign(keys.privateKey, 0, "SHA-256", new Uint8Array(covered).buffer);
    expect(await signatureOf(withSignature(signed, asBytes(data)))).toMatchObject({
      state: "broken",
      why: expect.stringContaining("kind of key"),
    });
  });

  it("is absent from a file without one, and from none", async () => {
    const document = await PDFDocument.create();
    document.addPage();
    expect(await signatureOf(await document.save())).toEqual({ state: "none" });
    expect(await signatureOf(new Uint8Array())).toEqual({ state: "none" });
  });
});

const replaced = (pdf: Buffer, from: string, to: string) =>
  Buffer.from(pdf.toString("latin1").replace(from, to), "latin1");

/** Text at the end of the room for the signature. */
function withText(pdf: Buffer, text: string): Buffer {
  const { end } = hole(pdf);
  const altered = Buffer.from(pdf);
  altered.write(text, end - text.length, "latin1");
  return altered;
}

/** The file with as much room for its signature as another needs, and the range that goes with it. */
function withRoom(pdf: Buffer, bytes: number): Buffer {
  const { start, end } = hole(pdf);
  const room = Buffer.from(`<${"0".repeat(2 * bytes)}>`);
  const larger = Buffer.concat([pdf.subarray(0, start), room, pdf.subarray(end)]);
  const range = `0 ${start} ${start + room.length} ${pdf.length - end}]`;
  return Buffer.from(
    larger
      .toString("latin1")
      .replace(/(\/ByteRange \[)0 \d+ \d+ \d+\] */, (found, head: string) =>
        `${head}${range}`.padEnd(found.length),
      ),
    "latin1",
  );
}
