import { readFileSync, writeFileSync } from "node:fs";

/**
 * Flips one bit of a closed database where a text stands, as a failing disk would: SQLite notices nothing.
 * @param text stands once in the file; the bit is in its last byte
 */
export function flipBitIn(file: string, text: string): void {
  const bytes = readFileSync(file);
  const at = bytes.indexOf(text);
  if (at < 0 || bytes.indexOf(text, at + 1) >= 0) throw new Error(`"${text}" does not stand there once`);
  flip(bytes, at + Buffer.byteLength(text) - 1);
  writeFileSync(file, bytes);
}

/**
 * The same where an id stands in an index, or in the line of a study.
 * @param place how many bytes that are an id come before it in the file
 */
export function flipBitOfId(file: string, id: string, place: number): void {
  const bytes = readFileSync(file);
  let at = bytes.indexOf(id);
  for (let before = 0; before < place; before += 1) at = bytes.indexOf(id, at + 1);
  if (at < 0) throw new Error(`"${id}" does not stand there ${place + 1} times`);
  flip(bytes, at + Buffer.byteLength(id) - 1);
  writeFileSync(file, bytes);
}

function flip(bytes: Buffer, at: number): void {
  bytes.writeUInt8(bytes.readUInt8(at) ^ 1, at);
}
