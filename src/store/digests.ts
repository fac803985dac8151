import { createHash } from "node:crypto";
import type { Database } from "better-sqlite3";

/** What a column of a row may hold. */
type Value = string | number | bigint | Uint8Array | null;

/** Of a row's values in their order, each with its length, so that none can move from one to the next. */
function digestOf(...values: readonly Value[]): string {
  const hash = createHash("sha256");
  for (const value of values) {
    const bytes = value instanceof Uint8Array ? value : Buffer.from(String(value));
    hash.update(`${bytes.length}\n`).update(bytes);
  }
  return hash.digest("hex");
}

/** Lets statements work out a SHA-256, as `kept_digest(value, …)`. Each connection needs it. */
export function knowDigests(database: Database): void {
  const functionOptions = { deterministic: true, directOnly: true, varargs: true };
  database.function("kept_digest", functionOptions, (...values) => digestOf(...values.map(asValue)));
}

function asValue(value: unknown): Value {
  if (value === null || value instanceof Uint8Array) return value;
  if (typeof value === "string" || typeof value === "number" || typeof value === "bigint") return value;
  throw new TypeError(`no value of a column: ${typeof value}`);
}

/**
 * The digest that a revision ought to have. The text is taken as its bytes: a flipped bit may leave what is no UTF-8.
 * @param at what stands before each column: a table's name with its point, or the "@" of a bound value
 */
export const revisionDigest = (at: string): string =>
  digestSql(at, ["id", "revision", "name", "saved_at", "author", "note", "origin", "file_name"], ["text"]);

/** The same of all of an issued report but its PDFs. */
export const recordDigest = (at: string): string =>
  digestSql(
    at,
    [
      ...["study_id", "number", "issued_at", "author", "note", "revision", "study_name", "file_name"],
      ...["engine_version", "seed", "digest"],
    ],
    ["study_text", "assumptions", "figures"],
  );

/** Of both its documents. */
export const pdfDigest = (at: string): string =>
  `kept_digest(${columnAt(at, "pdf")}, ${columnAt(at, "board_pdf")})`;

function digestSql(at: string, columns: readonly string[], texts: readonly string[]): string {
  const values = columns.map((column) => columnAt(at, column));
  const bytes = texts.map((column) => `CAST(${columnAt(at, column)} AS BLOB)`);
  return `kept_digest(${[...values, ...bytes].join(", ")})`;
}

/** Bound values have their names in the way of the code: "@savedAt". */
const columnAt = (at: string, column: string): string =>
  at === "@" ? `@${column.replace(/_(\w)/g, (_all, letter: string) => letter.toUpperCase())}` : at + column;

/** Whether anything of a row of issued reports is not as it was kept. */
export const issueIsDamaged = `(record_digest <> ${recordDigest("issue.")} OR pdf_digest <> ${pdfDigest("issue.")})`;

/** What of a database does not match the digest that was kept with it. */
export interface DamagedRows {
  readonly revisions: readonly { readonly id: string; readonly revision: number }[];
  readonly issues: readonly { readonly studyId: string; readonly number: number }[];
}

/**
 * Compares all that is kept with its digests; reads the whole database, which is at the current version. Values of the rows
 * themselves: SQLite takes those that an index has from there otherwise.
 */
export function damagedRows(database: Database): DamagedRows {
  return {
    revisions: database
      .prepare<[], DamagedRows["revisions"][number]>(
        `SELECT id, revision FROM revision NOT INDEXED WHERE digest <> ${revisionDigest("revision.")} ORDER BY id, revision`,
      )
      .all(),
    issues: database
      .prepare<[], DamagedRows["issues"][number]>(
        `SELECT study_id AS studyId, number FROM issue NOT INDEXED
         WHERE ${issueIsDamaged}
         ORDER BY study_id, number`,
      )
      .all(),
  };
}
