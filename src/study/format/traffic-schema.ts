import { z } from "zod";
import { daysInYear, daysOf, hoursPerDay } from "../../model/lake/calendar.js";
import { identifier, positive, shortText } from "./fields.js";
import { monthNames } from "./month-names.js";
import { largestRecordBytes, recordFileName } from "./schedule-schema.js";

const mostDayTypes = 12;
const mostMonthGroups = 6;
const mostSites = 10;
const mostLaunches = 10_000;

const daysByMonth = z
  .strictObject(
    Object.fromEntries(
      monthNames.map((name, month) => [
        name,
        z
          .number()
          .min(0, "at least 0 days")
          .max(daysOf(month), `at most ${daysOf(month)} days`)
          .default(0),
      ]),
    ) as Record<(typeof monthNames)[number], z.ZodDefault<z.ZodNumber>>,
  )
  .meta({ description: "Days in each month; months left out have none" });

const dayType = z.strictObject({
  id: identifier,
  name: shortText,
  days: z
    .union([
      daysByMonth,
      z.number().positive("more than 0 days").max(daysInYear, `at most ${daysInYear} days`),
    ])
    .meta({ description: "How many such days a year has, or each month" }),
  firstHour: z
    .int("a whole hour")
    .min(0, "an hour from 0")
    .max(hoursPerDay - 1, `an hour up to ${hoursPerDay - 1}`)
    .optional()
    .meta({ description: "Hour of the day at which the list of launches begins: 6 for 06:00" }),
  launchesByHour: z
    .array(z.number().min(0, "at least 0 launches").max(mostLaunches, `at most ${mostLaunches} launches`))
    .min(1, "at least one hour")
    .max(hoursPerDay, `at most ${hoursPerDay} hours`)
    .meta({
      description: "Launches at all sites in each hour: 24 values from midnight, or those from firstHour",
    }),
});

const monthGroup = z.strictObject({
  id: identifier,
  name: shortText,
  months: z
    .array(z.enum(monthNames))
    .min(1, "at least one month")
    .refine((months) => new Set(months).size === months.length, "each month once"),
});

/** When boats come: day types as judged, or counts that yield them. */
export const trafficSchema = z
  .strictObject({
    dayTypes: z
      .array(dayType)
      .min(1, "at least one day type")
      .max(mostDayTypes, `at most ${mostDayTypes} day types`)
      .optional()
      .meta({
        description: "Days that are alike in the boats that come, for instance summer weekends",
        way: "Day types",
      }),
    csv: z.string().max(largestRecordBytes, `at most ${largestRecordBytes} characters`).optional().meta({
      description:
        "In place of dayTypes: counts as CSV text with the columns date, hour, launches and, if counted by site, site",
      way: "Counts by the hour",
    }),
    file: z
      .string()
      .regex(recordFileName, 'the name of a CSV file beside the study file, such as "counts.csv"')
      .optional()
      .meta({ description: "In place of csv, for a study read from disk: a CSV file in the same folder" }),
    monthGroups: z
      .array(monthGroup)
      .min(1, "at least one group of months")
      .max(mostMonthGroups, `at most ${mostMonthGroups} groups of months`)
      .optional()
      .meta({
        description: "For counts: months that are alike; each gives a weekend and a weekday",
        way: "Counts by the hour",
      }),
    origin: shortText.meta({ description: "Where the traffic comes from" }),
  })
  .optional()
  .meta({
    description: "Launches by day type and hour: the shape of the year, of which launches is the total",
  });

export const sitesSchema = z
  .array(
    z.strictObject({
      id: identifier,
      name: shortText,
      share: positive("share").meta({ description: "Share of all launches" }),
    }),
  )
  .min(1, "at least one site")
  .max(mostSites, `at most ${mostSites} sites`)
  .optional()
  .meta({ description: "Launch sites, each with a queue of its own where a station stands" });

const time = /^([01]\d|2[0-3]):[0-5]\d$/;
const timeOrMidnight = /^(([01]\d|2[0-3]):[0-5]\d|24:00)$/;

/** When an option's stations are open. */
export const openSchema = z
  .array(
    z.strictObject({
      dayTypes: z
        .array(identifier)
        .min(1, "at least one day type")
        .optional()
        .meta({ description: "Ids of day types of boats.traffic; all if left out" }),
      sites: z
        .array(identifier)
        .min(1, "at least one site")
        .optional()
        .meta({ description: "Ids from boats.sites; all if left out" }),
      from: z.string().regex(time, 'a time of day written "HH:MM", for instance "07:00"'),
      to: z
        .string()
        .regex(timeOrMidnight, 'a time of day written "HH:MM", for instance "20:00", up to "24:00"'),
    }),
  )
  .min(1, "at least one entry")
  .max(mostDayTypes * mostSites, `at most ${mostDayTypes * mostSites} entries`)
  .optional()
  .meta({ description: "Open hours, from which the coverage is computed in place of steps.coverage" });

export type TrafficDocument = NonNullable<z.output<typeof trafficSchema>>;
export type DayTypeDocument = z.output<typeof dayType>;
export type MonthGroupDocument = z.output<typeof monthGroup>;
export type OpenDocument = NonNullable<z.output<typeof openSchema>>;
