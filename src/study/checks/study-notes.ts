import type { AssumptionSet } from "../../assumptions/entry.js";
import { counted } from "../../counted.js";
import { movedSections } from "../format/report-schema.js";
import type { StudyDocument } from "../format/schema.js";
import { indexStandsFor } from "../prepare/prices.js";
import { type Problem, pathText } from "../reading/problems.js";

const moved: ReadonlySet<string> = new Set(movedSections);

/** What an author should know of a study that is in order; nothing of it changes a figure. */
export const studyNotes = (document: StudyDocument, set: Pick<AssumptionSet, "priceIndices">): Problem[] => [
  ...priceYearNotes(document, set),
  ...movedSectionNotes(document),
  ...earlierNotes(document),
  ...rateNotes(document),
  ...recordNotes(document),
];

/** A price year so new that no index of it is published. */
function priceYearNotes({ money }: StudyDocument, set: Pick<AssumptionSet, "priceIndices">): Problem[] {
  const latest = indexStandsFor(money, set);
  if (latest === undefined) return [];
  return [
    {
      path: "money.priceYear",
      at: ["money", "priceYear"],
      found: `${money.priceYear}, whose price index is not published yet`,
      allowed: `a year up to ${latest}`,
      remedy: `The index of ${latest} stands for it until the assumptions hold its own, or you enter it with its source.`,
      unusual: true,
    },
  ];
}

/** A yearly chance of the author's own in which the program in force may be counted already. */
function rateNotes(document: StudyDocument): Problem[] {
  const { boats, study, options, lake } = document;
  const existing = options.find(({ id, steps }) => id === study.existingOption && steps !== undefined);
  const { ownRate } = boats.chance;
  if (!ownRate || ownRate.under !== undefined || !existing || lake.infestedSince !== undefined) return [];
  const at = ["boats", "chance", "ownRate", "under"];
  return [
    {
      path: pathText(at, document),
      at,
      found: `nothing, while “${existing.name}” is in force`,
      allowed: "the option whose checks are in the chance, or nothing for a chance without checks",
      remedy: `If the chance was seen or judged with “${existing.name}” in force, name it here, or its checks count twice.`,
      unusual: true,
    },
  ];
}

/** What of a record of levels is not used, and what stands above full pool. */
function recordNotes({ lake }: StudyDocument): Problem[] {
  if (!lake.record) return [];
  const { withGaps, above, years } = lake.record.levels;
  const at = ["lake", "record"];
  const place = { path: "lake.record", at, unusual: true };
  return [
    ...(withGaps.length > 0
      ? [
          {
            ...place,
            found: `${counted(withGaps.length, "year")} with gaps that are not joined: ${withGaps.join(", ")}`,
            allowed: "years without such gaps, as the study says how long a gap may be joined",
            remedy: `The other ${counted(years.length, "year")} are used. Join longer gaps, or add what is missing.`,
          },
        ]
      : []),
    ...(above
      ? [
          {
            ...place,
            found: `${counted(above.days, "day")} above full pool, ${lake.maximumElevation.text}, the highest in ${above.label}`,
            allowed: "levels up to full pool, or floods above it",
            remedy: "They are kept as floods. If there are none, correct the record or full pool.",
          },
        ]
      : []),
  ];
}

/** What became of fields of an earlier version, for the study's author. */
function earlierNotes({ study }: StudyDocument): Problem[] {
  return study.fromEarlier.map((found, index) => ({
    path: `study.fromEarlier[${index}]`,
    at: ["study", "fromEarlier", index],
    found,
    allowed: "the terms of this version",
    remedy: "Check it, then remove the line.",
    unusual: true,
  }));
}

/** Sections that a study leaves out of its report and that no report has any more. */
function movedSectionNotes(document: StudyDocument): Problem[] {
  return document.report.leaveOut.flatMap((section, index) => {
    if (!moved.has(section)) return [];
    const at = ["report", "leaveOut", index];
    return [
      {
        path: pathText(at, document),
        at,
        found: `"${section}", which is in the method document now`,
        allowed: "a section that reports have",
        remedy: "It is ignored, and may stay or go.",
        unusual: true,
      },
    ];
  });
}
