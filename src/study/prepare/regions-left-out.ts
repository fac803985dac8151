import type { AssumptionSet } from "../../assumptions/entry.js";
import { foundingEntries } from "../../assumptions/founding/founding-entries.js";
import type { StudyDocument } from "../format/schema.js";
import { type Problem, problemOf } from "../reading/problems.js";

/** Assumptions with the chances of a founding estimated anew where a study leaves regions of the counts out. */
export function withoutRegions(set: AssumptionSet, regions: readonly string[]): AssumptionSet {
  if (regions.length === 0) return set;
  const anew = foundingEntries(set.foundingEvidence, regions).map((entry) => [entry.id, entry] as const);
  return { ...set, entries: new Map([...set.entries, ...anew]) };
}

/** Regions that the counts lack, and a list that leaves none. */
export function regionProblems(document: StudyDocument, { foundingEvidence }: AssumptionSet): Problem[] {
  const { leaveOutRegions } = document.boats.chance;
  const { regions } = foundingEvidence;
  const path = ["boats", "chance", "leaveOutRegions"];
  const unknown = leaveOutRegions.flatMap((region, index) =>
    regions.some(({ id }) => id === region)
      ? []
      : [
          {
            path: [...path, index],
            found: `"${region}"`,
            allowed: `a region of the counts: ${regions.map(({ id }) => id).join(", ")}`,
          },
        ],
  );
  const isNoneLeft = regions.every(({ id }) => leaveOutRegions.includes(id));
  const none = isNoneLeft
    ? [
        {
          path,
          found: "every region of the counts",
          allowed: "at least one region that is not left out",
          remedy: "Take one off the list, or give the chance in boats.chance.ownRate.",
        },
      ]
    : [];
  return [...unknown, ...none].map((each) => problemOf(each, document));
}
