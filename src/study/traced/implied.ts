import { at, sumOf } from "../../lists.js";
import type { Comparison } from "../../model/compare.js";
import { daysOf, hoursPerDay, months } from "../../model/lake/calendar.js";
import { kindOf } from "../../model/structures/kinds.js";
import type { StructureResult } from "../../model/structures/structure.js";

/** What follows from an entry at its place, for who looks whether it can be right. */
export interface Implied {
  readonly at: readonly PropertyKey[];
  readonly what: string;
  readonly measure: "megawatts" | "days" | "launches" | "money";
  readonly found: number;
}

/** Megawatts of plants, days under water, launches a day, cost per launch: all clean, and under the lake's own levels. */
export function impliedValues({ input, structures, schedules, options, baseline }: Comparison): Implied[] {
  const [{ contexts }] = schedules;
  const years = contexts.map(({ daily }) => daily);
  return [
    ...structures.flatMap((result, index) => [
      ...powerOf(result, index),
      ...daysUnderWater(result, index, years),
    ]),
    ...launchesADay(input),
    ...costsPerLaunch([baseline, ...options.map(({ result }) => result)], input),
  ];
}

const kilowattsInMegawatt = 1000;

function powerOf({ cleanEnergy }: StructureResult, index: number): Implied[] {
  const powers = cleanEnergy.map(
    (energy, month) => energy / (daysOf(month) * hoursPerDay * kilowattsInMegawatt),
  );
  const most = Math.max(0, ...powers);
  if (most === 0) return [];
  const what = "Power of all units on average in the strongest month";
  return [{ at: ["structures", index, "tailwaterElevation"], what, measure: "megawatts", found: most }];
}

function daysUnderWater(
  { structure }: StructureResult,
  index: number,
  years: readonly (readonly number[])[],
): Implied[] {
  const reach = kindOf(structure).reach(structure);
  const field = ["elevation", "bottomElevation"].find((key) => Object.hasOwn(structure, key));
  if (!reach || reach.floats || field === undefined) return [];
  const wet = sumOf(years.map((daily) => daily.filter((level) => level > reach.low).length)) / years.length;
  const what = "Under water, days in a mean year";
  return [{ at: ["structures", index, field], what, measure: "days", found: wet }];
}

function launchesADay({ boats, structures }: Comparison["input"]): Implied[] {
  const most = Math.max(...months.map((month) => at(boats.launches, month) / daysOf(month)));
  const ramps = structures.filter((each) => kindOf(each).launches?.(each) !== undefined).length;
  const place = { at: ["boats", "launches"], measure: "launches" } as const;
  return [
    { ...place, what: "Launches a day in the busiest month", found: most },
    ...(ramps > 1
      ? [{ ...place, what: `The same at each of ${ramps} ramps, if alike`, found: most / ramps }]
      : []),
  ];
}

function costsPerLaunch(
  results: readonly Comparison["baseline"][],
  { options, boats }: Comparison["input"],
): Implied[] {
  const launches = sumOf(boats.launches);
  return results.flatMap(({ option, programPerYear }) => {
    const index = options.findIndex(({ id }) => id === option.id);
    const found = programPerYear.toNumber() / launches;
    if (launches === 0 || found === 0) return [];
    const what = "Program's cost of a year in full, over the launches of a year";
    return [{ at: ["options", index, "staff"], what, measure: "money", found }];
  });
}
