import { type PDFDocument, PDFInvalidObject, PDFName, PDFString } from "@cantoo/pdf-lib";
import { Signer, SignPdf } from "@signpdf/signpdf";
import { ObjectIdentifier, OctetString } from "asn1js";
import {
  Attribute,
  Certificate,
  ContentInfo,
  EncapsulatedContentInfo,
  IssuerAndSerialNumber,
  SignedAndUnsignedAttributes,
  SignedData,
  SignerInfo,
} from "pkijs";
import { hash, type KeyPair, keyKind, signerName } from "./certificate.js";

/** Object identifiers of RFC 5652 (section 4, 11.1 and 11.2). */
export const dataContent = "1.2.840.113549.1.7.1";
const [contentType, messageDigest] = ["1.2.840.113549.1.9.3", "1.2.840.113549.1.9.4"];

/** How the dictionary of a signature of this program starts; a test for it needs no reading of the PDF. */
export const signatureStart =
  "<< /Type /Sig /Filter /Adobe.PPKLite /SubFilter /adbe.pkcs7.detached /ByteRange [";

/** Digits that are kept free for the signature, twice what it takes. */
const digitsForSignature = 4096;
const blank = "/**********";

/**
 * Puts a signature field into a document that is about to be saved, with room for the signature (ISO 32000-1, 12.8).
 * It certifies: no change is allowed, notes included. The field is on the first page and not seen.
 */
export function addSignatureField(document: PDFDocument, signedAt: Date): void {
  const { context, catalog } = document;
  const page = document.getPage(0);
  // Written as it stands, since a dictionary would be packed with others and could not be filled in afterwards.
  const signature = context.register(
    PDFInvalidObject.of(Buffer.from(signatureDictionary(signedAt), "latin1")),
  );
  const field = context.register(
    context.obj({
      Type: "Annot",
      Subtype: "Widget",
      FT: "Sig",
      T: PDFString.of("Issued report"),
      V: signature,
      Rect: [0, 0, 0, 0],
      F: hiddenAndLocked,
      P: page.ref,
    }),
  );
  page.node.addAnnot(field);
  catalog.set(PDFName.of("AcroForm"), context.obj({ SigFlags: 3, Fields: [field] }));
  catalog.set(PDFName.of("Perms"), context.obj({ DocMDP: signature }));
}

/** ISO 32000-1, table 165: hidden, printed, locked. */
const hiddenAndLocked = 2 + 4 + 128;

function signatureDictionary(signedAt: Date): string {
  const date = signedAt.toISOString().replaceAll(/[-:T]|\.\d+Z/g, "");
  return [
    `${signatureStart}0 ${blank} ${blank} ${blank}]`,
    `/Contents <${"0".repeat(digitsForSignature)}>`,
    `/M (D:${date}Z) /Name (${signerName})`,
    "/Reference [<< /Type /SigRef /TransformMethod /DocMDP",
    "/TransformParams << /Type /TransformParams /P 1 /V /1.2 >> >>] >>",
  ].join(" ");
}

/** Signs all bytes of a saved document that has a signature field, but for the signature itself. */
export const signPdf = (pdf: Uint8Array, key: KeyPair): Promise<Uint8Array> =>
  new SignPdf().sign(Buffer.from(pdf), new KeySigner(key));

class KeySigner extends Signer {
  constructor(private readonly key: KeyPair) {
    super();
  }

  override async sign(pdf: Buffer): Promise<Buffer> {
    const bytes = new Uint8Array(pdf);
    const certificate = Certificate.fromBER(this.key.certificate);
    const signed = new SignedData({
      version: 1,
      encapContentInfo: new EncapsulatedContentInfo({ eContentType: dataContent }),
      signerInfos: [await signerInfo(bytes, certificate)],
      certificates: [certificate],
    });
    const privateKey = await crypto.subtle.importKey("pkcs8", this.key.privateKey, keyKind, false, ["sign"]);
    await signed.sign(privateKey, 0, hash, bytes);
    const content = new ContentInfo({ contentType: ContentInfo.SIGNED_DATA, content: signed.toSchema(true) });
    return Buffer.from(content.toSchema().toBER());
  }
}

async function signerInfo(bytes: BufferSource, { issuer, serialNumber }: Certificate): Promise<SignerInfo> {
  const digest = await crypto.subtle.digest(hash, bytes);
  const attributes = [
    new Attribute({ type: contentType, values: [new ObjectIdentifier({ value: dataContent })] }),
    new Attribute({ type: messageDigest, values: [new OctetString({ valueHex: digest })] }),
  ];
  return new SignerInfo({
    version: 1,
    sid: new IssuerAndSerialNumber({ issuer, serialNumber }),
    signedAttrs: new SignedAndUnsignedAttributes({ type: 0, attributes }),
  });
}
