import { X509Certificate } from "node:crypto";
import { fromBER } from "asn1js";
import { Certificate, ContentInfo, SignedData } from "pkijs";
import { counted } from "../counted.js";
import { keyKind } from "./certificate.js";
import { dataContent, signatureStart } from "./signature.js";
import { fingerprintOf } from "./signing-key.js";

/** What the signature of a file says, whatever the file holds. */
export type Signature =
  | { readonly state: "none" }
  | { readonly state: "sound"; readonly fingerprint: string }
  /** `why` is a sentence. */
  | { readonly state: "broken"; readonly why: string };

/** Numbers of at most ten digits: no file is as long. */
const numbers = /^0 (\d{1,10}) (\d{1,10}) (\d{1,10})\]/;

/**
 * Checks the signature of this program's form: one, over every byte but itself (ISO 32000-1, 12.8.1). Nothing is unpacked.
 * Only bytes that the holder of the key signed decide where the signature stands, so that none can be moved or added.
 */
export async function signatureOf(pdf: Uint8Array): Promise<Signature> {
  const file = Buffer.from(pdf.buffer, pdf.byteOffset, pdf.byteLength);
  const start = file.indexOf(signatureStart);
  if (start < 0) return { state: "none" };
  const found = numbers.exec(file.toString("latin1", start + signatureStart.length, start + 200));
  if (!found) return broken("its signature does not say which bytes it covers");
  const [before = 0, after = 0, rest = 0] = found.slice(1).map(Number);
  const end = after + rest;
  if (file.length < end) {
    return broken(
      `it is cut off: ${counted(end, "byte")} were signed, and it has ${file.length.toLocaleString("en-US")}`,
    );
  }
  if (file.length > end)
    return broken(`behind the bytes that were signed it has ${counted(file.length - end, "byte")} more`);
  const hole = file.toString("latin1", before, after);
  if (!/^<[0-9a-f]*>$/.test(hole)) return broken("something else stands where its signature was");
  const signed = Buffer.concat([file.subarray(0, before), file.subarray(after)]);
  return checked(new Uint8Array(signed), Buffer.from(hole.slice(1, -1), "hex"));
}

const broken = (why: string): Signature => ({ state: "broken", why });

async function checked(signed: Uint8Array<ArrayBuffer>, signature: Uint8Array): Promise<Signature> {
  const found = signedData(signature);
  if (!found) return broken("its signature cannot be read");
  const { data, certificate, der } = found;
  if (!isOfOurKind(data, certificate)) {
    return broken("it is signed with a kind of key that this program never uses");
  }
  return (await isSound(data, signed.buffer))
    ? { state: "sound", fingerprint: fingerprintOf(der) }
    : broken("its bytes are not those that were signed");
}

interface FoundSignature {
  readonly data: SignedData;
  readonly certificate: Certificate;
  readonly der: Uint8Array;
}

/** One signer with a certificate that signs itself, and nothing but the zeros of the free room behind them. */
function signedData(bytes: Uint8Array): FoundSignature | undefined {
  try {
    const { offset, result } = fromBER(bytes);
    if (offset <= 0 || bytes.subarray(offset).some((byte) => byte !== 0)) return undefined;
    const data = new SignedData({ schema: new ContentInfo({ schema: result }).content });
    const [certificate, ...others] = data.certificates ?? [];
    const isAlone = others.length === 0 && data.signerInfos.length === 1;
    if (!isAlone || !isDetached(data) || !(certificate instanceof Certificate)) return undefined;
    const der = new Uint8Array(certificate.toSchema(true).toBER());
    return signsItself(der) ? { data, certificate, der } : undefined;
  } catch {
    return undefined;
  }
}

/** The signature of the file does not cover the certificate, whose own does. */
function signsItself(der: Uint8Array): boolean {
  const certificate = new X509Certificate(der);
  return certificate.verify(certificate.publicKey);
}

/** A signature that brings the bytes that it stands for would be checked against those, and not against the file. */
const isDetached = ({ encapContentInfo: { eContent, eContentType } }: SignedData): boolean =>
  eContent === undefined && eContentType === dataContent;

/** A weaker key, such as a short one of RSA, could be guessed from its certificate, and anything signed with it. */
function isOfOurKind({ signerInfos: [signer] }: SignedData, { subjectPublicKeyInfo }: Certificate): boolean {
  const key = subjectPublicKeyInfo.toJSON();
  return (
    "crv" in key &&
    key.crv === keyKind.namedCurve &&
    signer?.digestAlgorithm.algorithmId === sha256 &&
    signer.signatureAlgorithm.algorithmId === ecdsaWithSha256
  );
}

/** RFC 5754, section 2.2, and RFC 5758, section 3.2. */
const [sha256, ecdsaWithSha256] = ["2.16.840.1.101.3.4.2.1", "1.2.840.10045.4.3.2"];

async function isSound(data: SignedData, signed: ArrayBuffer): Promise<boolean> {
  try {
    return await data.verify({ signer: 0, data: signed, checkChain: false });
  } catch {
    return false;
  }
}
