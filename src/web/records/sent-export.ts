import { z } from "zod";

const text = z.string().trim().default("");
const texts = z
  .union([z.string(), z.array(z.string())])
  .transform((value) => (typeof value === "string" ? [value] : value))
  .default([]);

/** What a page of an exported file sends beside the file; what is wrong with a text is told beside it, so that it stays. */
export const sentExport = z.object({
  columns: z.record(z.string(), text).default({}),
  dates: z.enum(["", "month-first", "day-first"]).default(""),
  decimals: z.enum(["", "point", "comma"]).default(""),
  /** Words of the file, what each is about, and what it means, in the same order. */
  about: texts,
  word: texts,
  meaning: texts,
  /** What else the kind of file asks, by name. */
  set: z.record(z.string(), texts).default({}),
  origin: text,
  upload: z.union([z.literal(""), z.uuid()]).default(""),
  author: text,
  act: z.enum(["read", "keep"]).default("read"),
});

export type ExportForm = z.output<typeof sentExport>;

/** The first that a form says for a setting. */
export const setting = ({ set }: ExportForm, key: string): string => set[key]?.[0]?.trim() ?? "";
