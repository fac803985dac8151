import { basename } from "node:path";
import { type Edit, edited } from "../../editor/study-text.js";
import { typedList } from "../../study/exports/export-numbers.js";
import type { FileKind } from "../../study/exports/tried-export.js";
import { InputError, type Problem } from "../../study/reading/problems.js";
import { parsedInPlaceOf, studyOf } from "../../study/reading/read.js";
import { writeWhole } from "../write-whole.js";
import { exportedFile, leftOutTold, mustBeAnswered, mustBeWhole, type StudyText } from "./exported-file.js";
import { wholeMapping, withWords } from "./whole-mapping.js";

/** A command that reads a kind of exported file into a study. */
interface FileCommand<Mapping, Found> {
  readonly kind: FileKind<Mapping, Found>;
  /** How the study has such files mapped. */
  readonly mapped: unknown;
  /** Settings that give words their meanings, and those that list words. */
  readonly words: readonly string[];
  readonly lists?: readonly string[];
  /** What is to be mapped, in words. */
  readonly wanted: string;
  /** How each question is answered. */
  readonly answers: Readonly<Record<string, string>> & { readonly columns: string };
  readonly changes: (found: Found, said: SaidOfFile<Mapping>) => Changes;
}

interface SaidOfFile<Mapping> {
  readonly mapping: Mapping;
  readonly fileName: string;
  readonly origin: string | undefined;
}

interface Changes {
  /** What was read, in lines. */
  readonly shown: readonly string[];
  readonly edits: readonly Edit[];
  readonly told: readonly string[];
}

interface Asked {
  readonly file: string;
  /** The origin, and what is set of the mapping. */
  readonly settings: Readonly<Record<string, string>>;
  readonly isPartial: boolean;
}

/** Reads a file, and writes what is kept of it to the study. @returns what is told of it @throws InputError */
export function readInto<Mapping, Found>(
  study: StudyText,
  { file, settings, isPartial }: Asked,
  command: FileCommand<Mapping, Found>,
): string[] {
  const { path, text, document } = study;
  const fileName = basename(file);
  const exported = exportedFile(file);
  const { origin, ...set } = settings;
  const mapping = mappingOf(set, command, { name: fileName, file: exported });
  const { found, told, asked, refused } = command.kind.read(exported, mapping, document);
  mustBeAnswered(fileName, asked, command.answers);
  mustBeWhole(fileName, refused, isPartial && found !== undefined);
  if (found === undefined) return [];
  const changes = command.changes(found, { mapping, fileName, origin });
  const after = edited(text, changes.edits);
  mustStayReadable(study, after, fileName);
  writeWhole(path, after);
  return [...changes.shown, ...told, ...changes.told, ...leftOutTold(fileName, refused)];
}

/** What a file says may contradict the study, which then stays as it was. @throws InputError */
function mustStayReadable({ path, text }: StudyText, after: string, fileName: string): void {
  const problems = problemsIn(path, after);
  if (problems.length > 0 && problemsIn(path, text).length === 0)
    throw new InputError(`Nothing was written. ${basename(path)} with ${fileName}`, problems);
}

function problemsIn(path: string, text: string): readonly Problem[] {
  try {
    studyOf(parsedInPlaceOf(path, text));
    return [];
  } catch (error) {
    if (error instanceof InputError) return error.problems;
    throw error;
  }
}

/** The mapping that the study has, with what is set now. @throws InputError */
function mappingOf<Mapping, Found>(
  set: Readonly<Record<string, string>>,
  { kind, mapped, words, lists = [], wanted, answers }: FileCommand<Mapping, Found>,
  of: { readonly name: string; readonly file: string },
): Mapping {
  const before = Object(mapped ?? {});
  const listed = Object.entries(set).map(([id, text]) => [id, lists.includes(id) ? typedList(text) : text]);
  const meanings = withWords(before, Object.fromEntries(words.map((about) => [about, set[about]])));
  const given = { ...before, ...Object.fromEntries(listed), ...meanings };
  return wholeMapping(kind.schema, given, { ...of, wanted, example: answers.columns });
}
