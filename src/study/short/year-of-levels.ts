import { daysOf, monthStart, months } from "../../model/lake/calendar.js";
import { dailyElevations } from "../../model/lake/levels.js";
import { dayNumber } from "../prepare/to-model.js";
import type { Site } from "./site.js";

/** Down in late winter, up from June to the middle of September. */
export const turns = [
  { on: "02-15", at: "winter" },
  { on: "06-10", at: "summer" },
  { on: "09-15", at: "summer" },
  { on: "12-10", at: "winter" },
] as const;

/** The lowest level of each month, m. */
export function lowestByMonth({ levels }: Pick<Site, "levels">): number[] {
  const elevations = { summer: levels.summer, winter: levels.winter.value };
  const points = turns.map(({ on, at }) => ({ dayOfYear: dayNumber(on), elevation: elevations[at] }));
  const daily = dailyElevations(points);
  return months.map((month) =>
    Math.min(...daily.slice(monthStart(month), monthStart(month) + daysOf(month))),
  );
}
