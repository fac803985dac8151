import type { BoatsDocument } from "../format/boats-schema.js";
import type { Contradiction } from "../reading/contradiction.js";
import type { SoundParts } from "./sound-parts.js";

/** What cannot be true of the ways to the yearly chance: other ways in, clean years, what drives the answer. */
export function chanceProblems({ boats, money, options, lake }: SoundParts): Contradiction[] {
  if (!boats) return [];
  return [
    ...sourceProblems(boats.otherWays ?? [], money),
    ...nameProblems(boats.otherWays ?? []),
    ...(lake?.infestedSince === undefined
      ? periodProblems(boats.cleanPeriods, money)
      : infestedProblems(boats)),
    ...idProblems(boats, options),
    ...drivenProblems(boats),
    ...ownRateProblems(boats),
  ];
}

type Years = Pick<NonNullable<SoundParts["money"]>, "startYear" | "horizon"> | undefined;

function sourceProblems(ways: NonNullable<BoatsDocument["otherWays"]>, years: Years): Contradiction[] {
  return ways.flatMap(({ infestedFrom, becomesInfested }, index) => {
    const path = ["boats", "otherWays", index];
    if (infestedFrom === undefined) return [];
    if (becomesInfested !== undefined) {
      return [
        {
          path: [...path, "becomesInfested"],
          found: `${becomesInfested.text} beside infestedFrom: ${infestedFrom}`,
          allowed:
            "the year from which its source is infested or the yearly chance that it becomes so, not both",
          remedy: "Keep the one that you know.",
        },
      ];
    }
    const end = years && years.startYear + years.horizon - 1;
    return end !== undefined && infestedFrom > end
      ? [
          {
            path: [...path, "infestedFrom"],
            found: String(infestedFrom),
            allowed: `a year up to ${end}, the last of the horizon`,
            remedy: "Take the way in out of the study, or lengthen the horizon.",
          },
        ]
      : [];
  });
}

/** Ranges are drawn by the names of what they stand in. */
const nameProblems = (ways: NonNullable<BoatsDocument["otherWays"]>): Contradiction[] =>
  ways.flatMap(({ name }, index) =>
    ways.findIndex((each) => each.name === name) === index
      ? []
      : [
          {
            path: ["boats", "otherWays", index, "name"],
            found: `"${name}" a second time`,
            allowed: "a name used once among the other ways in",
          },
        ],
  );

function periodProblems(periods: BoatsDocument["cleanPeriods"], years: Years): Contradiction[] {
  return periods.flatMap(({ from, to }, index): Contradiction[] => {
    const path = ["boats", "cleanPeriods", index];
    if (from > to) {
      return [{ path: [...path, "to"], found: String(to), allowed: `a year from ${from} on, its first` }];
    }
    if (years && to >= years.startYear) {
      return [
        {
          path: [...path, "to"],
          found: String(to),
          allowed: `a year before ${years.startYear}, the first of the study`,
          remedy: "End the period before the study starts.",
        },
      ];
    }
    const other = periods.slice(0, index).find((each) => each.from <= to && from <= each.to);
    return other
      ? [
          {
            path: [...path, "from"],
            found: `${from} to ${to}, which overlaps ${other.from} to ${other.to}`,
            allowed: "each year in one period",
            remedy: "Part the periods, so that no year counts twice.",
          },
        ]
      : [];
  });
}

const infestedProblems = ({ cleanPeriods }: BoatsDocument): Contradiction[] =>
  cleanPeriods.length === 0
    ? []
    : [
        {
          path: ["boats", "cleanPeriods"],
          found: "clean years of a lake that is infested",
          allowed: "none where lake.infestedSince is set",
          remedy: "Take out one of the two.",
        },
      ];

function idProblems(
  { chance, cleanPeriods }: BoatsDocument,
  options: SoundParts["options"],
): Contradiction[] {
  if (!options) return [];
  const known = options.map(({ id }) => id);
  const under = [
    { path: ["boats", "chance", "ownRate", "under"], id: chance.ownRate?.under },
    ...cleanPeriods.map(({ under: id }, index) => ({ path: ["boats", "cleanPeriods", index, "under"], id })),
  ];
  return under.flatMap(({ path, id }) =>
    id === undefined || known.includes(id)
      ? []
      : [{ path, found: `"${id}"`, allowed: `the id of an option: ${known.join(", ")}` }],
  );
}

/** A yearly chance holds all ways in: also those that the study names. */
function ownRateProblems({ chance: { ownRate }, otherWays = [] }: BoatsDocument): Contradiction[] {
  if (!ownRate) return [];
  const present = otherWays.filter(
    ({ infestedFrom, becomesInfested }) => infestedFrom === undefined && becomesInfested === undefined,
  );
  const clean = present.reduce((product, { chance }) => product * (1 - chance.value), 1);
  if (present.length === 0 || ownRate.chance.value > 1 - clean) return [];
  return [
    {
      path: ["boats", "chance", "ownRate", "chance"],
      found: `${ownRate.chance.text}, no more than the other ways in have together, ${Number(((1 - clean) * 100).toPrecision(3))} %/yr`,
      allowed: "more than that: the yearly chance holds all ways in, boats and others",
      remedy: "Enter the chance of all ways together, or correct boats.otherWays.",
    },
  ];
}

/** Comparable lakes alone say nothing of a program where no boat brings mussels that it could stop. */
function drivenProblems({ chance, classes }: BoatsDocument): Contradiction[] {
  const isFouled = classes.some(({ fouled }) => "found" in fouled || fouled.value > 0);
  if (chance.drivenBy !== "lakes" || isFouled) return [];
  return [
    {
      path: ["boats", "chance", "drivenBy"],
      found: "lakes, while no class has fouled boats",
      allowed: "lakes, where some class has fouled boats that a program can stop",
      remedy: "Enter the fouled share of the classes, or choose launches.",
    },
  ];
}
