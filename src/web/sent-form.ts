import { z } from "zod";
import { InputError, problemsOf } from "../study/reading/problems.js";
import type { SentForm } from "./editing/edit-save.js";

const revision = z.coerce.number().int().min(1);
const texts = z.record(
  z.string(),
  z.union([z.string(), z.array(z.string()).transform((all) => all.at(-1) ?? "")]),
);
const head = z.object({
  "#base": revision,
  "#expected": revision,
  "#author": z.string().trim().max(200, "at most 200 characters").default(""),
  act: z.string().max(300).default(""),
});

/** What a form sent, by its schema. @throws InputError where it is none */
export function formIn<Form>(schema: z.ZodType<Form>, body: unknown): Form {
  const parsed = schema.safeParse(body ?? {});
  if (parsed.success) return parsed.data;
  throw new InputError("The form", problemsOf(parsed.error.issues, body));
}

/** A form of a page of the workbench. @throws InputError where it is none */
export function readForm(body: unknown): SentForm {
  const fields = formIn(texts, body);
  const { "#base": base, "#expected": expected, "#author": author, act } = formIn(head, fields);
  const own = new Set(["#base", "#expected", "#author", "act"]);
  const posted = Object.fromEntries(Object.entries(fields).filter(([name]) => !own.has(name)));
  return { posted, base, expected, author, act };
}
