import type { Traffic } from "../model/inputs.js";
import type { BoatsDocument } from "./boats-schema.js";
import { type Contradiction, exactlyOne } from "./contradiction.js";
import type { StudyDocument } from "./schema.js";
import { hourOf, openingsOf, trafficOf } from "./traffic.js";
import type { OpenDocument } from "./traffic-schema.js";

type Path = readonly PropertyKey[];

/**
 * Open hours of the options against their steps and the traffic.
 * @param boats absent where they have problems of their own
 */
export function openProblems(
  options: StudyDocument["options"],
  boats: BoatsDocument | undefined,
): Contradiction[] {
  return options.flatMap(({ open, steps }, index) => {
    const path = ["options", index, "open"];
    const hours = (open ?? []).flatMap((entry, place) => hourProblems(entry, [...path, place]));
    return [
      ...coverageProblems({ open, coverage: steps?.coverage }, steps !== undefined, ["options", index]),
      ...hours,
      ...(open && boats ? trafficProblems(open, boats, path) : []),
    ];
  });
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

function trafficProblems(open: OpenDocument, boats: BoatsDocument, path: Path): Contradiction[] {
  const traffic = trafficOf(boats);
  if (!traffic) {
    const remedy = "Add boats.traffic, or enter steps.coverage in place of the hours.";
    return [
      { path, found: "open hours without boats.traffic", allowed: "open hours beside traffic", remedy },
    ];
  }
  const unknown = open.flatMap((entry, place) => [
    ...unknownIds(entry.dayTypes, { known: traffic.dayTypes, list: "boats.traffic" }, [
      ...path,
      place,
      "dayTypes",
    ]),
    ...unknownIds(entry.sites, { known: boats.sites ?? [], list: "boats.sites" }, [...path, place, "sites"]),
  ]);
  return [...unknown, ...openTwice(open, traffic, path)];
}

function unknownIds(
  ids: readonly string[] = [],
  { known, list }: { readonly known: ReadonlyArray<{ readonly id: string }>; readonly list: string },
  path: Path,
): Contradiction[] {
  const names = known.map(({ id }) => id);
  return ids.flatMap((id, index) =>
    names.includes(id)
      ? []
      : [
          {
            path: [...path, index],
            found: `"${id}"`,
            allowed: `an id of ${list}: ${names.join(", ") || "there is none yet"}`,
          },
        ],
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
