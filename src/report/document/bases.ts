import type { Assumption } from "../../assumptions/entry.js";
import type { ReportContext } from "./context.js";

interface Bases {
  readonly all: number;
  /** Judged or from memory, and not replaced by the study's own. */
  readonly judged: number;
  /** How many stand on what, the most frequent first. */
  readonly counts: ReadonlyArray<readonly [basis: string, count: number]>;
}

export const usedEntries = ({ run }: Pick<ReportContext, "run">): Assumption[] =>
  run.usedAssumptions.flatMap((id) => run.assumptions.entries.get(id) ?? []);

/** What the assumptions used stand on. */
export function basesOf({ run }: Pick<ReportContext, "run">): Bases {
  const overridden = new Set(run.overrides.map(({ entry }) => entry.id));
  const used = usedEntries({ run });
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
