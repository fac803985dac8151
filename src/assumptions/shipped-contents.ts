import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { sha256 } from "./digest.js";

/** The shipped files as YAML reads them, which takes longer than a comparison. `npm run ship` writes it. */
export const contentsFile = fileURLToPath(
  new URL("../../src/assumptions/shipped-contents.json", import.meta.url),
);

/** By the names of the files: the digest of the text, and what it holds. */
type Contents = Readonly<Record<string, { readonly digest: string; readonly content: unknown }>>;

let read: Contents | undefined;

function shippedContents(): Contents {
  read ??= JSON.parse(readFileSync(contentsFile, "utf8")) as Contents;
  return read;
}

/** What a file holds whose text is to the letter as it was shipped; undefined for any other text. */
export function shippedContent(file: string, text: string): unknown {
  return isShipped(file, text) ? shippedContents()[file]?.content : undefined;
}

/** Whether these are all the shipped files, and each to the letter. */
export function areShipped(files: ReadonlyMap<string, string>): boolean {
  const names = Object.keys(shippedContents());
  return names.length === files.size && names.every((name) => isShipped(name, files.get(name)));
}

const isShipped = (file: string, text: string | undefined): boolean =>
  text !== undefined && shippedContents()[file]?.digest === sha256(text);

/** The file's own text: a line for each of the files, so that a change of one shows as that. */
export function contentsText(files: ReadonlyMap<string, string>, parsed: (text: string) => unknown): string {
  const lines = [...files].map(
    ([file, text]) =>
      `${JSON.stringify(file)}: ${JSON.stringify({ digest: sha256(text), content: parsed(text) })}`,
  );
  return `{\n${lines.join(",\n")}\n}\n`;
}
