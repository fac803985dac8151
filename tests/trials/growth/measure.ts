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
/** Above this it is tried again. */
const doubtful = 2.4;
/** Processor time, ms, that can be told from what else the process does. */
const noticed = 10;
/** And so many times what the reader takes for next to no text. */
const overNothing = 5;
/** Shorter times are not told apart, ms. */
const tick = 0.1;
const shortest = 16;
const first = 2048;
const step = 4;
const repetitions = 2;
/** What else the process does adds little to a reading as long, which trials repeat anyway, ms. */
const longReading = 40;
const trials = 12;
/** One slow reading of the half alone would make a steep reader pass. */
const fewestTrials = 2;

/** Least time that each reader took for next to no text, ms. */
const forNothing = new WeakMap<Reader["read"], number>();

/**
 * Lengthens a text until reading it takes noticed time, and then holds that against one half as long, each less what
 * next to no text takes. It is processor time, of either the least of all readings, so that what else the machine does
 * makes no difference.
 */
export function growthOf(
  { name, most, read }: Reader,
  { name: text, of }: Adversary,
  mostLength: number,
): Growth {
  const longest = Math.min(most, mostLength);
  const nothing = forNothing.get(read) ?? leastOfNothing(read, of);
  const noticeable = Math.max(noticed, overNothing * nothing);
  const leastOrQuick = (length: number) => leastTime(read, of(length), noticeable);
  let length = Math.min(first, longest);
  let milliseconds = leastOrQuick(length);
  while (milliseconds < noticeable && length < longest) {
    length = Math.min(length * step, longest);
    milliseconds = leastOrQuick(length);
  }
  const reading = { reader: name, text, length, milliseconds };
  return { ...reading, ratio: milliseconds < noticeable ? undefined : leastRatio(read, of, reading) };
}

/** A reader is slower before it is compiled: it reads next to nothing again whenever that counts. */
function leastOfNothing(read: Reader["read"], of: Adversary["of"]): number {
  const least = Math.min(forNothing.get(read) ?? Number.POSITIVE_INFINITY, leastTime(read, of(shortest), 0));
  forNothing.set(read, least);
  return least;
}

function leastRatio(
  read: Reader["read"],
  of: Adversary["of"],
  { length, milliseconds }: Pick<Growth, "length" | "milliseconds">,
): number {
  let whole = milliseconds;
  let half = Number.POSITIVE_INFINITY;
  let found = Number.POSITIVE_INFINITY;
  for (let trial = 0; trial < trials && (trial < fewestTrials || found >= doubtful); trial += 1) {
    if (trial > 0) whole = Math.min(whole, leastTime(read, of(length), 0));
    half = Math.min(half, leastTime(read, of(Math.floor(length / 2)), 0));
    const nothing = leastOfNothing(read, of);
    found = (whole - nothing) / Math.max(half - nothing, tick);
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
    if (least < quick || least > longReading) break;
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
