import { z } from "zod";
import type { StudyEntry } from "../../app/study-entry.js";
import { draftOf } from "../../editor/draft.js";
import { childOf, itemsOf } from "../../editor/form-values.js";
import { levelsPlace } from "../../editor/record-edits.js";
import type { Place } from "../../editor/study-text.js";
import { longestFill } from "../../study/reading/level-dates.js";
import { valueAt } from "../../study/reading/problems.js";
import { authorName } from "../author.js";

const text = z.string().trim().max(200, "at most 200 characters").default("");

/** What the page of records sends beside the file. */
export const sentFile = z.object({
  schedule: text,
  date: text,
  level: text,
  unit: text,
  dates: z.enum(["", "month-first", "day-first"]).default(""),
  decimals: z.enum(["", "point", "comma"]).default(""),
  missing: z.string().trim().max(2000, "at most 2,000 characters").default(""),
  several: z.enum(["one", "mean"]).default("one"),
  gaugeZero: text,
  fillGapsUpTo: text,
  origin: text,
  /** A file that was sent before. */
  upload: z.union([z.literal(""), z.uuid()]).default(""),
  author: authorName.default(""),
  act: z.enum(["read", "keep"]).default("read"),
});

export type FileForm = z.output<typeof sentFile>;

/** The form as a study has its record mapped. */
export function formOf(entry: StudyEntry, schedule: string, author: string): FileForm {
  const { document } = draftOf(entry.text, entry.fileName);
  const record = valueAt(document, [...placeOf(document, schedule), "record"]);
  const mapped = (key: string) => valueAt(record, ["export", key]);
  const words = mapped("missing");
  return sentFile.parse({
    schedule,
    ...Object.fromEntries(
      ["date", "level", "unit", "dates", "decimals", "several"].flatMap((key) =>
        typeof mapped(key) === "string" ? [[key, mapped(key)]] : [],
      ),
    ),
    missing: Array.isArray(words) ? words.join(", ") : "",
    gaugeZero: String(mapped("gaugeZero") ?? ""),
    fillGapsUpTo: String(valueAt(record, ["fillGapsUpTo"]) ?? ""),
    origin: String(valueAt(record, ["origin"]) ?? "").slice(0, 200),
    author,
  });
}

/** Where the levels stand that the form is about; the lake's own where it names no other. */
export const placeOf = (document: unknown, schedule: string): Place =>
  levelsPlace(document, schedule === "" ? undefined : schedule) ?? ["lake"];

/** The mapping as it is typed: empty fields say nothing. */
export function mappingOf(form: FileForm): Record<string, unknown> {
  const { date, level, unit, dates, decimals, missing, several, gaugeZero } = form;
  const words = missing.split(/[,;\n]/).map((word) => word.trim());
  const given = Object.entries({ date, level, unit, dates, decimals }).filter(([, value]) => value !== "");
  return {
    ...Object.fromEntries(given),
    missing: words.filter((word) => word !== ""),
    several,
    ...(gaugeZero === "" ? {} : { gaugeZero: Number(gaugeZero) }),
  };
}

/** Days that may be joined. */
export function gapDays({ fillGapsUpTo }: FileForm): number {
  const days = Number(fillGapsUpTo);
  return Number.isInteger(days) ? Math.min(Math.max(days, 0), longestFill) : 0;
}

/** Other schedules of the lake, to choose from. */
export const schedulesOf = (document: unknown) =>
  itemsOf(childOf(childOf(document, "lake"), "otherSchedules")).flatMap((each) => {
    const [id, name] = [valueAt(each, ["id"]), valueAt(each, ["name"])];
    return typeof id === "string" ? [{ value: id, label: typeof name === "string" ? name : id }] : [];
  });
