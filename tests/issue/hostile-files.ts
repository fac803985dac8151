const head =
  "%PDF-1.7\n1 0 obj << /Type /Catalog /Pages 2 0 R /Names << /EmbeddedFiles << /Names [(issue.json) 3 0 R] >> >> >> endobj\n";
const pages =
  "2 0 obj << /Type /Pages /Kids [] /Count 0 >> endobj\n3 0 obj << /Type /Filespec /EF << /F 4 0 R >> >> endobj\n";
const end = "\ntrailer << /Root 1 0 R >>\n%%EOF";

/** A PDF without pages, with whatever objects. */
export const bodyOf = (...objects: readonly (string | Uint8Array)[]): Buffer =>
  Buffer.concat([head, pages, ...objects, end].map((each) => Buffer.from(each)));

/** A PDF with one attachment, of whatever bytes and filter. */
export const withFile = (bytes: Uint8Array, filter: string): Buffer =>
  bodyOf(
    `4 0 obj << /Type /EmbeddedFile /Filter ${filter} /Length ${bytes.length} >> stream\n`,
    bytes,
    "\nendstream endobj",
  );

/** A PDF with many streams of the same bytes. */
export function withStreams(count: number, bytes: Uint8Array): Buffer {
  const parts = ["4 0 obj << /Filter /FlateDecode >> stream\n", bytes, "\nendstream endobj\n"];
  const one = Buffer.concat(parts.map((each) => Buffer.from(each)));
  return bodyOf(Buffer.concat(Array.from({ length: count }, () => one)));
}

export const blanks = (megabytes: number): Buffer => Buffer.alloc(megabytes * 1024 * 1024, 32);

/** The filter of what was packed, and packed again. */
export const twice = "[/FlateDecode /FlateDecode]";
