import { readFileSync, statSync } from "node:fs";
import { basename } from "node:path";
import { z } from "zod";
import { exportText } from "../../study/exports/file-text.js";
import { shortText } from "../../study/format/fields.js";
import type { RecordProblem } from "../../study/reading/contradiction.js";
import { firstProblems } from "../../study/reading/csv-lines.js";
import { InputError, type Problem, problemsOf, sentence } from "../../study/reading/problems.js";
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

/** A study into which a file is read. */
export interface StudyText {
  readonly path: string;
  readonly text: string;
  /** The values in it. */
  readonly document: unknown;
}

/** @throws InputError */
export function studyTextAt(path: string): StudyText {
  const text = decodeStudy(readFileSync(path), basename(path));
  return { path, text, document: parseText(text, basename(path)) };
}

/** What was set, by its name. @throws InputError for an origin that a study cannot keep */
export function settingsOf(settings: FileArguments["settings"]): Record<string, string> {
  const set = Object.fromEntries(settings.map(({ id, value }) => [id, value]));
  const { error } = z.object({ origin: shortText.optional() }).safeParse(set);
  if (error) throw new InputError("--set", problemsOf(error.issues, set));
  return set;
}

/** A fault of a file in words for who gave it. */
export const problemIn = (name: string, { line, ...problem }: RecordProblem): Problem => ({
  ...problem,
  path: line === undefined ? name : `${name}, line ${line}`,
});

interface Asked {
  readonly about: string;
  readonly problem: RecordProblem;
  readonly words?: readonly string[];
}

/** How a word is written that holds what parts words. */
const quoting = ({ words = [] }: Asked): string =>
  words.some((word) => /[;=]/.test(word)) ? " A word with “;” or “=” stands in single quotes." : "";

/** Questions that a file leaves open, each with how it is answered. @throws InputError if there are any */
export function mustBeAnswered(
  name: string,
  asked: readonly Asked[],
  answers: Readonly<Record<string, string>>,
): void {
  if (asked.length === 0) return;
  throw new InputError(
    name,
    asked.map((each) => ({
      ...problemIn(name, each.problem),
      remedy: `${each.problem.remedy} ${answers[each.about]}${quoting(each)}`,
    })),
  );
}

/** Lines that were left out, each with its fault. */
export const leftOutTold = (name: string, refused: readonly RecordProblem[]): string[] =>
  firstProblems(refused).map((each) => `Left out: ${sentence(problemIn(name, each))}`);

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
