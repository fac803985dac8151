import type { z } from "zod";
import { shortText } from "../../study/format/fields.js";
import { allowedCharacters, isPrintable } from "../../study/reading/characters.js";
import { describe, type Problem } from "../../study/reading/problems.js";

/** A text that a study can keep. */
export const printable = shortText.refine(isPrintable, allowedCharacters);

export const again = "Correct it and choose the button again.";

/** What is wrong with texts, by their labels: each is told beside the form, so that what was typed stays. */
export const textProblems = (
  texts: ReadonlyArray<readonly [text: string, label: string, schema: z.ZodType]>,
): Problem[] =>
  texts.flatMap(([text, label, schema]) => {
    const [issue] = text === "" ? [] : (schema.safeParse(text).error?.issues ?? []);
    return issue ? [{ path: label, found: describe(text), allowed: issue.message, remedy: again }] : [];
  });

/** A form without what an unfinished study has that a form cannot say. */
export function readable<Form>(schema: z.ZodType<Form>, fields: Readonly<Record<string, unknown>>): Form {
  const parsed = schema.safeParse(fields);
  if (parsed.success) return parsed.data;
  const wrong = new Set(parsed.error.issues.map(({ path }) => path[0]));
  return schema.parse(Object.fromEntries(Object.entries(fields).filter(([key]) => !wrong.has(key))));
}
