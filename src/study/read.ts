import { readFileSync, statSync } from "node:fs";
import { basename } from "node:path";
import { parseDocument } from "yaml";
import { contradictions } from "./consistency.js";
import type { Contradiction, SoundParts } from "./contradiction.js";
import { InputError, type Problem, pathText, problemsOf } from "./problems.js";
import { type StudyDocument, studySchema } from "./schema.js";

/** Largest study file that is read. */
export const largestStudyBytes = 2 * 1024 * 1024;

/** Reads a study file, JSON or YAML. @throws InputError with every problem found */
export function readStudyFile(path: string): StudyDocument {
  const name = basename(path);
  const bytes = sizeOf(path);
  if (bytes > largestStudyBytes) throw tooLarge(name, bytes);
  return readStudyText(readFileSync(path, "utf8"), name);
}

function sizeOf(path: string): number {
  try {
    const found = statSync(path);
    if (found.isFile()) return found.size;
  } catch {
    // reported below, with folders
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
export function readStudyText(text: string, name: string): StudyDocument {
  if (Buffer.byteLength(text) > largestStudyBytes) throw tooLarge(name, Buffer.byteLength(text));
  const document = parseText(text, name);
  const parsed = studySchema.safeParse(document);
  if (parsed.success) {
    const found = contradictions(soundParts(parsed.data));
    if (found.length > 0)
      throw new InputError(
        name,
        found.map((each) => problemOf(each, document)),
      );
    return parsed.data;
  }
  throw new InputError(name, [
    ...problemsOf(parsed.error.issues, document),
    ...contradictions(partsOf(document)).map((each) => problemOf(each, document)),
  ]);
}

function parseText(text: string, name: string): unknown {
  if (text.trim() === "") {
    throw single(name, "the file", "nothing", "a study as JSON or YAML", "Start from one of the examples.");
  }
  const parsed = parseDocument(text, { prettyErrors: true });
  if (parsed.errors.length > 0) {
    throw new InputError(
      name,
      parsed.errors.map((error) => ({
        path: `line ${error.linePos?.[0].line ?? 1}, column ${error.linePos?.[0].col ?? 1}`,
        found: error.message.split("\n")[0]?.replace(/ at line \d+, column \d+:$/, "") ?? "broken text",
        allowed: "JSON or YAML",
        remedy: "Correct the text there.",
      })),
    );
  }
  try {
    return parsed.toJS({ maxAliasCount: 100 });
  } catch (error) {
    const found = error instanceof Error ? error.message : "broken text";
    throw single(name, "the file", found, "JSON or YAML without deep aliases", "Write the values out.");
  }
}

function soundParts(document: StudyDocument): SoundParts {
  return { ...document, structures: document.structures.map((value, index) => ({ index, value })) };
}

/** The parts of a broken document that are sound by themselves, so that contradictions there are told as well. */
function partsOf(document: unknown): SoundParts {
  if (typeof document !== "object" || document === null) return { structures: [] };
  const { shape } = studySchema;
  const section = (key: string): unknown => Reflect.get(document, key);
  const list = section("structures");
  const structures = (Array.isArray(list) ? list : []).flatMap((item: unknown, index) => {
    const parsed = shape.structures.element.safeParse(item);
    return parsed.success ? [{ index, value: parsed.data }] : [];
  });
  return {
    study: shape.study.safeParse(section("study")).data,
    lake: shape.lake.safeParse(section("lake")).data,
    boats: shape.boats.safeParse(section("boats")).data,
    options: shape.options.safeParse(section("options")).data,
    money: shape.money.safeParse(section("money")).data,
    structures,
  };
}

function problemOf({ path, found, allowed }: Contradiction, document: unknown): Problem {
  return { path: pathText(path, document), found, allowed, remedy: "Correct one of them." };
}

function single(name: string, path: string, found: string, allowed: string, remedy: string): InputError {
  return new InputError(name, [{ path, found, allowed, remedy }]);
}

function tooLarge(name: string, bytes: number): InputError {
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
