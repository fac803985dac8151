import { daysInYear } from "../../model/lake/calendar.js";
import type { SoundParts } from "../checks/sound-parts.js";
import type { PhaseDocument } from "../format/found-schema.js";
import { type Contradiction, repeatedIds } from "../reading/contradiction.js";

type Path = readonly PropertyKey[];

/** Contradictions in what is done if mussels are found. */
export function foundProblems({
  report,
  lake,
  money,
  options = [],
  study,
  structures,
}: SoundParts): Contradiction[] {
  const found = report?.found;
  if (!found) return [];
  const at = (index: number): Path => ["report", "found", "phases", index];
  const requested = options.find(({ id }) => id === study?.requestedOption);
  const items = structures.flatMap(({ value }) =>
    "items" in value ? value.items.filter(({ apart }) => !apart).map(({ name }) => name) : [],
  );
  return [
    ...repeatedIds(found.contacts, ["report", "found", "contacts"]),
    ...found.phases.flatMap((phase, index) =>
      [
        ...restrictionProblems(phase),
        ...volumeProblems(phase, lake),
        ...costProblems(phase, requested?.response !== undefined),
        ...nameProblems(phase, "item", items, "the name of a duty or policy of a lake-wide structure"),
        ...(money
          ? nameProblems(
              phase,
              "payer",
              money.bearers.map(({ id }) => id),
              "an id from money.bearers",
            )
          : []),
      ].map((each) => ({ ...each, path: [...at(index), ...each.path] })),
    ),
    ...watchProblems(found),
  ];
}

function restrictionProblems({ phase, lasts }: PhaseDocument): Contradiction[] {
  return phase === "restriction" && lasts > daysInYear
    ? [
        {
          path: ["lasts"],
          found: `a closure of ${lasts.toLocaleString("en-US")} days`,
          allowed: `at most ${daysInYear} days, a year`,
          remedy: "Enter the days of the first year; what lasts is a yearly duty of the lake.",
        },
      ]
    : [];
}

function volumeProblems({ phase, volume }: PhaseDocument, lake: SoundParts["lake"]): Contradiction[] {
  if (!volume) return [];
  if (phase !== "treatment") {
    return [
      {
        path: ["volume"],
        found: `a volume of a phase that treats no water, ${phase}`,
        allowed: "a volume of a treatment only",
        remedy: "Take it out, or enter it at the treatment.",
      },
    ];
  }
  const largest = lake?.storageTable.toSorted((one, other) => other.storage.value - one.storage.value)[0];
  return largest && volume.value > largest.storage.value
    ? [
        {
          path: ["volume"],
          found: `${volume.text}, more water than the lake holds`,
          allowed: `at most ${largest.storage.text}, the largest storage of lake.storageTable`,
          remedy: "Enter the water of the bay or arm that is treated.",
        },
      ]
    : [];
}

/** A cost beside another place that says it too, which would count it twice. */
function costProblems({ phase, cost, item, volume }: PhaseDocument, hasResponse: boolean): Contradiction[] {
  if (cost && item !== undefined) {
    return [
      {
        path: ["cost"],
        found: `${cost.text} beside the item “${item}”`,
        allowed: "a cost or the item that has it, not both",
        remedy: "Take out one of them.",
      },
    ];
  }
  return phase === "treatment" && hasResponse && (cost ?? volume)
    ? [
        {
          path: [cost ? "cost" : "volume"],
          found: "a treatment with an amount of its own beside the response of the requested option",
          allowed: "one amount: that of the response, which the comparison has",
          remedy: "Take it out here, and correct the response's cost if it is another.",
        },
      ]
    : [];
}

function nameProblems(
  phase: PhaseDocument,
  field: "item" | "payer",
  known: readonly string[],
  what: string,
): Contradiction[] {
  const name = phase[field];
  return name === undefined || known.includes(name)
    ? []
    : [
        {
          path: [field],
          found: `"${name}"`,
          allowed: `${what}: ${known.join(", ") || "there is none"}`,
        },
      ];
}

function watchProblems({
  phases,
  cleanYears,
}: NonNullable<NonNullable<SoundParts["report"]>["found"]>): Contradiction[] {
  const needs = phases.some(({ phase }) => phase === "watch" || phase === "delisting");
  return needs && cleanYears === undefined
    ? [
        {
          path: ["report", "found", "cleanYears"],
          found: "nothing, beside a watch or a delisting",
          allowed: "the years without a find by the agency's rule, for instance 3 or 5",
        },
      ]
    : [];
}
