import { at, sumOf } from "../../lists.js";
import type { Assumed } from "../assumed.js";
import type { StudyInput } from "../inputs.js";
import { daysOf, months } from "../lake/calendar.js";
import { kindOf } from "../structures/kinds.js";
import { type EntryCheck, usuallyAtMost } from "./entry-check.js";
import { usualRanges } from "./usual-ranges.js";

/** Launches at each ramp against what its lanes usually take, and those of all ramps against those of the lake. */
export function launchEntries(input: StudyInput, assumed: Assumed): EntryCheck[] {
  return [...laneChecks(input, assumed), ...ratioCheck(input, assumed)];
}

/** Launches of a day at each lane of a ramp so wide. */
export const laneLaunches = (perDay: number, width: number, assumed: Assumed): number =>
  perDay / Math.max(1, width / assumed("checks.lane-width"));

/** Launches of a day past which no lane has room. */
export const mostLaneLaunches = (assumed: Assumed): number => assumed("checks.impossible-lane-launches");

function laneChecks({ structures }: StudyInput, assumed: Assumed): EntryCheck[] {
  return structures.flatMap((structure, index) => {
    const launches = kindOf(structure).launches?.(structure);
    if (!launches) return [];
    const entry = {
      at: ["structures", index, "launchesPerDay"],
      what: `${structure.name}, launches a day at each lane in the busiest month`,
      measure: "count",
      found: laneLaunches(Math.max(...launches.perDay), launches.width, assumed),
      remedy: "Look again at the launches, which are those of one day, and at the width and its unit.",
    } as const;
    return [usuallyAtMost(entry, usualRanges.laneLaunches, assumed)];
  });
}

/** A launch is counted once. */
function ratioCheck({ structures, boats }: StudyInput, assumed: Assumed): EntryCheck[] {
  const all = sumOf(boats.launches);
  const ramps = structures.flatMap((each) => {
    const launches = kindOf(each).launches?.(each);
    return launches ? [launches.perDay] : [];
  });
  if (ramps.length === 0 || all === 0) return [];
  const atRamps = months.reduce(
    (sum, month) => sum + ramps.reduce((day, launches) => day + at(launches, month), 0) * daysOf(month),
    0,
  );
  const entry = {
    at: ["boats", "launches"],
    what: "Launches a year at the ramps over the launches entered for the lake",
    measure: "count",
    found: atRamps / all,
    remedy: "Look again at the launches a day of the ramps and at the launches by month of the boats.",
  } as const;
  return [usuallyAtMost(entry, usualRanges.launchRatio, assumed)];
}
