import { readFileSync, writeFileSync } from "node:fs";

/**
 * Flips one bit of a closed database where a text stands, as a failing disk would: SQLite notices nothing.
 * @param text stands once in the file; the bit is in its last byte
 */
export function flipBitIn(file: string, text: string): void {
  const bytes = readFileSync(file);
  const at = bytes.indexOf(text);
  if (at < 0 || bytes.indexOf(text, at + 1) >= 0) throw new Error(`"${text}" does not stand there once`);
  const last = at + Buffer.byteLength(text) - 1;
  bytes.writeUInt8(bytes.readUInt8(last) ^ 1, last);
  writeFileSync(file, bytes);
}
