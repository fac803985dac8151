import { at } from "../../lists.js";
import { laneLaunches } from "../../model/entries/launch-entries.js";
import { daysOf, months } from "../../model/lake/calendar.js";
import { launchesByMonth } from "./boats-part.js";
import type { ShortFacts } from "./facts-schema.js";
import { filling, type TypicalValues } from "./filling.js";
import { siteOf } from "./site.js";

/** Launches of a day at each lane of a lake's ramps in the busiest month; undefined where none were told, or no ramp is there. */
export function busiestLane(
  facts: ShortFacts,
  values: TypicalValues,
): { readonly each: number; readonly told: string } | undefined {
  if (!facts.launches || facts.ramps === 0) return undefined;
  const filled = filling(values, { system: facts.units, currency: facts.currency }, 1);
  const { where } = siteOf(facts, filled);
  const launches = launchesByMonth(facts, where, filled);
  const busiest = Math.max(...months.map((month) => at(launches, month) / daysOf(month)));
  const ramps = facts.ramps ?? filled.typical("typical.ramps").value;
  const width = filled.typical("typical.ramp-width").value;
  const each = laneLaunches(busiest / ramps, width, (id) => values.get(id)?.value ?? Number.NaN);
  const count = (value: number) => Math.round(value).toLocaleString("en-US");
  const told = `${count(busiest / ramps)} launches a day at each ramp in the busiest month, ${count(each)} at each lane`;
  return { each, told };
}
