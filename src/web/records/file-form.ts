import { z } from "zod";
import type { StudyEntry } from "../../app/study-entry.js";
import { draftOf } from "../../editor/draft.js";
import { isFileOrigin } from "../../editor/files/file-origin.js";
import { levelsPlace } from "../../editor/files/record-edits.js";
import { childOf, itemsOf } from "../../editor/form-values.js";
import type { Place } from "../../editor/study-text.js";
import { typedList } from "../../study/exports/export-numbers.js";
import { allowedCharacters, isPrintable } from "../../study/reading/characters.js";
import { longestFill } from "../../study/reading/level-dates.js";
import { describe, type Problem, valueAt } from "../../study/reading/problems.js";
import { authorName } from "../author.js";
import { named } from "./export-kind.js";
import type { Choice } from "./file-choices.js";
import { again, printable, readable, textProblems } from "./form-texts.js";

const text = z.string().trim().default("");

/** What the page of records sends beside the file; what is wrong with a text is told beside it, so that it stays. */
export const sentFile = z.object({
  schedule: text,
  date: text,
  level: text,
  unit: text,
  dates: z.enum(["", "month-first", "day-first"]).default(""),
  decimals: z.enum(["", "point", "comma"]).default(""),
  missing: text,
  several: z.enum(["one", "mean"]).default("one"),
  gaugeZero: text,
  fillGapsUpTo: text,
  origin: text,
  /** A file that was sent before. */
  upload: z.union([z.literal(""), z.uuid()]).default(""),
  author: text,
  act: z.enum(["read", "keep"]).default("read"),
});

export type FileForm = z.output<typeof sentFile>;

/** The form as a study has its record mapped; of the lake's own levels where it has no such schedule. */
export function formOf(entry: StudyEntry, asked: string, author: string): FileForm {
  const { document } = draftOf(entry.text, entry.fileName);
  const schedule = levelsPlace(document, asked) ? asked : "";
  const record = valueAt(document, [...placeOf(document, schedule), "record"]);
  const mapped = (key: string) => valueAt(record, ["export", key]);
  const words = mapped("missing");
  const origin = String(valueAt(record, ["origin"]) ?? "");
  return readable(sentFile, {
    schedule,
    ...Object.fromEntries(
      ["date", "level", "unit", "dates", "decimals", "several"].flatMap((key) =>
        typeof mapped(key) === "string" ? [[key, mapped(key)]] : [],
      ),
    ),
    missing: Array.isArray(words) ? words.join(", ") : "",
    gaugeZero: String(mapped("gaugeZero") ?? ""),
    fillGapsUpTo: String(valueAt(record, ["fillGapsUpTo"]) ?? ""),
    origin: isFileOrigin(origin) ? "" : origin,
    author,
  });
}

/** Where the levels stand that the form is about; the lake's own where it names no other. */
export const placeOf = (document: unknown, schedule: string): Place =>
  levelsPlace(document, schedule === "" ? undefined : schedule) ?? ["lake"];

/** What is wrong with the form itself, by its labels. */
export function formProblems(form: FileForm, document: unknown): Problem[] {
  const { schedule, gaugeZero, fillGapsUpTo } = form;
  const problem = (path: string, found: string, allowed: string, remedy: string) =>
    ({ path, found, allowed, remedy }) satisfies Problem;
  const isGone = schedule !== "" && !levelsPlace(document, schedule);
  return [
    ...(isGone
      ? [
          problem(
            "Levels of",
            `“${schedule}”, which this study does not have`,
            "those in the list",
            "Choose again.",
          ),
        ]
      : []),
    ...textProblems(textFields.map(([key, label, schema]) => [form[key], label, schema])),
    ...(numberIn(gaugeZero) === undefined
      ? [problem("Elevation of the gauge’s zero", describe(gaugeZero), "a number, such as 3,190.5", again)]
      : []),
    ...(daysIn(fillGapsUpTo) === undefined
      ? [problem("Gaps to join", describe(fillGapsUpTo), `whole days, 0 to ${longestFill}`, again)]
      : []),
  ];
}

const textFields = [
  ["date", "Column of the dates", printable],
  ["level", "Column of the levels", printable],
  ["unit", "Unit of the levels", printable],
  ["missing", "Words for ice and missing", z.string().refine(isPrintable, allowedCharacters)],
  ["origin", "Where the record comes from", printable],
  ["author", "Your name", authorName],
] as const;

/** Thousands may have commas. @returns undefined of what is no number */
function numberIn(typed: string): number | undefined {
  const isNumber = /^[-−+]?(\d+|\d{1,3}(,\d{3})+)(\.\d+)?$/.test(typed) || typed === "";
  return isNumber ? Number(typed.replaceAll(",", "").replace("−", "-")) : undefined;
}

function daysIn(typed: string): number | undefined {
  const days = Number(typed);
  return Number.isInteger(days) && days >= 0 && days <= longestFill ? days : undefined;
}

/** The mapping as it is typed: empty fields say nothing. */
export function mappingOf(form: FileForm): Record<string, unknown> {
  const { date, level, unit, dates, decimals, missing, several, gaugeZero } = form;
  const given = Object.entries({ date, level, unit, dates, decimals }).filter(([, value]) => value !== "");
  return {
    ...Object.fromEntries(given),
    missing: typedList(missing),
    several,
    ...(gaugeZero === "" ? {} : { gaugeZero: numberIn(gaugeZero) }),
  };
}

/** Days that may be joined. */
export const gapDays = ({ fillGapsUpTo }: FileForm): number => daysIn(fillGapsUpTo) ?? 0;

/** Other schedules of the lake, to choose from. */
export const schedulesOf = (document: unknown): Choice[] =>
  named(itemsOf(childOf(childOf(document, "lake"), "otherSchedules")));
