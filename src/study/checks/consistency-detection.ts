import { findsPerSample } from "../../model/risk/detection.js";
import type { MonitoringDocument } from "../format/detection-schema.js";
import type { Contradiction } from "../reading/contradiction.js";
import { bearerShareProblems, type Payers } from "./share-sums.js";
import type { SoundParts } from "./sound-parts.js";

type Path = readonly PropertyKey[];

/** Contradictions in how options watch for mussels and respond to them. */
export function detectionProblems({ options, lake, money }: SoundParts): Contradiction[] {
  if (!options) return [];
  return [
    ...options.flatMap(({ monitoring }, index) =>
      monitoring ? monitoringProblems(monitoring, ["options", index, "monitoring"]) : [],
    ),
    ...someWithout(options),
    ...(lake?.infestedSince === undefined ? [] : infestedProblems(options, lake.infestedSince)),
    ...(money ? bearerProblems(options, money.bearers) : []),
  ];
}

type Options = NonNullable<SoundParts["options"]>;

function monitoringProblems(monitoring: MonitoringDocument, path: Path): Contradiction[] {
  const { noticedWithin } = monitoring;
  if (!noticedWithin) return [];
  const counted = Object.keys(findsPerSample).filter((kind) => Reflect.get(monitoring, kind) !== undefined);
  const both: Contradiction[] = counted.map((kind) => ({
    path: [...path, "noticedWithin"],
    found: `chances beside ${kind}`,
    allowed: "chances or numbers of samples, not both",
    remedy: "Take out the one that does not say how soon mussels are detected.",
  }));
  const falling: Contradiction[] = noticedWithin.flatMap((chance, year) => {
    const before = noticedWithin[year - 1];
    return before && chance.value < before.value
      ? [
          {
            path: [...path, "noticedWithin", year],
            found: chance.text,
            allowed: `at least the chance by the year before, ${before.text}`,
            remedy:
              "Enter the chance of having detected them by the end of each year, not that of the year alone.",
          },
        ]
      : [];
  });
  return [...both.slice(0, 1), ...falling];
}

/** Comparing options with and without immediate detection would be unfair. */
function someWithout(options: Options): Contradiction[] {
  const without = options.filter(({ monitoring }) => monitoring === undefined);
  if (without.length === options.length) return [];
  return options.flatMap(({ monitoring }, index) =>
    monitoring === undefined
      ? [
          {
            path: ["options", index, "monitoring"],
            found: "nothing, while other options say how they watch for mussels",
            allowed: "monitoring in every option or in none",
            remedy:
              "Say how this option watches for mussels; if it does not, give an origin alone: they are then detected by the first harm.",
          },
        ]
      : [],
  );
}

function infestedProblems(options: Options, since: number): Contradiction[] {
  const remedy = "Take it out, or leave out lake.infestedSince for a lake without mussels.";
  return options.flatMap((option, index) =>
    (["monitoring", "response"] as const)
      .filter((field) => option[field] !== undefined)
      .map((field) => ({
        path: ["options", index, field],
        found: `${field} in a lake infested since ${since}`,
        allowed: "nothing: mussels there are known already",
        remedy,
      })),
  );
}

function bearerProblems(options: Options, known: Payers): Contradiction[] {
  return options.flatMap(({ response }, index) =>
    response?.bearer === undefined
      ? []
      : bearerShareProblems(response.bearer, ["options", index, "response", "bearer"], known),
  );
}
