import { at } from "../../lists.js";
import type { FoundTimes } from "../../model/risk/course.js";
import type { LakeFutures } from "./draws.js";

/** What draws of the lake say together, in the order of blocks, lakes and futures. */
export interface DrawnFutures {
  readonly options: readonly JoinedFutures[];
  /** Of each draw of the lake: present value of 1 in each year of the horizon, and the plan of each part. */
  readonly annuities: Float64Array;
  readonly plans: ReadonlyArray<readonly string[]>;
}

/** Before the first draw. */
export const noneDrawn: DrawnFutures = { options: [], annuities: new Float64Array(), plans: [] };

/** An option's figures over the futures of all draws of the lake. */
export interface JoinedFutures {
  readonly expected: Float64Array;
  readonly cost: Float64Array;
  readonly program: Float64Array;
  readonly everInfested: Float64Array;
  readonly infestedAtEnd: Float64Array;
  /** Chance to have established by the end of each year, lake after lake. */
  readonly establishedBy: Float64Array;
  /** What staff entered, by account; the other losses also as they come out. */
  readonly duty: Float64Array;
  readonly policy: Float64Array;
  readonly other: Float64Array;
  readonly otherCost: Float64Array;
  /** Of the first blocks alone, future after future. */
  readonly byYear: Float64Array;
  /** Of each draw of the lake: present cost of the program while the lake stays clean. */
  readonly cleanProgram: Float64Array;
  /** What is done once mussels are found: one column for each phase. */
  readonly found?: JoinedFound | undefined;
}

interface JoinedFound {
  readonly expected: readonly Float64Array[];
  readonly cost: readonly Float64Array[];
  readonly times: Readonly<Record<keyof FoundTimes, Float64Array>>;
  readonly isFound: Float64Array;
}

/**
 * Draws of the lake in their order, one or more, after those that are joined already: columns of all take far
 * less memory than lists for each lake.
 */
export function joinedFutures(lakes: readonly LakeFutures[], before = noneDrawn): DrawnFutures {
  return {
    options: at(lakes, 0).expected.map((_, option) => optionFutures(lakes, option, before.options[option])),
    annuities: joined([before.annuities, lakes.map(({ annuity }) => annuity)]),
    plans: [...before.plans, ...lakes.map(({ plans }) => plans)],
  };
}

function optionFutures(
  lakes: readonly LakeFutures[],
  option: number,
  before: JoinedFutures | undefined,
): JoinedFutures {
  const column = (key: Exclude<keyof JoinedFutures, "found" | "cleanProgram" | "byYear">) =>
    joined([before?.[key] ?? [], ...lakes.map((lake) => at<ArrayLike<number>>(lake[key], option))]);
  return {
    expected: column("expected"),
    cost: column("cost"),
    program: column("program"),
    everInfested: column("everInfested"),
    infestedAtEnd: column("infestedAtEnd"),
    establishedBy: column("establishedBy"),
    duty: column("duty"),
    policy: column("policy"),
    other: column("other"),
    otherCost: column("otherCost"),
    byYear: joined([before?.byYear ?? [], ...lakes.map(({ byYear }) => byYear[option] ?? [])]),
    cleanProgram: joined([
      before?.cleanProgram ?? [],
      lakes.map(({ cleanProgram }) => at(cleanProgram, option)),
    ]),
    found: foundFutures(lakes, option, before?.found),
  };
}

function foundFutures(
  lakes: readonly LakeFutures[],
  option: number,
  before: JoinedFound | undefined,
): JoinedFound | undefined {
  const found = lakes.flatMap(({ found: all }) => (all ? [at(all, option)] : []));
  const [first] = found;
  if (!first) return undefined;
  const phases = (key: "expected" | "cost") =>
    first[key].map((_, phase) =>
      joined([before?.[key][phase] ?? [], ...found.map((lake) => at(lake[key], phase))]),
    );
  const times = (key: keyof FoundTimes) =>
    joined([before?.times[key] ?? [], ...found.map((lake) => lake.times[key])]);
  return {
    expected: phases("expected"),
    cost: phases("cost"),
    times: {
      found: times("found"),
      tried: times("tried"),
      contained: times("contained"),
      returned: times("returned"),
    },
    isFound: joined([before?.isFound ?? [], ...found.map(({ isFound }) => isFound)]),
  };
}

/** Lists put together in their order, in memory that threads share: a worker that is sent them copies nothing. */
function joined(lists: ReadonlyArray<ArrayLike<number>>): Float64Array {
  const count = lists.reduce((sum, { length }) => sum + length, 0);
  const all = new Float64Array(new SharedArrayBuffer(count * Float64Array.BYTES_PER_ELEMENT));
  let place = 0;
  for (const list of lists) {
    all.set(list, place);
    place += list.length;
  }
  return all;
}
