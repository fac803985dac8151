import { z } from "zod";
import type { StudyEntry } from "../../app/study-entry.js";
import { draftOf } from "../../editor/draft.js";
import { childOf, itemsOf } from "../../editor/form-values.js";
import { levelsPlace } from "../../editor/record-edits.js";
import type { Place } from "../../editor/study-text.js";
import { typedNumber } from "../../study/exports/export-numbers.js";
import { valueAt } from "../../study/reading/problems.js";
import { authorName } from "../author.js";
import { NotFoundError } from "../explain.js";

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
  return readable({
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

/** The form without what an unfinished study has that a form cannot say. */
function readable(fields: Readonly<Record<string, unknown>>): FileForm {
  const parsed = sentFile.safeParse(fields);
  if (parsed.success) return parsed.data;
  const wrong = new Set(parsed.error.issues.map(({ path }) => path[0]));
  return sentFile.parse(Object.fromEntries(Object.entries(fields).filter(([key]) => !wrong.has(key))));
}

/** Where the levels stand that the form is about. @throws NotFoundError for a schedule that the lake has not */
export function placeOf(document: unknown, schedule: string): Place {
  const place = levelsPlace(document, schedule === "" ? undefined : schedule);
  if (place) return place;
  throw new NotFoundError();
}

/** The mapping as it is typed: empty fields say nothing. */
export function mappingOf(form: FileForm): Record<string, unknown> {
  const { date, level, unit, dates, decimals, missing, several, gaugeZero } = form;
  const words = missing.split(/[,;\n]/).map((word) => word.trim());
  const given = Object.entries({ date, level, unit, dates, decimals }).filter(([, value]) => value !== "");
  return {
    ...Object.fromEntries(given),
    missing: words.filter((word) => word !== ""),
    several,
    ...(gaugeZero === "" ? {} : { gaugeZero: typedNumber(gaugeZero) }),
  };
}

/** Days that may be joined, as typed; none where nothing is. */
export const gapDays = ({ fillGapsUpTo }: FileForm): number | string =>
  fillGapsUpTo === "" ? 0 : typedNumber(fillGapsUpTo);

/** Other schedules of the lake, to choose from. */
export const schedulesOf = (document: unknown) =>
  itemsOf(childOf(childOf(document, "lake"), "otherSchedules")).flatMap((each) => {
    const [id, name] = [valueAt(each, ["id"]), valueAt(each, ["name"])];
    return typeof id === "string" ? [{ value: id, label: typeof name === "string" ? name : id }] : [];
  });
