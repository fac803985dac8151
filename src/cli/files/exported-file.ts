import { readFileSync, statSync } from "node:fs";
import { basename } from "node:path";
import type { z } from "zod";
import { exportText } from "../../study/exports/file-text.js";
import { fileColumns } from "../../study/exports/proposed-columns.js";
import type { RecordProblem } from "../../study/reading/contradiction.js";
import { firstProblems } from "../../study/reading/csv-lines.js";
import { InputError, type Problem, problemsOf, valueAt } from "../../study/reading/problems.js";
import { parseText } from "../../study/reading/read.js";
import { decodeStudy } from "../../study/reading/study-bytes.js";

/** What a command that reads a file is given. */
export interface FileArguments {
  readonly file: string;
  /** Fields of the mapping, and what else the command takes. */
  readonly settings: ReadonlyArray<{ readonly id: string; readonly value: string }>;
  /** Whether it goes on without the lines that cannot be read. */
  readonly isPartial: boolean;
}

/** The text of an exported file. @throws InputError where there is none that can be read */
export function exportedFile(path: string): string {
  if (statSync(path, { throwIfNoEntry: false })?.isFile())
    return exportText(readFileSync(path), basename(path));
  const problem = { path: "FILE", found: `no file "${path}"`, allowed: "the path of an exported file" };
  throw new InputError("FILE", [{ ...problem, remedy: "Check the path." }]);
}

/** A study's text, and the values in it. @throws InputError */
export function studyTextAt(path: string): { readonly text: string; readonly document: unknown } {
  const text = decodeStudy(readFileSync(path), basename(path));
  return { text, document: parseText(text, basename(path)) };
}

/** What was set, by its name. */
export const settingsOf = (settings: FileArguments["settings"]): Record<string, string> =>
  Object.fromEntries(settings.map(({ id, value }) => [id, value]));

/** Columns of a file that are not mapped yet. @param example how they may be set */
function unmapped(file: string, allowed: string, example: string): Problem {
  const found = fileColumns(file);
  return {
    path: found ? `line ${found.line}` : "the file",
    found: `the columns ${found?.columns.map((each) => each.name).join(", ") ?? "none"}`,
    allowed,
    remedy: `For instance ${example}; the study remembers them.`,
  };
}

interface FileToMap {
  readonly name: string;
  readonly file: string;
  /** What is to be mapped, and how that may be set. */
  readonly wanted: string;
  readonly example: string;
}

/** The mapping as the study has it with what is set now. @throws InputError with the columns of the file where it is not whole */
export function wholeMapping<Mapping>(
  schema: z.ZodType<Mapping>,
  given: object,
  { name, file, wanted, example }: FileToMap,
): Mapping {
  const parsed = schema.safeParse(given);
  if (parsed.success) return parsed.data;
  throw new InputError(name, [unmapped(file, wanted, example), ...problemsOf(parsed.error.issues, given)]);
}

/** Words that the study has mapped with those of "WORD=MEANING; …" that are set now, by what they are of. */
export const withWords = (
  before: object,
  set: Readonly<Record<string, string | undefined>>,
): Record<string, object> =>
  Object.fromEntries(
    Object.entries(set).flatMap(([about, text]) =>
      text === undefined ? [] : [[about, { ...Object(valueAt(before, [about])), ...pairsIn(text) }]],
    ),
  );

/** A fault of a file in words for who gave it. */
export const problemIn = (name: string, { line, ...problem }: RecordProblem): Problem => ({
  ...problem,
  path: line === undefined ? name : `${name}, line ${line}`,
});

interface Asked {
  readonly about: string;
  readonly problem: RecordProblem;
}

/** Questions that a file leaves open, each with how it is answered. @throws InputError if there are any */
export function mustBeAnswered(
  name: string,
  asked: readonly Asked[],
  answers: Readonly<Record<string, string>>,
): void {
  if (asked.length === 0) return;
  throw new InputError(
    name,
    asked.map(({ about, problem }) => ({
      ...problemIn(name, problem),
      remedy: `${problem.remedy} ${answers[about]}`,
    })),
  );
}

/** Lines that cannot be read, unless the file may be read without them. @throws InputError */
export function mustBeWhole(name: string, refused: readonly RecordProblem[], isPartial: boolean): void {
  if (refused.length === 0 || isPartial) return;
  const problems = firstProblems(refused).map((each) => problemIn(name, each));
  const way = " Or add --partly to go on without these lines.";
  throw new InputError(
    name,
    problems.map((each, index) => (index === 0 ? { ...each, remedy: each.remedy + way } : each)),
  );
}

/** "a, b" of a setting. */
export const listIn = (text: string): string[] =>
  text
    .split(/[,;]/)
    .map((each) => each.trim())
    .filter((each) => each !== "");

/** "WORD=MEANING; WORD=MEANING" of a setting. */
const pairsIn = (text: string): Record<string, string> =>
  Object.fromEntries(
    text.split(";").flatMap((pair) => {
      const [word = "", id = ""] = pair.split("=").map((each) => each.trim());
      return word === "" ? [] : [[word, id]];
    }),
  );
