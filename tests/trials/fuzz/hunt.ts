import fc from "fast-check";
import type { Fault } from "./fault.js";

/** What is tried, one case after another, and what is asked of each. */
export interface Hunt<Case> {
  readonly name: string;
  readonly cases: fc.Arbitrary<Case>;
  readonly judge: (value: Case) => Promise<Verdict> | Verdict;
  /** Puts away what the cases of a batch left behind. */
  readonly endBatch?: () => Promise<void>;
}

export interface Verdict {
  readonly faults: readonly Fault[];
  readonly milliseconds: number;
  /** What became of the case, for the count: "computed", "refused", "200". */
  readonly ending: string;
}

export interface Found<Case> {
  readonly seed: number;
  readonly fault: Fault;
  readonly value: Case;
}

export interface Hunted<Case> {
  readonly cases: number;
  readonly endings: ReadonlyMap<string, number>;
  readonly slowestMilliseconds: number;
  /** The first case of each fault. */
  readonly found: readonly Found<Case>[];
}

const batch = 100;

/**
 * Tries cases in batches, each from a seed of its own, so that a fault is made again from its batch alone.
 * @param told called after each batch with the number of cases so far
 */
export async function hunt<Case>(
  { cases, judge, endBatch }: Hunt<Case>,
  { seed, count, told }: { seed: number; count: number; told?: (done: number) => void },
): Promise<Hunted<Case>> {
  const endings = new Map<string, number>();
  const found = new Map<string, Found<Case>>();
  let slowestMilliseconds = 0;
  for (let done = 0; done < count; done += batch) {
    const numRuns = Math.min(batch, count - done);
    for (const value of fc.sample(cases, { seed: seed + done, numRuns })) {
      const { faults, milliseconds, ending } = await judge(value);
      endings.set(ending, (endings.get(ending) ?? 0) + 1);
      slowestMilliseconds = Math.max(slowestMilliseconds, milliseconds);
      for (const fault of faults) {
        const key = kindOf(fault);
        if (!found.has(key)) found.set(key, { seed: seed + done, fault, value });
      }
    }
    await endBatch?.();
    told?.(done + numRuns);
  }
  return { cases: count, endings, slowestMilliseconds, found: [...found.values()] };
}

/** Faults that differ in figures alone are one. */
const kindOf = ({ what, detail }: Fault): string => `${what}: ${detail.replace(/[\d.]+(e[-+]?\d+)?/g, "#")}`;
