import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { projectRoot } from "../project-root.js";
import { sha256 } from "./digest.js";
import type { Alteration } from "./entry.js";
import { shippedFile } from "./shipped.js";

/** The project's assumptions as YAML reads them, which takes longer than a comparison. `npm run build` writes it. */
export const readAtBuildFile = join(projectRoot, "dist", "assumptions", "read-at-build.json");

export interface ReadAtBuild {
  /** By the names of the files: the digest of the text, and what it holds. */
  readonly files: Readonly<Record<string, { readonly digest: string; readonly content: unknown }>>;
  /** Of all these files together, against the record of what is shipped, whose text had this digest. */
  readonly alterations: readonly Alteration[];
  readonly record: string;
}

let read: ReadAtBuild | undefined;

/** Nothing where the program was compiled without its build. */
function readAtBuild(): ReadAtBuild {
  read ??= existsSync(readAtBuildFile)
    ? (JSON.parse(readFileSync(readAtBuildFile, "utf8")) as ReadAtBuild)
    : { files: {}, alterations: [], record: "" };
  return read;
}

/** What a file holds whose text is to the letter as it was at the build; undefined for any other text. */
export function contentAtBuild(file: string, text: string, { files } = readAtBuild()): unknown {
  return isAsBuilt(file, text, files) ? files[file]?.content : undefined;
}

/** What is altered in these files, if they and the record are those of the build, to the letter; else undefined. */
export function alterationsAtBuild(
  texts: ReadonlyMap<string, string>,
  { files, alterations, record } = readAtBuild(),
): readonly Alteration[] | undefined {
  const names = Object.keys(files);
  const areAll = names.length === texts.size && record === recordDigest();
  return areAll && names.every((name) => isAsBuilt(name, texts.get(name), files)) ? alterations : undefined;
}

const recordDigest = () => sha256(readFileSync(shippedFile, "utf8"));

const isAsBuilt = (file: string, text: string | undefined, files: ReadAtBuild["files"]): boolean =>
  text !== undefined && files[file]?.digest === sha256(text);

/** What to write at the build. */
export const toReadAtBuild = (
  texts: ReadonlyMap<string, string>,
  parsed: (text: string) => unknown,
  alterations: readonly Alteration[],
): ReadAtBuild => ({
  files: Object.fromEntries(
    [...texts].map(([file, text]) => [file, { digest: sha256(text), content: parsed(text) }]),
  ),
  alterations,
  record: recordDigest(),
});
