import { z } from "zod";
import { positive, quantity, shortText } from "./fields.js";

/** With this and the bound on boats per hour, simulating the largest station takes seconds, not minutes. */
const mostInspectors = 20;

/** Service times and longest wait at an option's stations; boats and hours come from traffic and open. */
export const stationSchema = z
  .strictObject({
    service: z.strictObject({
      quickCheck: positive("shortTime").meta({ description: "Mean time that each boat takes an inspector" }),
      fullInspection: quantity("shortTime").meta({
        description:
          "Mean further time for a boat held for full inspection, with its wash if an inspector does it",
      }),
      setAsideShare: quantity("share").meta({
        description: "Boats held for full inspection, of those that are checked",
      }),
      spread: z
        .enum(["exponential", "constant"])
        .default("exponential")
        .meta({ description: "Whether times vary about their mean or are always the same" }),
    }),
    target: z.strictObject({
      share: positive("share")
        .refine(({ value }) => value < 1, "a share below 100 %: no station can promise it to every boat")
        .meta({ description: "At least this share of boats waits no longer than `wait`" }),
      wait: quantity("shortTime"),
    }),
    mostInspectors: z
      .int("a whole number")
      .min(1, "at least 1 inspector")
      .max(mostInspectors, `at most ${mostInspectors} inspectors`)
      .meta({ description: "Largest number at once at one site that there is room or budget for" }),
    wage: quantity("moneyPerHour"),
    loading: quantity("share").meta({ description: "Benefits and taxes on top of the wage" }),
    origin: shortText.meta({ description: "Where the figures come from" }),
  })
  .optional()
  .meta({
    description: "Times per boat and a target for the wait: for the least number of inspectors at each site",
  });

export type StationDocument = NonNullable<z.output<typeof stationSchema>>;
