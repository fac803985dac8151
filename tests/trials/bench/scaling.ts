import type { Assumed } from "#product/model/assumed.js";
import type { ProgramOption, StudyInput } from "#product/model/inputs.js";
import type { PreparedStudy } from "#product/study/prepare/prepared.js";
import { compareWhole, largeLake } from "./lake.js";

/** How the time of a comparison grows with one of its sizes. */
export interface Growth {
  readonly what: string;
  readonly rows: ReadonlyArray<{
    readonly size: number;
    /** Least time of warm comparisons, ms: others on the machine only ever add to it. */
    readonly milliseconds: number;
    /** Power of the size with which the time has grown since the row before: 1 is linear. */
    readonly power: number | undefined;
  }>;
}

const structures = 100;
const repeats = 7;

interface Sized {
  readonly what: string;
  readonly sizes: readonly number[];
  readonly prepared: PreparedStudy;
  readonly lakeOf: (input: StudyInput, size: number) => StudyInput;
}

/** Each size of one kind with all else as it is: 100 structures over 40 years with the example's options and levels. */
export function growthTables(study: PreparedStudy, withRecord: PreparedStudy): Growth[] {
  const kinds: readonly Sized[] = [
    { what: "structures", sizes: [100, 300, 1000], prepared: study, lakeOf: largeLake },
    { what: "years of the horizon", sizes: [10, 20, 40, 80], prepared: study, lakeOf: withHorizon },
    { what: "options", sizes: [2, 4, 8], prepared: study, lakeOf: withOptions },
    { what: "years of record", sizes: [5, 10, 20, 40], prepared: withRecord, lakeOf: withYears },
  ];
  return kinds.map(({ what, sizes, prepared: { input, assumed }, lakeOf }) => ({
    what,
    rows: timesOf(
      sizes.map((size) => ({ size, lake: lakeOf(input, size) })),
      assumed,
    ),
  }));
}

/** In turns, so that a slow moment of the machine meets all of them. */
function timesOf(
  lakes: ReadonlyArray<{ readonly size: number; readonly lake: StudyInput }>,
  assumed: Assumed,
): Growth["rows"] {
  const least = lakes.map(() => Number.POSITIVE_INFINITY);
  for (let repeat = 0; repeat <= repeats; repeat++) {
    for (const [index, { lake }] of lakes.entries()) {
      const start = performance.now();
      compareWhole(lake, assumed);
      const time = performance.now() - start;
      if (repeat > 0) least[index] = Math.min(least[index] ?? time, time);
    }
  }
  return lakes.map(({ size }, index) => {
    const [time, before, smaller] = [least[index] ?? 0, least[index - 1], lakes[index - 1]];
    const power = before && smaller ? Math.log(time / before) / Math.log(size / smaller.size) : undefined;
    return { size, milliseconds: time, power };
  });
}

function withHorizon(input: StudyInput, horizon: number): StudyInput {
  const lake = largeLake(input, structures);
  return { ...lake, money: { ...lake.money, horizon } };
}

/** The first option and, over and over, the last, each time with somewhat less coverage. */
function withOptions(input: StudyInput, count: number): StudyInput {
  const lake = largeLake(input, structures);
  const last = lake.options.slice(-1);
  const copies = Array.from({ length: count - 1 }, (_, copy) =>
    last.map((option) => lessCovered(option, copy)),
  );
  return { ...lake, options: [...lake.options.slice(0, 1), ...copies.flat()] };
}

function lessCovered(option: ProgramOption, copy: number): ProgramOption {
  const id = `${option.id}-${copy}`;
  const { steps } = option;
  return { ...option, id, steps: steps && { ...steps, coverage: steps.coverage * (1 - leastCut * copy) } };
}

const leastCut = 0.02;

/** The record's years over and over, each somewhat lower than the last, so that no two are the same. */
function withYears(input: StudyInput, years: number): StudyInput {
  const lake = largeLake(input, structures);
  const own = lake.lake.record ?? [];
  const record = Array.from({ length: years }, (_, year) => ({
    label: String(1900 + year),
    daily: (own[year % own.length]?.daily ?? []).map((level) => level - 0.001 * year),
  }));
  return { ...lake, lake: { ...lake.lake, record } };
}
