import type { SeasonLog } from "../reading/season-log.js";
import type { BoatLine } from "./boat-lines.js";

/** Boats of one class in one season. */
export interface ClassSum {
  readonly season: number;
  readonly vesselClass: string;
  readonly screened: number;
  readonly setAside: number;
  readonly fouled: number;
}

interface Mean {
  readonly mean: number;
  readonly count: number;
}

export interface BoatSums {
  /** By season, then class. */
  readonly classes: readonly ClassSum[];
  /** Mean minutes for each boat; absent where no line tells any. */
  readonly quickCheck: Mean | undefined;
  readonly fullInspection: Mean | undefined;
}

export function sumBoats(lines: readonly BoatLine[]): BoatSums {
  const sums = new Map<string, ClassSum>();
  for (const line of lines) {
    const key = `${line.season} ${line.vesselClass}`;
    const sum = sums.get(key);
    sums.set(key, {
      season: line.season,
      vesselClass: line.vesselClass,
      screened: (sum?.screened ?? 0) + line.screened,
      setAside: (sum?.setAside ?? 0) + line.setAside,
      fouled: (sum?.fouled ?? 0) + line.fouled,
    });
  }
  const ordered = [...sums.keys()].sort().flatMap((key) => sums.get(key) ?? []);
  return {
    classes: ordered,
    quickCheck: meanOf(lines, ({ quickCheck }) => quickCheck),
    fullInspection: meanOf(lines, ({ fullInspection }) => fullInspection),
  };
}

/** Lines with several boats count as often as they have boats. */
function meanOf(lines: readonly BoatLine[], read: (line: BoatLine) => number | undefined): Mean | undefined {
  let [sum, count] = [0, 0];
  for (const line of lines) {
    const minutes = read(line);
    if (minutes === undefined) continue;
    sum += minutes * line.screened;
    count += line.screened;
  }
  return count === 0 ? undefined : { mean: sum / count, count };
}

const head = "season,class,screened,setAside,fouled";

/** The log of a study: seasons of the file take the place of the same seasons before, others stay. */
export function seasonCsv(classes: readonly ClassSum[], before: SeasonLog | undefined): string {
  const seasons = new Set(classes.map(({ season }) => season));
  const kept = (before?.rows ?? []).filter(({ season }) => !seasons.has(season));
  const rows = [...kept, ...classes].sort(
    (one, other) => one.season - other.season || (one.vesselClass < other.vesselClass ? -1 : 1),
  );
  const lines = rows.map(({ season, vesselClass, screened, setAside, fouled }) =>
    [season, vesselClass, screened, setAside, fouled].join(","),
  );
  return `${[head, ...lines].join("\n")}\n`;
}
