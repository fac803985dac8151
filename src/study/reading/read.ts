import { readFileSync, statSync } from "node:fs";
import { basename, dirname } from "node:path";
import { type Document, isScalar, LineCounter, parseDocument, visit, type YAMLParseError } from "yaml";
import type { StudyDocument } from "../format/schema.js";
import { withKeptRecords } from "../records/kept-records.js";
import { takeRecordsFrom } from "../records/record-folder.js";
import { characterProblems } from "./character-problems.js";
import { inTodaysTerms } from "./earlier-fields.js";
import { judged, together } from "./judged.js";
import {
  deepestGroups,
  hasTooManyAliases,
  isDeeper,
  isNestedTooDeep,
  lineNestedTooDeep,
  mostAliases,
} from "./nesting.js";
import { InputError, type Problem } from "./problems.js";
import { readRecordFiles, refuseRecordFiles } from "./record-files.js";
import { recordReaders } from "./record-readers.js";
import { mustBeUtf8 } from "./utf8.js";

/** Largest study file that is read. */
export const largestStudyBytes = 2 * 1024 * 1024;

/** A study as the parser gives it, its records' files read, before it is judged. */
export interface ParsedStudy {
  /** What problems are told of. */
  readonly name: string;
  readonly document: unknown;
  /** Problems of its files and characters. */
  readonly first: readonly Problem[];
}

/** Reads a study file, JSON or YAML. @throws InputError with every problem found */
export const readStudyFile = (path: string): StudyDocument => studyOf(parsedStudyFile(path));

/** @throws InputError if there is no such file, or none of JSON or YAML */
export function parsedStudyFile(path: string): ParsedStudy {
  const name = basename(path);
  const bytes = sizeOf(path);
  if (bytes > largestStudyBytes) throw tooLarge(name, bytes);
  return parsedInPlaceOf(path, mustBeUtf8(readFileSync(path), name));
}

/** A text as the file of a study would be read if it held it. @throws InputError if it is neither JSON nor YAML */
export const parsedInPlaceOf = (path: string, text: string): ParsedStudy =>
  parsedDocument(text, basename(path), {
    files: (document) => [
      ...readRecordFiles(document, dirname(path)),
      ...takeRecordsFrom(dirname(path), document),
    ],
    characters: characterProblems,
  });

function sizeOf(path: string): number {
  try {
    const found = statSync(path);
    if (found.isFile()) return found.size;
  } catch {
    // reported below, as folders are
  }
  throw single(
    basename(path),
    "the file",
    "no such file",
    "the path of a study file",
    `Check the path "${path}".`,
  );
}

/** Reads the text of a study. @throws InputError with every problem found */
export const readStudyText = (text: string, name: string): StudyDocument =>
  studyOf(parsedStudyText(text, name));

/** @throws InputError if it is neither JSON nor YAML */
export const parsedStudyText = (text: string, name: string): ParsedStudy =>
  parsedDocument(text, name, { files: refuseRecordFiles, characters: characterProblems });

/** Reads the study of an issued report, which may hold characters that were not yet refused. */
export const readIssuedText = (text: string, name: string): StudyDocument =>
  studyOf(parsedDocument(text, name, { files: refuseRecordFiles, characters: () => [] }));

type ProblemsOf = (document: unknown) => Problem[];

/** @param problemsOf `files` reads the files named by records, or reports why it cannot */
function parsedDocument(
  text: string,
  name: string,
  problemsOf: Readonly<Record<"files" | "characters", ProblemsOf>>,
): ParsedStudy {
  const bytes = Buffer.byteLength(text);
  if (bytes > largestStudyBytes) throw tooLarge(name, bytes);
  const document = parseText(text, name);
  const first = [...problemsOf.files(document), ...problemsOf.characters(document)];
  const whole = withKeptRecords(document);
  const told = new Set(first.map(({ path }) => path));
  const kept = whole.problems.filter(({ path }) => !told.has(path));
  return { name, document: whole.document, first: [...first, ...kept] };
}

/** The study that was parsed. @throws InputError with every problem found */
export function studyOf({ name, document, first }: ParsedStudy, readers = recordReaders()): StudyDocument {
  const { study, problems } = judged(document, readers);
  if (study && first.length === 0) return study;
  throw new InputError(name, together(first, problems));
}

/** What a text of JSON or YAML says. @throws InputError if it cannot be read */
export function parseText(text: string, name: string): unknown {
  const plain = plainJson(text);
  if (plain !== undefined && !isDeeper(plain, deepestGroups)) return inTodaysTerms(plain);
  return inTodaysTerms(contentOf(placedDocument(text, name), name));
}

/** The document in a text of JSON or YAML, with the places of all that is in it. @throws InputError if it cannot be read */
export function placedDocument(text: string, name: string): Document.Parsed {
  if (text.trim() === "") {
    throw single(name, "the file", "nothing", "a study as JSON or YAML", "Start from one of the examples.");
  }
  const deep = lineNestedTooDeep(text);
  if (deep !== undefined) throw tooDeep(name, `line ${deep}`);
  const lines = new LineCounter();
  const parsed = parseDocument(text, {
    ...{ uniqueKeys: false, lineCounter: lines, logLevel: "error" },
    // An error's excerpt takes time in proportion to its line.
    prettyErrors: false,
  });
  if (parsed.errors.length === 0 && isNestedTooDeep(parsed)) throw tooDeep(name, "the file");
  if (parsed.errors.length === 0 && hasTooManyAliases(parsed)) throw tooManyAliases(name);
  const found =
    parsed.errors.length > 0
      ? parsed.errors.slice(0, 1).map((error) => textProblem(error, lines))
      : repeatedKeys(parsed, lines);
  if (found.length > 0) throw new InputError(name, found);
  return parsed;
}

/** What a document says. @throws InputError if its aliases are too deep */
export function contentOf(document: Document, name: string): unknown {
  try {
    return document.toJS({ maxAliasCount: 100 });
  } catch (error) {
    const found = error instanceof Error ? error.message : "broken text";
    throw single(name, "the file", found, "JSON or YAML without deep aliases", "Write the values out.");
  }
}

/** A text that is just what JSON writes has no repeated keys, which reading it as YAML looks for at ten times the time. */
function plainJson(text: string): unknown {
  if (!text.startsWith("{")) return undefined;
  try {
    const found: unknown = JSON.parse(text);
    return JSON.stringify(found) === text ? found : undefined;
  } catch {
    return undefined;
  }
}

/** A text's first error; later ones mostly follow from it. */
function textProblem({ message, pos }: YAMLParseError, lines: LineCounter): Problem {
  const { line, col } = lines.linePos(pos[0]);
  return {
    path: `line ${line}, column ${col}`,
    found: (message.split("\n")[0] ?? "broken text").replace(/;.*$/, ""),
    allowed: "JSON or YAML",
    remedy: "Correct the text there.",
  };
}

const mostRepeated = 20;

/** First repeated keys within a group. The parser's own check takes quadratic time. */
function repeatedKeys(parsed: Document, lines: LineCounter): Problem[] {
  const problems: Problem[] = [];
  visit(parsed, {
    Map: (_key, group) => {
      const seen = new Set<unknown>();
      for (const { key } of group.items) {
        if (!isScalar(key) || problems.length >= mostRepeated) continue;
        if (seen.has(key.value))
          problems.push(repeatedKey(String(key.value), lines.linePos(key.range?.[0] ?? 0)));
        seen.add(key.value);
      }
    },
  });
  return problems;
}

const longestKey = 60;

function repeatedKey(key: string, { line, col }: { line: number; col: number }): Problem {
  return {
    path: `line ${line}, column ${col}`,
    found: `the key "${key.slice(0, longestKey)}" a second time`,
    allowed: "each key once in a group",
    remedy: "Remove one of the two.",
  };
}

const tooDeep = (name: string, path: string): InputError =>
  single(
    name,
    path,
    "groups nested too deep",
    `at most ${deepestGroups} groups within one another`,
    "Correct the text there.",
  );

const tooManyAliases = (name: string): InputError =>
  single(
    name,
    "the file",
    `more than ${mostAliases} anchors (&) and aliases (*)`,
    `at most ${mostAliases}`,
    "Write the values out.",
  );

function single(name: string, path: string, found: string, allowed: string, remedy: string): InputError {
  return new InputError(name, [{ path, found, allowed, remedy }]);
}

/** The error for a file that is too large. */
export function tooLarge(name: string, bytes: number): InputError {
  const megabytes = (size: number) => `${(size / 1024 / 1024).toFixed(1)} MB`;
  const allowed = `at most ${megabytes(largestStudyBytes)}`;
  return single(
    name,
    "the file",
    megabytes(bytes),
    allowed,
    "A study is a short text: check that this is the right file.",
  );
}
