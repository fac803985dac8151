import { hoursPerDay } from "../../model/lake/calendar.js";
import type { SoundParts } from "../checks/sound-parts.js";
import { searchedLevelProblems } from "../levels/level-problems.js";
import type { Contradiction } from "../reading/contradiction.js";
import type { RecordReaders } from "../reading/record-readers.js";

/** Contradictions between what a search may vary and the options, sites, days, fees and levels that there are. */
export function searchProblems(
  { search, options, boats, lake }: SoundParts,
  readers: RecordReaders,
): Contradiction[] {
  if (!search) return [];
  return [
    ...varyProblems(search, lake, options),
    ...(lake && search.levels ? searchedLevelProblems(search.levels, lake, readers) : []),
    ...(options ? programProblems(search, options, boats) : []),
  ];
}

/** Where no program can be searched, levels must vary. */
function varyProblems({ vary }: Search, lake: SoundParts["lake"], options: Options = []): Contradiction[] {
  if (!vary || vary.includes("levels") || !lake) return [];
  const isInfested = lake.infestedSince !== undefined;
  if (!isInfested && (options.length === 0 || options.some(({ steps }) => steps !== undefined))) return [];
  return [
    {
      path: ["search", "vary"],
      found: `${vary.join(", ") || "nothing"}, ${isInfested ? "in a lake that is infested" : "and no option with steps"}`,
      allowed: "levels, which can be searched here",
      remedy: "Add levels, or leave vary out.",
    },
  ];
}

function programProblems(search: Search, options: Options, boats: SoundParts["boats"]): Contradiction[] {
  return [
    ...baseProblems(search, options),
    ...hourProblems(search),
    ...(boats ? placeProblems(search, boats) : []),
    ...feeProblems(search, options),
  ];
}

type Search = NonNullable<SoundParts["search"]>;
type Options = NonNullable<SoundParts["options"]>;

function baseProblems({ from }: Search, options: Options): Contradiction[] {
  const known = options.filter(({ steps }) => steps !== undefined).map(({ id }) => id);
  if (from === undefined || known.includes(from)) return [];
  const allowed = `the id of an option with steps: ${known.join(", ")}`;
  return [{ path: ["search", "from"], found: `"${from}"`, allowed }];
}

function hourProblems({ earliest = 0, latest = hoursPerDay, mostHours }: Search): Contradiction[] {
  if (earliest >= latest) {
    return [
      {
        path: ["search", "latest"],
        found: `${latest} after an earliest hour of ${earliest}, between which there is no hour`,
        allowed: `an hour after ${earliest}, up to ${hoursPerDay}`,
      },
    ];
  }
  if (mostHours === undefined || mostHours <= latest - earliest) return [];
  return [
    {
      path: ["search", "mostHours"],
      found: `${mostHours} hours a day, of the ${latest - earliest} from ${earliest} to ${latest}`,
      allowed: `at most ${latest - earliest} hours`,
      remedy: "Lower it, or widen earliest and latest as far as the law lets stations be open.",
    },
  ];
}

function placeProblems(
  search: Search,
  { sites, traffic }: NonNullable<SoundParts["boats"]>,
): Contradiction[] {
  const unknown = (field: "sites" | "dayTypes", known: readonly string[], list: string) =>
    (search[field] ?? []).flatMap((id, index): Contradiction[] =>
      known.includes(id)
        ? []
        : [
            {
              path: ["search", field, index],
              found: `"${id}"`,
              allowed: `an id of ${list}: ${known.join(", ") || "there is none yet"}`,
            },
          ],
    );
  const dayTypes = traffic?.dayTypes?.map(({ id }) => id);
  return [
    ...unknown("sites", sites?.map(({ id }) => id) ?? [], "boats.sites"),
    ...(dayTypes || !traffic ? unknown("dayTypes", dayTypes ?? [], "boats.traffic") : []),
  ];
}

/** Above the highest fee for which a loss of demand is stated nobody knows who still comes. */
function feeProblems({ fees, from }: Search, options: Options): Contradiction[] {
  const option = options.find(({ id }) => id === from) ?? options.find(({ demandLoss }) => demandLoss);
  const stated = option?.demandLoss?.fee.value;
  if (!fees || !option || stated === undefined) return [];
  const highest = Math.max(0, ...option.fees.map(({ fee }) => fee.value));
  return fees.flatMap((times, index): Contradiction[] =>
    times * highest <= stated * (1 + 1e-9)
      ? []
      : [
          {
            path: ["search", "fees", index],
            found: `${times} times a fee of ${highest}, which is ${Number((times * highest).toFixed(2))}`,
            allowed: `a multiple that keeps every fee of “${option.name}” up to ${stated}, the highest for which demandLoss is stated`,
            remedy: "Lower it, or state the loss of demand at a higher fee.",
          },
        ],
  );
}
