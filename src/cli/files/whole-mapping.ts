import type { z } from "zod";
import { fileColumns, unmappedYet } from "../../study/exports/proposed-columns.js";
import { InputError, type Problem, problemsOf, valueAt } from "../../study/reading/problems.js";
import { problemIn } from "./exported-file.js";

interface FileToMap {
  readonly name: string;
  readonly file: string;
  /** What is to be mapped, and how that may be set. */
  readonly wanted: string;
  readonly example: string;
}

/** The mapping as the study has it with what is set now. @throws InputError with the columns of the file where one is not mapped */
export function wholeMapping<Mapping>(schema: z.ZodType<Mapping>, given: object, of: FileToMap): Mapping {
  const parsed = schema.safeParse(given);
  if (parsed.success) return parsed.data;
  const { issues } = parsed.error;
  const isUnmapped = issues.some(({ path }) => path.length === 1 && valueAt(given, path) === undefined);
  throw new InputError(of.name, [...(isUnmapped ? unmapped(of) : []), ...problemsOf(issues, given)]);
}

/** The columns to choose from. */
function unmapped({ name, file, wanted, example }: FileToMap): Problem[] {
  const found = fileColumns(file);
  if (!found) return unmappedYet(found).problems.map((each) => problemIn(name, each));
  return [
    {
      path: `line ${found.line}`,
      found: `the columns ${found.columns.map((each) => each.name).join(", ")}`,
      allowed: wanted,
      remedy: `For instance ${example}; the study remembers them.`,
    },
  ];
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

/** "WORD=MEANING; 'A; WORD'=MEANING" of a setting: quoted, a word may hold what parts them. */
const pairsIn = (text: string): Record<string, string> =>
  Object.fromEntries(
    (text.match(pairs) ?? []).flatMap((pair) => {
      const [, , quoted, rest = ""] = quotedPair.exec(pair) ?? [];
      const [word = "", id = ""] = quoted === undefined ? pair.split("=") : [quoted, rest];
      return word.trim() === "" ? [] : [[word.trim(), id.trim()]];
    }),
  );

const pairs = /\s*(["'])(?:(?!\1).)*\1\s*=[^;]*|[^;]+/gs;
const quotedPair = /^\s*(["'])((?:(?!\1).)*)\1\s*=(.*)$/s;
