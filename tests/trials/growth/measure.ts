import type { Adversary } from "./texts.js";

/** What is given a text from outside. */
export interface Reader {
  readonly name: string;
  /** Longest text that can get here. */
  readonly most: number;
  /** Refusing is reading as well. */
  readonly read: (text: string) => unknown;
}

/** How the time of a reader grows with its text. */
export interface Growth {
  readonly reader: string;
  readonly text: string;
  readonly length: number;
  readonly milliseconds: number;
  /** Time over that of a text half as long; absent where the longest takes too little time to be told from none. */
  readonly ratio: number | undefined;
}

/** Doubling the text doubles the time of a linear reader and makes that of a quadratic one four times as long. */
export const steepest = 3;
/** Above this a longer text tells. */
const doubtful = 2.4;
/** Processor time, ms, that can be told from what else the process does. */
const noticed = 10;
/** And so many times what the reader takes for next to no text. */
const overNothing = 5;
const shortest = 16;
const first = 2048;
const step = 8;
const repetitions = 2;
const trials = 4;

/**
 * Lengthens a text until reading it takes noticed time, and then holds it against one half as long. It is processor
 * time, the least of several readings, and a steep ratio counts only where it comes in every trial: what else the
 * machine does makes no difference.
 */
export function growthOf(
  { name, most, read }: Reader,
  { name: text, of }: Adversary,
  mostLength: number,
): Growth {
  const longest = Math.min(most, mostLength);
  const least = (length: number) => leastTime(read, of(length), 0);
  const noticeable = Math.max(noticed, overNothing * least(Math.min(shortest, longest)));
  const leastOrQuick = (length: number) => leastTime(read, of(length), noticeable);
  let length = Math.min(first, longest);
  let milliseconds = leastOrQuick(length);
  while (milliseconds < noticeable && length < longest) {
    length = Math.min(length * step, longest);
    milliseconds = leastOrQuick(length);
  }
  if (milliseconds < noticeable) return { reader: name, text, length, milliseconds, ratio: undefined };
  let ratio = leastRatio(least, length);
  while (ratio > doubtful && ratio < steepest && 2 * length <= longest) {
    length *= 2;
    milliseconds = least(length);
    ratio = leastRatio(least, length);
  }
  return { reader: name, text, length, milliseconds, ratio };
}

function leastRatio(least: (length: number) => number, length: number): number {
  let found = Number.POSITIVE_INFINITY;
  for (let trial = 0; trial < trials && found >= steepest; trial += 1) {
    const half = least(Math.floor(length / 2));
    found = Math.min(found, least(length) / half);
  }
  return found;
}

/** @param quick a reading below it is not repeated: the least would be below it too */
function leastTime(read: Reader["read"], text: string, quick: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let repetition = 0; repetition < repetitions; repetition += 1) {
    least = Math.min(
      least,
      withoutTraces(() => timeOf(read, text)),
    );
    if (least < quick || least > noticed * 40) break;
  }
  return least;
}

function timeOf(read: Reader["read"], text: string): number {
  const start = process.cpuUsage();
  read(text);
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
}

/** The trace of an error is as long for any text, and with an error for each line it takes most of the time. */
function withoutTraces<Result>(work: () => Result): Result {
  const usual = Error.stackTraceLimit;
  Error.stackTraceLimit = 0;
  try {
    return work();
  } finally {
    Error.stackTraceLimit = usual;
  }
}

export const isSteep = ({ ratio }: Growth): boolean => ratio !== undefined && ratio >= steepest;
