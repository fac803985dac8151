import { z } from "zod";
import { authorName } from "../author.js";

const longest = "at most 200 characters";
const text = z.string().trim().max(200, longest).default("");
const texts = z
  .union([z.string().max(200, longest), z.array(z.string().max(200, longest))])
  .transform((value) => (typeof value === "string" ? [value] : value))
  .default([]);

/** What a page of an exported file sends beside the file. */
export const sentExport = z.object({
  columns: z.record(z.string().max(40, "at most 40 characters"), text).default({}),
  dates: z.enum(["", "month-first", "day-first"]).default(""),
  decimals: z.enum(["", "point", "comma"]).default(""),
  /** Words of the file, what each is about, and what it means, in the same order. */
  about: texts,
  word: texts,
  meaning: texts,
  /** What else the kind of file asks, by name. */
  set: z.record(z.string().max(40, "at most 40 characters"), texts).default({}),
  origin: text,
  upload: z.union([z.literal(""), z.uuid()]).default(""),
  author: authorName.default(""),
  act: z.enum(["read", "keep"]).default("read"),
});

export type ExportForm = z.output<typeof sentExport>;

/** The first that a form says for a setting. */
export const setting = ({ set }: ExportForm, key: string): string => set[key]?.[0]?.trim() ?? "";
