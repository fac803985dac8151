import { usedEntries } from "./assumption-register.js";
import type { ReportContext } from "./context.js";

interface Bases {
  readonly all: number;
  /** Judged or from memory, and not replaced by the study's own. */
  readonly judged: number;
  /** How many stand on what, the most frequent first. */
  readonly counts: ReadonlyArray<readonly [basis: string, count: number]>;
}

/** What the assumptions used stand on. */
export function basesOf(context: ReportContext): Bases {
  const overridden = new Set(context.run.overrides.map(({ entry }) => entry.id));
  const used = usedEntries(context);
  const counts = new Map<string, number>();
  for (const { id, basis } of used) {
    const name = overridden.has(id) ? "operator's own" : basis;
    counts.set(name, (counts.get(name) ?? 0) + 1);
  }
  return {
    all: used.length,
    judged: (counts.get("judged") ?? 0) + (counts.get("from memory") ?? 0),
    counts: [...counts].sort((one, other) => other[1] - one[1]),
  };
}
