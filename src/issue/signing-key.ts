import { createHash, randomUUID, X509Certificate } from "node:crypto";
import { chmodSync, existsSync, linkSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { PlainError } from "../plain-error.js";
import type { KeyPair } from "./certificate.js";

/** The key with which an installation signs what it issues. */
export interface SigningKey {
  /** Of its certificate; undefined until the first report is issued, which makes the key. */
  readonly fingerprint: () => string | undefined;
  /** Makes the key if there is none. @throws SigningKeyError */
  readonly open: () => Promise<OpenKey>;
}

export interface OpenKey extends KeyPair {
  readonly fingerprint: string;
}

/** The file of the key cannot be used; the message says what to do. */
export class SigningKeyError extends PlainError {}

/** Beside the database and never in a backup of it: whoever has this file can issue in the installation's name. */
export const signingKeyFile = (folder: string): string => join(folder, "signing-key.pem");

/** SHA-256 of a certificate in groups of four digits, as it is printed and shown. */
export const fingerprintOf = (certificate: Uint8Array): string =>
  (createHash("sha256").update(certificate).digest("hex").match(/.{4}/g) ?? []).join(" ");

/** The key that is kept in a folder, for its owner alone. */
export function signingKeyIn(folder: string, now: () => Date): SigningKey {
  const file = signingKeyFile(folder);
  return {
    fingerprint: () => (existsSync(file) ? readKey(file).fingerprint : undefined),
    open: async () => {
      if (!existsSync(file)) await makeKey(file, folder, now());
      return readKey(file);
    },
  };
}

/** Of two processes that make it at once, one wins, and both use that. */
async function makeKey(file: string, folder: string, now: Date): Promise<void> {
  const { newKeyPair } = await import("./certificate.js");
  const { privateKey, certificate } = await newKeyPair(now);
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const partial = `${file}.${randomUUID()}.part`;
  try {
    writeFileSync(partial, pem("PRIVATE KEY", privateKey) + pem("CERTIFICATE", certificate), { mode: 0o600 });
    linkSync(partial, file);
  } catch (error) {
    if (!existsSync(file))
      throw new SigningKeyError(`The signing key cannot be written to ${file}: ${error}`);
  } finally {
    rmSync(partial, { force: true });
  }
}

function readKey(file: string): OpenKey {
  chmodSync(file, 0o600);
  const text = readFileSync(file, "latin1");
  const [privateKey, certificate] = [derOf(text, "PRIVATE KEY"), derOf(text, "CERTIFICATE")];
  if (!privateKey || !certificate || !isCertificate(certificate)) {
    throw new SigningKeyError(
      `${file} holds no private key with its certificate in PEM. Put the file back from where you keep it, or move it away: the next issue makes a new key, with another fingerprint.`,
    );
  }
  return { privateKey, certificate, fingerprint: fingerprintOf(certificate) };
}

function isCertificate(der: Uint8Array): boolean {
  try {
    return new X509Certificate(der).ca === false;
  } catch {
    return false;
  }
}

const pem = (label: string, der: Uint8Array): string => {
  const lines =
    Buffer.from(der)
      .toString("base64")
      .match(/.{1,64}/g) ?? [];
  return [`-----BEGIN ${label}-----`, ...lines, `-----END ${label}-----`, ""].join("\n");
};

function derOf(text: string, label: string): Uint8Array<ArrayBuffer> | undefined {
  const start = text.indexOf(`-----BEGIN ${label}-----`);
  const end = text.indexOf(`-----END ${label}-----`, start);
  if (start < 0 || end < 0) return undefined;
  return new Uint8Array(Buffer.from(text.slice(text.indexOf("\n", start), end), "base64"));
}
