import { z } from "zod";
import { daysInYear, hoursPerDay } from "../model/lake/calendar.js";
import { identifier, positive, quantity, shortText } from "./fields.js";

const mostDayTypes = 12;
/** With these bounds the largest station takes seconds, not minutes, to simulate. */
const mostBoatsPerHour = 200;
const mostInspectors = 20;

const dayType = z.strictObject({
  id: identifier,
  name: shortText,
  daysPerYear: z.number().positive("more than 0 days").max(daysInYear, `at most ${daysInYear} days`),
  launchesByHour: z
    .array(
      z
        .number()
        .min(0, "at least 0 launches")
        .max(mostBoatsPerHour, `at most ${mostBoatsPerHour} launches in an hour`),
    )
    .min(1, "at least one open hour")
    .max(hoursPerDay, `at most ${hoursPerDay} open hours`)
    .meta({ description: "Launches that the station checks in each open hour, from opening to closing" }),
});

/** How boats come to an option's station and what each takes: for the number of inspectors and the wait. */
export const stationSchema = z
  .strictObject({
    dayTypes: z
      .array(dayType)
      .min(1, "at least one day type")
      .max(mostDayTypes, `at most ${mostDayTypes} day types`)
      .meta({ description: "Days that are alike, for instance summer weekends" }),
    opens: z
      .string()
      .regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time of day written "HH:MM", for instance "07:00"')
      .meta({ description: "When the station opens, for print" }),
    service: z.strictObject({
      quickCheck: positive("shortTime").meta({ description: "Mean time that each boat takes an inspector" }),
      fullInspection: quantity("shortTime").meta({
        description: "Mean time that a boat set aside takes as well, with its wash if an inspector does it",
      }),
      setAsideShare: quantity("share").meta({ description: "Boats set aside of those that are checked" }),
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
      .meta({ description: "Largest number at once that there is room or budget for" }),
    wage: quantity("moneyPerHour"),
    loading: quantity("share").meta({ description: "Benefits and taxes on top of the wage" }),
    origin: shortText.meta({ description: "Where the figures come from" }),
  })
  .optional()
  .meta({ description: "Boats by hour and times per boat, for the least number of inspectors and the wait" });

export type StationDocument = NonNullable<z.output<typeof stationSchema>>;
