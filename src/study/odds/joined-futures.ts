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

/** Draws of the lake in their order, one or more: columns take far less memory than lists for each lake. */
export const joinedFutures = (lakes: readonly LakeFutures[]): DrawnFutures => ({
  options: at(lakes, 0).expected.map((_, option) =>
    joinedOption(lakes.map((lake) => ofOption(lake, option))),
  ),
  annuities: joined([lakes.map(({ annuity }) => annuity)]),
  plans: lakes.map(({ plans }) => plans),
});

/** Parts of the draws in their order, one or more. */
export const joinedParts = (parts: readonly DrawnFutures[]): DrawnFutures => ({
  options: at(parts, 0).options.map((_, option) =>
    joinedOption(parts.map(({ options }) => at(options, option))),
  ),
  annuities: joined(parts.map(({ annuities }) => annuities)),
  plans: parts.flatMap(({ plans }) => plans),
});

/** An option's figures of one draw of the lake, or of several. */
type Piece = Readonly<Record<Exclude<keyof JoinedFutures, "found">, ArrayLike<number>>> & {
  readonly found?:
    | {
        readonly expected: ReadonlyArray<ArrayLike<number>>;
        readonly cost: ReadonlyArray<ArrayLike<number>>;
        readonly times: Readonly<Record<keyof FoundTimes, ArrayLike<number>>>;
        readonly isFound: ArrayLike<number>;
      }
    | undefined;
};

const ofOption = (lake: LakeFutures, option: number): Piece => ({
  expected: at(lake.expected, option),
  cost: at(lake.cost, option),
  program: at(lake.program, option),
  everInfested: at(lake.everInfested, option),
  infestedAtEnd: at(lake.infestedAtEnd, option),
  establishedBy: at(lake.establishedBy, option),
  duty: at(lake.duty, option),
  policy: at(lake.policy, option),
  other: at(lake.other, option),
  otherCost: at(lake.otherCost, option),
  byYear: lake.byYear[option] ?? [],
  cleanProgram: [at(lake.cleanProgram, option)],
  found: lake.found && at(lake.found, option),
});

function joinedOption(pieces: readonly Piece[]): JoinedFutures {
  const column = (key: Exclude<keyof Piece, "found">) => joined(pieces.map((piece) => piece[key]));
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
    byYear: column("byYear"),
    cleanProgram: column("cleanProgram"),
    found: joinedFound(pieces),
  };
}

function joinedFound(pieces: readonly Piece[]): JoinedFound | undefined {
  const found = pieces.flatMap((piece) => piece.found ?? []);
  const [first] = found;
  if (!first) return undefined;
  const phases = (key: "expected" | "cost") =>
    first[key].map((_, phase) => joined(found.map((each) => at(each[key], phase))));
  const times = (key: keyof FoundTimes) => joined(found.map((each) => each.times[key]));
  return {
    expected: phases("expected"),
    cost: phases("cost"),
    times: {
      found: times("found"),
      tried: times("tried"),
      contained: times("contained"),
      returned: times("returned"),
    },
    isFound: joined(found.map(({ isFound }) => isFound)),
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
