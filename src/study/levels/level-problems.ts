import { monthDays } from "../../model/lake/calendar.js";
import { daysBetween, levelYears } from "../../model/search/drawdown.js";
import { readLake } from "../checks/consistency-schedules.js";
import type { WrittenStudy } from "../format/schema.js";
import type { SearchDocument } from "../format/search-schema.js";
import { dayNumber, levelsOf } from "../prepare/to-model.js";
import type { Contradiction } from "../reading/contradiction.js";
import type { RecordReaders } from "../reading/record-readers.js";

type Levels = NonNullable<SearchDocument["levels"]>;
type LakeDocument = WrittenStudy["lake"];
type Found = Omit<Contradiction, "path"> & { readonly path: readonly PropertyKey[] };

/** Most drawdowns of a grid: more take minutes. */
const mostDrawdowns = 300;

/** Contradictions among the drawdowns that a search tries, their limits and the present levels. */
export function searchedLevelProblems(
  levels: Levels,
  lake: LakeDocument,
  readers: RecordReaders,
): Contradiction[] {
  const dates = dateProblems(levels);
  const read = readLake(lake, readers);
  const years = read.problems ? undefined : levelYears(levelsOf(read.sound));
  const problems = [
    ...dates,
    ...sizeProblems(levels),
    ...poolProblems(levels, lake, years),
    ...depthProblems(levels, lake),
    ...(dates.length === 0 ? refillProblems(levels) : []),
    ...(dates.length === 0 && years ? keptProblems(levels, years) : []),
  ];
  return problems.map(({ path, ...problem }) => ({ path: ["search", "levels", ...path], ...problem }));
}

function dateProblems({ from = [], refilledBy, notBelow }: Levels): Found[] {
  const dates: Array<readonly [readonly PropertyKey[], string]> = [
    ...from.map((on, index) => [["from", index], on] as const),
    ...(refilledBy === undefined ? [] : [[["refilledBy"], refilledBy] as const]),
    ...notBelow.flatMap((each, index) =>
      (["from", "until"] as const).map((end) => [["notBelow", index, end], each[end]] as const),
    ),
  ];
  return dates
    .filter(([, on]) => !isDate(on))
    .map(([path, on]) => ({
      ...{ path, found: `"${on}"` },
      allowed: "a day that the month has (29 February is left out)",
    }));
}

function isDate(on: string): boolean {
  const [month = 0, day = 0] = on.split("-").map(Number);
  return day <= (monthDays[month - 1] ?? 0);
}

function sizeProblems({ lowest, from, days }: Levels): Found[] {
  const count = (lowest?.length ?? 1) * (from?.length ?? 1) * (days?.length ?? 1);
  if (count <= mostDrawdowns) return [];
  return [
    {
      path: ["lowest"],
      found: `${count} drawdowns: each lowest level from each day for each number of days`,
      allowed: `at most ${mostDrawdowns}`,
      remedy: "List fewer, and then more of them around the one that costs least.",
    },
  ];
}

/** The pool lies between the lake's minimum and the lowest of the present levels. */
function poolProblems(
  { minimumPool }: Levels,
  { minimumElevation }: LakeDocument,
  years: ReadonlyArray<readonly number[]> | undefined,
): Found[] {
  if (!minimumPool) return [];
  const path = ["minimumPool"];
  if (minimumPool.value < minimumElevation.value) {
    const allowed = `an elevation from that of the lake’s own minimum, ${minimumElevation.text}`;
    return [{ path, found: minimumPool.text, allowed }];
  }
  const present = years && Math.min(...years.flat());
  if (present === undefined || minimumPool.value <= present + tolerance) return [];
  return [
    {
      path,
      found: `${minimumPool.text}, above the lowest of the levels as operated`,
      allowed: `at most ${like(minimumPool.text, minimumPool.value, present)}, to which the lake falls as operated`,
      remedy: "Lower it, or correct the lake’s own levels, which do not keep it.",
    },
  ];
}

/** Rounding of a conversion, m. */
const tolerance = 1e-6;

/** An elevation in the unit of another. */
function like(text: string, value: number, other: number): string {
  const unit = text.replace(/^[-\d.,\s]+/, "");
  const typed = Number(text.slice(0, text.length - unit.length).replaceAll(",", ""));
  return `${Number(((typed * other) / value).toFixed(2)).toLocaleString("en-US")} ${unit}`;
}

function depthProblems(
  { lowest = [], minimumPool }: Levels,
  { minimumElevation, maximumElevation }: LakeDocument,
): Found[] {
  const pool = minimumPool ?? minimumElevation;
  return lowest.flatMap(({ text, value }, index) =>
    value >= pool.value && value <= maximumElevation.value
      ? []
      : [
          {
            path: ["lowest", index],
            found: text,
            allowed: `an elevation from the minimum pool, ${pool.text}, to ${maximumElevation.text}`,
          },
        ],
  );
}

/** It must be possible to refill the lake after one of the drawdowns at least. */
function refillProblems({ from, days, refilledBy }: Levels): Found[] {
  if (!from || !days || refilledBy === undefined) return [];
  const shortest = Math.min(...days);
  const isPossible = from.some((on) => daysBetween(dayNumber(on), dayNumber(refilledBy)) > shortest);
  if (isPossible) return [];
  return [
    {
      path: ["refilledBy"],
      found: `"${refilledBy}", when every drawdown is still held: from ${from.join(" or ")} for ${shortest} days or more`,
      allowed: "a day after the lowest level has been held",
      remedy: "Refill later, draw down earlier or hold the lowest level for fewer days.",
    },
  ];
}

/** What is to be kept must be kept by the present levels. */
function keptProblems({ notBelow }: Levels, years: ReadonlyArray<readonly number[]>): Found[] {
  return notBelow.flatMap(({ from, until, elevation }, index) => {
    const [first, last] = [dayNumber(from), dayNumber(until)];
    const present = Math.min(
      ...years.flatMap((levels) =>
        levels.filter((_, day) => daysBetween(first, day) <= daysBetween(first, last)),
      ),
    );
    if (elevation.value <= present + tolerance) return [];
    return [
      {
        path: ["notBelow", index, "elevation"],
        found: `${elevation.text}, above the levels as operated from ${from} to ${until}`,
        allowed: `at most ${like(elevation.text, elevation.value, present)}, to which the lake falls in these days as operated`,
        remedy: "Lower it, or correct the days or the lake’s own levels.",
      },
    ];
  });
}
