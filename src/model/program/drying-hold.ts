import { at, sumOf } from "../../lists.js";
import type { Assumed } from "../assumed.js";
import type { Boats } from "../inputs.js";
import { hoursPerDay, months } from "../lake/calendar.js";
import type { Lake } from "../lake/lake.js";
import { dryDose, dryingParameters, survival } from "../mussels/drying.js";

/**
 * Share of mussels on a boat that outlives days of drying in the lake's air, the mean over the months weighed by
 * their launches. Water that stands in a hull dries no one: a boat on hold must be drained.
 */
export function holdSurvival(days: number, boats: Boats, lake: Lake, assumed: Assumed): number {
  const drying = dryingParameters(lake.species, assumed);
  const length = assumed("drying.reference-length");
  const launches = sumOf(boats.launches);
  if (launches === 0) return 1;
  return months.reduce((sum, month) => {
    const air = { temperature: at(lake.airTemperature, month), humidity: at(lake.humidity, month) };
    const alive = survival(dryDose(days * hoursPerDay, air, drying), length, drying);
    return sum + (alive * at(boats.launches, month)) / launches;
  }, 0);
}
