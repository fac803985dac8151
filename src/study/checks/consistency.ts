import { scaledTraffic } from "../../model/program/traffic.js";
import { foundProblems } from "../papers/consistency-found.js";
import { requestProblems } from "../papers/consistency-request.js";
import { enteredTraffic, launchesOf } from "../prepare/traffic.js";
import { type Contradiction, repeatedIds } from "../reading/contradiction.js";
import type { RecordReaders } from "../reading/record-readers.js";
import { searchProblems } from "../search/search-problems.js";
import { boatProblems } from "./consistency-boats.js";
import { chanceProblems } from "./consistency-chance.js";
import { detectionProblems } from "./consistency-detection.js";
import { enteredProblems } from "./consistency-entered.js";
import { levelProblems } from "./consistency-levels.js";
import { moneyProblems } from "./consistency-money.js";
import { openProblems } from "./consistency-open.js";
import { programProblems } from "./consistency-program.js";
import { stationProblems } from "./consistency-staffing.js";
import { soundTraffic } from "./consistency-traffic.js";
import { uniqueProblems } from "./consistency-unique.js";
import { oncePer } from "./once-per.js";
import { bearerShareProblems } from "./share-sums.js";
import type { SoundParts } from "./sound-parts.js";
import { lineProblems } from "./structures/consistency-lines.js";
import { structureProblems } from "./structures/consistency-structures.js";

export function contradictions(parts: SoundParts, readers: RecordReaders): Contradiction[] {
  return [
    ...(parts.lake ? levelProblemsOf(readers)(parts.lake) : []),
    ...structureProblems(parts),
    ...lineProblems(parts),
    ...enteredProblems(parts),
    ...(parts.boats ? boatProblems(parts.boats, readers) : []),
    ...chanceProblems(parts),
    ...optionProblems(parts),
    ...programProblems(parts),
    ...requestProblems(parts),
    ...foundProblems(parts),
    ...searchProblems(parts, readers),
    ...rampProblems(parts, readers),
    ...detectionProblems(parts),
    ...bearerProblems(parts),
    ...inflationProblems(parts),
    ...moneyProblems(parts),
    ...infestedProblems(parts),
    ...repeatedIds(parts.overrides ?? [], ["overrides"]),
    ...uniqueProblems(parts),
  ];
}

/** The ends of most ranges are tried with the same lake. */
const levelProblemsOf = oncePer((readers: RecordReaders) =>
  oncePer((lake: NonNullable<SoundParts["lake"]>) => levelProblems(lake, readers)),
);

/** Problems of traffic, open hours and stations; each waits until those it depends on are fixed. */
function rampProblems({ boats, options = [] }: SoundParts, readers: RecordReaders): Contradiction[] {
  const without = (problems: readonly Contradiction[]) => [
    ...problems,
    ...openProblems(options, "unsound"),
    ...stationProblems(options, undefined),
  ];
  if (!boats) return without([]);
  const judged = soundTraffic(boats, readers);
  if (judged.problems) return without(judged.problems);
  const read = judged.sound;
  const entered = read && enteredTraffic(read, boats);
  const open = openProblems(options, entered && { read, entered });
  const scaled = entered && open.length === 0 ? scaledTraffic(entered, launchesOf(boats)) : undefined;
  const sound = scaled && { classes: boats.classes, traffic: scaled };
  return [...open, ...stationProblems(options, sound)];
}

function optionProblems({ options, study, lake }: SoundParts): Contradiction[] {
  if (!options) return [];
  const problems = repeatedIds(options, ["options"]);
  const doing = options.filter(({ steps, schedule }) => steps !== undefined || schedule !== undefined);
  const idle = options.length - doing.length;
  if (idle !== 1) {
    problems.push({
      path: ["options"],
      found: `${idle} options with neither steps nor schedule`,
      allowed: "exactly one option with neither: the one to compare the others with",
    });
  }
  if (study && !doing.some(({ id }) => id === study.requestedOption)) {
    problems.push({
      path: ["study", "requestedOption"],
      found: `"${study.requestedOption}"`,
      allowed: `the id of an option with steps or schedule: ${doing.map(({ id }) => id).join(", ")}`,
    });
  }
  return lake ? [...problems, ...optionScheduleProblems(options, lake)] : problems;
}

function optionScheduleProblems(
  options: NonNullable<SoundParts["options"]>,
  { otherSchedules }: NonNullable<SoundParts["lake"]>,
): Contradiction[] {
  const known = otherSchedules.map(({ id }) => id);
  const allowed = `an id from lake.otherSchedules: ${known.join(", ") || "there is none yet"}`;
  return options.flatMap(({ schedule }, index) =>
    schedule === undefined || known.includes(schedule)
      ? []
      : [{ path: ["options", index, "schedule"], found: `"${schedule}"`, allowed }],
  );
}

function bearerProblems({ money, structures }: SoundParts): Contradiction[] {
  if (!money) return [];
  const known = money.bearers.map(({ id }) => id);
  const allowed = `an id from money.bearers: ${known.join(", ")}`;
  const problems = repeatedIds(money.bearers, ["money", "bearers"]);
  if (!known.includes(money.programBearer)) {
    problems.push({ path: ["money", "programBearer"], found: `"${money.programBearer}"`, allowed });
  }
  for (const { index, value } of structures) {
    problems.push(...bearerShareProblems(value.bearer, ["structures", index, "bearer"], money.bearers));
  }
  return problems;
}

function inflationProblems({ money }: SoundParts): Contradiction[] {
  if (!money || money.inflation.value === 0 || money.inflationOrigin !== undefined) return [];
  const allowed = "a text that says where the inflation comes from";
  return [{ path: ["money", "inflationOrigin"], found: "nothing", allowed }];
}

function infestedProblems({ lake, money }: SoundParts): Contradiction[] {
  if (!lake?.infestedSince || !money || lake.infestedSince <= money.startYear) return [];
  return [
    {
      path: ["lake", "infestedSince"],
      found: String(lake.infestedSince),
      allowed: `a year up to the start year, ${money.startYear}; leave it out for a lake without mussels`,
    },
  ];
}
