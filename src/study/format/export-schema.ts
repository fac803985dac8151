import { z } from "zod";
import { workNames } from "../exports/orders/work-kinds.js";
import { identifier, shortText } from "./fields.js";

const column = (what: string) => shortText.meta({ description: `Name of the column with ${what}` });

const dates = z
  .enum(["month-first", "day-first"])
  .optional()
  .meta({ description: "Which comes first in dates such as 3/4/2011; left out where the file shows it" });

const decimals = z
  .enum(["point", "comma"])
  .optional()
  .meta({ description: "Decimal sign; left out where the file shows it" });

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
      .meta({ description: "Words in place of a level, for ice or a broken gauge: Ice, Eqp" }),
    several: z
      .enum(["one", "mean"])
      .default("one")
      .meta({ description: "Whether a day may have several readings; their mean is kept" }),
    gaugeZero: z.number().optional().meta({
      description: "Elevation of the gauge's zero, in the unit of the levels, which is added to each",
    }),
  })
  .meta({ description: "Columns of the file that the record was read from" });

const words = (description: string) =>
  z.array(shortText).max(50, "at most 50 words").default([]).meta({ description });

/** How a log of inspected boats is read, a line for each boat or sums of several: said once. */
export const boatLogSchema = z
  .strictObject({
    date: shortText.meta({ description: "Name of the column with the dates or, of sums, the seasons" }),
    class: column("the classes of boats"),
    fouled: column("boats found with mussels: yes or no, or their number"),
    setAside: column("boats held for full inspection: yes or no, or their number"),
    screened: column("the number of boats screened; left out where each line is a boat").optional(),
    quickCheck: column("the minutes of the quick check").optional(),
    fullInspection: column("the minutes of the full inspection").optional(),
    classes: z
      .record(shortText.regex(/\S/, "a word of the file"), identifier)
      .default({})
      .meta({ description: "Vessel class for each word of the column of classes" }),
    yes: words("Words that mean yes, besides yes, y, true, x and 1"),
    no: words("Words that mean no, besides no, n, false, 0 and -"),
    dates,
    decimals,
  })
  .meta({ description: "Columns of the file that the log was summed from" });

/** How a file of samples is read: said once. */
export const sampleLogSchema = z
  .strictObject({
    date: column("the dates"),
    result: column("the results: words, or counts of which more than 0 are mussels"),
    kind: column("the kinds of samples").optional(),
    place: column("the places").optional(),
    all: z
      .enum(["planktonTows", "settlementPlates", "searches", "ednaSamples"])
      .optional()
      .meta({ description: "Kind of all samples, where no column has it" }),
    kinds: z
      .record(
        shortText.regex(/\S/, "a word of the file"),
        z.enum(["planktonTows", "settlementPlates", "searches", "ednaSamples", "other"]),
      )
      .default({})
      .meta({ description: "What each word of the column of kinds means" }),
    results: z
      .record(shortText.regex(/\S/, "a word of the file"), z.enum(["none", "mussels", "unconfirmed"]))
      .default({})
      .meta({ description: "What each word of the column of results means" }),
    dates,
  })
  .meta({ description: "Columns of the file of samples that the years were read from" });

/** How a file of work orders and outages is read: said once. */
export const workOrdersSchema = z
  .strictObject({
    date: column("the dates"),
    structure: column("the structures or equipment"),
    work: column("the kinds of work").optional(),
    order: column("the numbers of the orders; lines of one number are one order").optional(),
    hours: column("the hours of work").optional(),
    laborCost: column("the cost of those hours, without parts").optional(),
    parts: column("the cost of parts").optional(),
    outage: column("the hours out of service").optional(),
    energy: column("the energy lost").optional(),
    energyUnit: shortText
      .optional()
      .meta({ description: "Unit of the energy lost; left out where the column's name has it" }),
    all: z.enum(workNames).optional().meta({ description: "Kind of all orders, where no column has it" }),
    structures: z
      .record(shortText.regex(/\S/, "a word of the file"), identifier)
      .default({})
      .meta({ description: "Structure that each word means; other where the study has none" }),
    unmapped: z.enum(["other"]).optional().meta({
      description: "What words for structures mean that are not mapped; left out where each is asked about",
    }),
    works: z
      .record(shortText.regex(/\S/, "a word of the file"), z.enum(workNames))
      .default({})
      .meta({ description: "Kind of work that each word means" }),
    dates,
    decimals,
  })
  .meta({ description: "Columns of the file of work orders that own values were measured from" });

export type WorkColumnsMapped = z.output<typeof workOrdersSchema>;
export type SampleColumnsMapped = z.output<typeof sampleLogSchema>;
export type BoatColumnsMapped = z.output<typeof boatLogSchema>;
export type LevelColumnsMapped = z.output<typeof levelExportSchema>;
