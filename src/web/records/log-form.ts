import { z } from "zod";
import { childOf, itemsOf } from "../../editor/form-values.js";
import { valueAt } from "../../study/reading/problems.js";
import { authorName } from "../author.js";

const text = z.string().trim().max(200, "at most 200 characters").default("");
const texts = z
  .union([
    z.string().max(200, "at most 200 characters"),
    z.array(z.string().max(200, "at most 200 characters")),
  ])
  .transform((value) => (typeof value === "string" ? [value] : value))
  .default([]);

/** Columns of a log of boats in their order on the page, and by what their names are likely known. */
export const logColumns = [
  {
    key: "date",
    label: "Column of the dates, or of the seasons",
    needed: true,
    likely: /date|day|season|year/i,
  },
  {
    key: "class",
    label: "Column of the classes of boats",
    needed: true,
    likely: /class|type|kind|vessel/i,
  },
  {
    key: "setAside",
    label: "Column of boats held for full inspection",
    needed: true,
    likely: /held|hold|set.?aside/i,
  },
  {
    key: "fouled",
    label: "Column of boats with mussels",
    needed: true,
    likely: /mussel|foul/i,
  },
  {
    key: "screened",
    label: "Column of the number screened, if a line is a sum",
    needed: false,
    likely: /screened/i,
  },
  {
    key: "quickCheck",
    label: "Column of the minutes of the quick check",
    needed: false,
    likely: undefined,
  },
  {
    key: "fullInspection",
    label: "Column of the minutes of the full inspection",
    needed: false,
    likely: undefined,
  },
] as const;

/** What the page of logs sends beside the file. */
export const sentLog = z.object({
  columns: z.record(z.string().max(40, "at most 40 characters"), text).default({}),
  dates: z.enum(["", "month-first", "day-first"]).default(""),
  decimals: z.enum(["", "point", "comma"]).default(""),
  yes: text,
  /** Words of the column of classes, and the class that each means, in the same order. */
  word: texts,
  meaning: texts,
  /** Options whose stations get the measured minutes. */
  stations: texts,
  origin: text,
  upload: z.union([z.literal(""), z.uuid()]).default(""),
  author: authorName.default(""),
  act: z.enum(["read", "keep"]).default("read"),
});

export type LogForm = z.output<typeof sentLog>;

/** The form as a study has its log mapped. */
export function logFormOf(document: unknown, author: string): LogForm {
  const at = (...keys: string[]) => valueAt(document, ["boats", "seasons", ...keys]);
  const mapped = (key: string) => {
    const value = at("export", key);
    return typeof value === "string" ? value : "";
  };
  const classes = Object.entries(Object(at("export", "classes")));
  const yes = at("export", "yes");
  return sentLog.parse({
    columns: Object.fromEntries(logColumns.map(({ key }) => [key, mapped(key)])),
    dates: mapped("dates"),
    decimals: mapped("decimals"),
    yes: Array.isArray(yes) ? yes.join(", ") : "",
    word: classes.map(([word]) => word),
    meaning: classes.map(([, id]) => String(id)),
    origin: String(at("origin") ?? "").slice(0, 200),
    author,
  });
}

/** The mapping as it is typed: empty fields say nothing. */
export function logMappingOf({
  columns,
  dates,
  decimals,
  yes,
  word,
  meaning,
}: LogForm): Record<string, unknown> {
  const known = logColumns.map(({ key }) => [key, columns[key] ?? ""] as const);
  const given = [...known, ["dates", dates] as const, ["decimals", decimals] as const];
  const words = word.map((each, index) => [each, meaning[index] ?? ""] as const);
  return {
    ...Object.fromEntries(given.filter(([, value]) => value !== "")),
    classes: Object.fromEntries(words.filter(([each, id]) => each.trim() !== "" && id !== "")),
    yes: yes
      .split(/[,;]/)
      .map((each) => each.trim())
      .filter((each) => each !== ""),
  };
}

/** Vessel classes, or options with a station, to choose from. */
export const classesOf = (document: unknown) =>
  named(itemsOf(childOf(childOf(document, "boats"), "classes")));

export const stationsOf = (document: unknown) =>
  named(itemsOf(childOf(document, "options")).filter((each) => valueAt(each, ["station"]) !== undefined));

const named = (items: readonly unknown[]) =>
  items.flatMap((each) => {
    const [id, name] = [valueAt(each, ["id"]), valueAt(each, ["name"])];
    return typeof id === "string" ? [{ value: id, label: typeof name === "string" ? name : id }] : [];
  });
