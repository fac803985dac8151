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

/** A form of a page of the workbench. @throws InputError where it is none */
export function readForm(body: unknown): SentForm {
  const fields = texts.safeParse(body ?? {});
  if (!fields.success) throw new InputError("The form", problemsOf(fields.error.issues, body));
  const read = head.safeParse(fields.data);
  if (!read.success) throw new InputError("The form", problemsOf(read.error.issues, fields.data));
  const own = new Set(["#base", "#expected", "#author", "act"]);
  const posted = Object.fromEntries(Object.entries(fields.data).filter(([name]) => !own.has(name)));
  return {
    posted,
    base: read.data["#base"],
    expected: read.data["#expected"],
    author: read.data["#author"],
    act: read.data.act,
  };
}
