import { z } from "zod";
import { quantity, shortText } from "./fields.js";
import { bearer } from "./structure-base.js";

const mostSamples = 100_000;
const longestList = 100;

const samples = (what: string, description: string) =>
  z
    .int(`a whole number of ${what} a year`)
    .min(0, `at least 0 ${what} a year`)
    .max(mostSamples, `at most ${mostSamples} ${what} a year`)
    .optional()
    .meta({ description });

/** How an option watches for mussels. */
export const monitoringSchema = z
  .strictObject({
    planktonTows: samples("plankton tows", "Tows of a plankton net, looked through for larvae, a year"),
    settlementPlates: samples("settlement plates", "Plates or boards that hang for the season"),
    searches: samples("searches", "Days of divers, or of people along the shore, a year"),
    ednaSamples: samples("eDNA samples", "Water samples examined for traces of the mussels' DNA, a year"),
    noticedWithin: z
      .array(quantity("share"))
      .min(1, "the chance of at least one year")
      .max(longestList, `chances of at most ${longestList} years`)
      .optional()
      .meta({
        description:
          "In place of samples: chance to have detected them by the end of the first, second, … year of an infestation; for certain in the year after the last",
      }),
    origin: shortText.meta({ description: "Where the figures come from" }),
  })
  .optional()
  .meta({
    description:
      "How mussels are watched for, each year. Left out in all options: they are detected at once. Without samples or chances: by the first harm",
  });

/** An option's response once mussels are noticed. */
export const responseSchema = z
  .strictObject({
    name: shortText.meta({ description: "What is tried to contain or eradicate them" }),
    cost: quantity("money").meta({ description: "Of one attempt, whether it succeeds or not" }),
    chance: quantity("share").meta({ description: "That an attempt leaves the lake without mussels; low" }),
    latestYear: z
      .int("a whole number: the year of the infestation")
      .min(1, "at least 1, the first year of the infestation")
      .max(longestList, `at most ${longestList}`)
      .meta({ description: "Last year of an infestation in which it is still tried" }),
    bearer: bearer
      .optional()
      .meta({ description: "Who pays for it; whoever pays for the program if left out" }),
    cautions: z
      .string()
      .max(1000, "at most 1,000 characters")
      .default("")
      .meta({ description: "Permits and dangers of what is tried, printed beside those of the report" }),
    origin: shortText.meta({ description: "Where the figures come from" }),
  })
  .optional()
  .meta({ description: "Containment or eradication, tried once, in the year in which mussels are detected" });

export type MonitoringDocument = NonNullable<z.output<typeof monitoringSchema>>;
