import { z } from "zod";
import { shortText } from "./fields.js";

const column = (what: string) => shortText.meta({ description: `Name of the column with ${what}` });

const dates = z
  .enum(["month-first", "day-first"])
  .optional()
  .meta({ description: "Which comes first in dates such as 3/4/2011; left out where the file shows it" });

const decimals = z
  .enum(["point", "comma"])
  .optional()
  .meta({ description: "Sign before decimals; left out where the file shows it" });

/** How a file of levels, as a gauge network exports it, is read: said once, so that next year's needs no answer. */
export const levelExportSchema = z
  .strictObject({
    date: column("the dates"),
    level: column("the levels"),
    unit: shortText
      .optional()
      .meta({ description: "Unit of the levels; left out where the column's name has it" }),
    dates,
    decimals,
    missing: z
      .array(shortText)
      .max(50, "at most 50 words")
      .default([])
      .meta({ description: "Words that stand in place of a level, for ice or a broken gauge: Ice, Eqp" }),
    several: z
      .enum(["one", "mean"])
      .default("one")
      .meta({ description: "Whether a day may have several readings, of which the mean is kept" }),
    gaugeZero: z.number().optional().meta({
      description: "Elevation of the gauge's zero, in the unit of the levels, which is added to each",
    }),
  })
  .meta({ description: "Columns of the file that the record was read from" });

export type LevelColumnsMapped = z.output<typeof levelExportSchema>;
