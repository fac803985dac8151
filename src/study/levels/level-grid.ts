import type { Lake, Schedule } from "../../model/lake/lake.js";
import {
  type Drawdown,
  daysBetween,
  drawnDown,
  isSameCourse,
  levelYears,
  pointsOf,
  riseOf,
} from "../../model/search/drawdown.js";
import { dimensions } from "../../units/dimensions.js";
import { columnReader, parseQuantity, toDisplay } from "../../units/quantity.js";
import type { StudyDocument } from "../format/schema.js";
import type { LevelRules } from "./level-rules.js";

/** A drawdown of the grid that keeps all limits. */
export interface TriedDrawdown {
  readonly id: string;
  readonly drawdown: Drawdown;
  /** As an author would type it, so that it is the same to the cent. */
  readonly schedule: Schedule;
}

/** Why a drawdown of the grid is not tried. */
export type LeftOut = "refill" | "rise" | "not-below" | "present";

export interface LevelGrid {
  readonly tried: readonly TriedDrawdown[];
  readonly leftOut: Readonly<Record<LeftOut, number>>;
}

/** Every lowest level on every day for every number of days, where the limits allow it and no other is the same. */
export function levelGrid(rules: LevelRules, lake: Lake, units: StudyDocument["study"]["units"]): LevelGrid {
  const years = levelYears(lake);
  const leftOut = { refill: 0, rise: 0, "not-below": 0, present: 0 };
  const tried: TriedDrawdown[] = [];
  for (const drawdown of drawdownsOf(rules)) {
    const courses = years.map((levels) => drawnDown(levels, drawdown));
    const why = refusal(drawdown, years, courses, rules);
    if (why) leftOut[why] += 1;
    else tried.push(triedOf(drawdown, courses, { lake, units, place: tried.length }));
  }
  return { tried, leftOut };
}

const drawdownsOf = ({ lowest, from, days, refilled, fall }: LevelRules): Drawdown[] =>
  lowest.flatMap((elevation) =>
    from.flatMap((day) => days.map((held) => ({ lowest: elevation, from: day, days: held, refilled, fall }))),
  );

type Courses = ReadonlyArray<readonly number[]>;

function refusal(
  drawdown: Drawdown,
  years: Courses,
  courses: Courses,
  { rise, notBelow }: LevelRules,
): LeftOut | undefined {
  if (daysBetween(drawdown.from, drawdown.refilled) <= drawdown.days) return "refill";
  if (courses.every((course, year) => isSameCourse(course, years[year] ?? course))) return "present";
  if (rise !== undefined && years.some((levels) => riseOf(levels, drawdown) > rise + leastRise))
    return "rise";
  const isKept = notBelow.every(({ from, until, elevation }) =>
    courses.every((course) =>
      course.every(
        (level, day) =>
          daysBetween(from, day) > daysBetween(from, until) || level >= elevation - leastElevation,
      ),
    ),
  );
  return isKept ? undefined : "not-below";
}

/** Rounding of sums, m a day and m. */
const leastRise = 1e-9;
const leastElevation = 1e-6;

function triedOf(
  drawdown: Drawdown,
  courses: Courses,
  { lake, units, place }: { lake: Lake; units: "us" | "si"; place: number },
): TriedDrawdown {
  const id = `drawdown-${place}`;
  const [course = []] = courses;
  const typed = recordLevel(units);
  const levels = lake.record
    ? {
        drawdown: [],
        record: lake.record.map(({ label }, year) => ({ label, daily: (courses[year] ?? []).map(typed) })),
      }
    : {
        drawdown: pointsOf(course).map(({ dayOfYear, elevation }) => ({
          dayOfYear,
          elevation: parseQuantity(elevationText(elevation, units), "elevation").value,
        })),
      };
  return { id, drawdown, schedule: { id, name: id, ...levels } };
}

/** A level as a record that is typed has it. */
function recordLevel(units: "us" | "si"): (elevation: number) => number {
  const read = columnReader(dimensions.elevation[units].unit, "elevation");
  return (elevation) => read(elevationNumber(elevation, units));
}

/** To a tenth of an inch or a millimetre: what a schedule is typed with. */
const digits = { us: 2, si: 3 } as const;
const perMetre = { us: toDisplay(1, "elevation", "us"), si: toDisplay(1, "elevation", "si") } as const;

export const elevationNumber = (elevation: number, units: "us" | "si"): string =>
  (elevation * perMetre[units]).toFixed(digits[units]);

export const elevationText = (elevation: number, units: "us" | "si"): string =>
  `${elevationNumber(elevation, units)} ${dimensions.elevation[units].unit}`;
