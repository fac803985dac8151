import { z } from "zod";
import { longestFill } from "../reading/level-dates.js";
import { digestPattern } from "../records/at-hand.js";
import { levelExportSchema } from "./export-schema.js";
import { dayOfYear, identifier, quantity, shortText } from "./fields.js";

/** Longest CSV text of one record: 100 years of days take about 0.7 MB. */
export const largestRecordBytes = 1024 * 1024;

/** Name of a CSV file beside the study file. */
export const recordFileName = /^[\w\u00a0-\uffff][\w\u00a0-\uffff .()-]{0,90}\.[cC][sS][vV]$/;

const gapLength = z
  .int("a whole number of days")
  .min(0, "at least 0 days")
  .max(longestFill, `at most ${longestFill} days`);

/** How a record is to be read beside its mapping. */
export const gapSetting = z.object({ fillGapsUpTo: gapLength.optional() });

const record = z
  .strictObject({
    csv: z.string().max(largestRecordBytes, `at most ${largestRecordBytes} characters`).optional().meta({
      description:
        'The record as CSV text: a date and an elevation column with its unit, "date,elevation (ft)"; a line a day ("1998-10-01") or a line a month ("1998-10", the mean)',
    }),
    file: z
      .string()
      .regex(recordFileName, 'the name of a CSV file beside the study file, such as "levels.csv"')
      .optional()
      .meta({ description: "In place of csv, for a study read from disk: a CSV file in the same folder" }),
    kept: z
      .string()
      .regex(digestPattern, "the digest of a kept record: 64 hexadecimal digits")
      .optional()
      .meta({
        description:
          "In place of csv: SHA-256 of the record, which is kept beside the study, on disk as records/<digest>.csv",
      }),
    name: shortText.optional().meta({ description: "Name of the file that a kept record was read from" }),
    export: levelExportSchema.optional(),
    fillGapsUpTo: gapLength.default(0).meta({ description: "Longest gap, in days, that is joined linearly" }),
    origin: shortText.meta({ description: "Where the record comes from" }),
  })
  .meta({
    description: "Levels of several years: each complete calendar year is one possible year",
    way: "Gauge record",
  });

/** Levels of a lake or schedule: one of the two. */
export const levelFields = {
  drawdown: z
    .array(z.strictObject({ on: dayOfYear, elevation: quantity("elevation") }))
    .min(1, "at least one point")
    .optional()
    .meta({
      description: "Operating schedule: lake elevation on days of the year, joined linearly",
      way: "Operating schedule",
    }),
  record: record.optional(),
};

export const otherSchedules = z
  .array(
    z.strictObject({
      id: identifier,
      name: shortText,
      description: z.string().max(1000, "at most 1,000 characters").default(""),
      ...levelFields,
    }),
  )
  .max(20, "at most 20 schedules")
  .default([])
  .meta({ description: "Schedules that an option may follow once the lake is infested" });

export type RecordDocument = z.output<typeof record>;

export interface ScheduleDocument {
  readonly drawdown?: z.output<typeof levelFields.drawdown>;
  readonly record?: RecordDocument | undefined;
}
