import type { Traffic } from "../../model/inputs.js";
import type { ReadTraffic } from "../format/read-records.js";
import type { WrittenStudy } from "../format/schema.js";
import type { ReadHours, SoundSteps } from "../format/sound-options.js";
import type { OpenDocument } from "../format/traffic-schema.js";
import { siteIdsOf } from "../prepare/sites.js";
import { hourOf, openingsOf } from "../prepare/traffic.js";
import { type Contradiction, exactlyOne, type Judged } from "../reading/contradiction.js";

type Path = readonly PropertyKey[];

type OptionDocument = WrittenStudy["options"][number];
type Steps = NonNullable<OptionDocument["steps"]>;

/** The study's traffic, as parsed and by site; `"unsound"` if it has problems of its own. */
type Known = { readonly read: ReadTraffic; readonly entered: Traffic } | "unsound" | undefined;

/** Contradictions between open hours and the options' steps or the traffic. */
export const openProblems = (options: readonly OptionDocument[], traffic: Known): Contradiction[] =>
  options.flatMap((option, index) => soundSteps(option, traffic, ["options", index]).problems ?? []);

/** An option's steps with their coverage, or with the open hours that determine it. */
export function soundSteps(
  { open, steps }: Pick<OptionDocument, "open" | "steps">,
  traffic: Known,
  path: Path,
): Judged<SoundSteps<Steps>> {
  const own = coverageProblems({ open, coverage: steps?.coverage }, steps !== undefined, path);
  const hours = open && readHours(open, traffic, [...path, "open"]);
  const problems = [...own, ...(hours?.problems ?? [])];
  if (own.length > 0) return { problems };
  const none = { open: undefined, hours: undefined };
  if (!steps) return { sound: { steps, ...none } };
  if (open && hours && !hours.problems) return { sound: { steps, open, hours: hours.sound } };
  const { coverage } = steps;
  return coverage ? { sound: { steps: { ...steps, coverage }, ...none } } : { problems };
}

function readHours(open: OpenDocument, traffic: Known, path: Path): Judged<ReadHours> {
  const problems = open.flatMap((entry, place) => hourProblems(entry, [...path, place]));
  if (traffic === "unsound") return { problems };
  problems.push(...trafficProblems(open, traffic?.entered, path));
  if (problems.length > 0 || !traffic) return { problems };
  return { sound: { openings: openingsOf(open, traffic.entered), traffic: traffic.read } };
}

function coverageProblems(
  given: { readonly open: OpenDocument | undefined; readonly coverage: unknown },
  hasSteps: boolean,
  path: Path,
): Contradiction[] {
  if (!hasSteps) return given.open ? [openWithoutSteps([...path, "open"])] : [];
  return exactlyOne(given, "coverage", "open").map(({ found }) => ({
    path: [...path, "steps", "coverage"],
    found: found.replace("coverage", "steps.coverage"),
    allowed: "exactly one of steps.coverage and open, from which it is computed",
    remedy: given.open ? "Take out one of the two." : "Add one of the two.",
  }));
}

const openWithoutSteps = (path: Path): Contradiction => ({
  path,
  found: "open hours of an option without steps",
  allowed: "open hours only where steps say what is done in them",
  remedy: "Add the steps or take out the hours.",
});

function hourProblems({ from, to }: OpenDocument[number], path: Path): Contradiction[] {
  if (hourOf(from) < hourOf(to)) return [];
  return [
    {
      path: [...path, "to"],
      found: `"${to}" after opening at ${from}`,
      allowed: "a time after that of opening, on the same day",
    },
  ];
}

function trafficProblems(open: OpenDocument, traffic: Traffic | undefined, path: Path): Contradiction[] {
  if (!traffic) {
    const remedy = "Add boats.traffic, or enter steps.coverage in place of the hours.";
    return [
      { path, found: "open hours without boats.traffic", allowed: "open hours beside traffic", remedy },
    ];
  }
  const dayTypes = { known: traffic.dayTypes.map(({ id }) => id), list: "boats.traffic" };
  const sites = { known: siteIdsOf(traffic.sites), list: "boats.sites" };
  const unknown = open.flatMap((entry, place) => [
    ...unknownIds(entry.dayTypes, dayTypes, [...path, place, "dayTypes"]),
    ...unknownIds(entry.sites, sites, [...path, place, "sites"]),
  ]);
  return [...unknown, ...openTwice(open, traffic, path)];
}

function unknownIds(
  ids: readonly string[] = [],
  { known, list }: { readonly known: readonly string[]; readonly list: string },
  path: Path,
): Contradiction[] {
  const allowed = `an id of ${list}: ${known.join(", ") || "there is none yet"}`;
  return ids.flatMap((id, index) =>
    known.includes(id) ? [] : [{ path: [...path, index], found: `"${id}"`, allowed }],
  );
}

function openTwice(open: OpenDocument, traffic: Traffic, path: Path): Contradiction[] {
  const seen = new Set<string>();
  return openingsOf(open, traffic).flatMap(({ dayType, site }) => {
    const key = `${dayType} ${site}`;
    if (!seen.has(key)) {
      seen.add(key);
      return [];
    }
    const found = `hours of "${dayType}" at "${site}" a second time`;
    const remedy = "Take one of the two out; hours have no break.";
    return [{ path, found, allowed: "hours of each day type and site once", remedy }];
  });
}
