import { BitString, Integer, Utf8String } from "asn1js";
import { AttributeTypeAndValue, BasicConstraints, Certificate, Extension, Time } from "pkijs";

/** A private key and the certificate that shows its public half, both as DER. */
export interface KeyPair {
  /** PKCS #8. */
  readonly privateKey: Uint8Array<ArrayBuffer>;
  /** X.509, signed by its own key: nobody vouches for it, and a reader's program says so. */
  readonly certificate: Uint8Array<ArrayBuffer>;
}

/** ECDSA on the curve P-256 with SHA-256 (FIPS 186-5): the one kind of key that reports are signed with. */
export const keyKind = { name: "ECDSA", namedCurve: "P-256" } as const;
export const hash = "SHA-256";

/** What a reader's program shows as the signer. */
export const signerName = "Ramp & Rack, an installation's own key";

const commonName = "2.5.4.3";
const [basicConstraints, keyUsage] = ["2.5.29.19", "2.5.29.15"];
/** Digital signature and non-repudiation, the first two bits (RFC 5280, 4.2.1.3). */
const forSignatures = new Uint8Array([0b1100_0000]);
/** RFC 5280, 4.1.2.5: no date after which it is no longer good. */
const endless = new Date("9999-12-31T23:59:59Z");

/** A new key with a certificate that is good from a day on. */
export async function newKeyPair(from: Date): Promise<KeyPair> {
  const keys = await crypto.subtle.generateKey(keyKind, true, ["sign", "verify"]);
  const certificate = new Certificate({ version: 2, serialNumber: serialNumber() });
  for (const name of [certificate.issuer, certificate.subject]) {
    name.typesAndValues.push(
      new AttributeTypeAndValue({ type: commonName, value: new Utf8String({ value: signerName }) }),
    );
  }
  certificate.notBefore = new Time({ type: 0, value: from });
  certificate.notAfter = new Time({ type: 1, value: endless });
  certificate.extensions = extensions();
  await certificate.subjectPublicKeyInfo.importKey(keys.publicKey);
  await certificate.sign(keys.privateKey, hash);
  return {
    privateKey: new Uint8Array(await crypto.subtle.exportKey("pkcs8", keys.privateKey)),
    certificate: new Uint8Array(certificate.toSchema(true).toBER()),
  };
}

/** Positive, and not 0. */
function serialNumber(): Integer {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[0] = ((bytes[0] ?? 0) & 0x7f) | 1;
  return new Integer({ valueHex: bytes.buffer });
}

function extensions(): Extension[] {
  const isCritical = { critical: true };
  return [
    new Extension({
      ...isCritical,
      extnID: basicConstraints,
      extnValue: new BasicConstraints({ cA: false }).toSchema().toBER(),
    }),
    new Extension({
      ...isCritical,
      extnID: keyUsage,
      extnValue: new BitString({ valueHex: forSignatures.buffer, unusedBits: 6 }).toBER(),
    }),
  ];
}
