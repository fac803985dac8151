import type { Source } from "../../assumptions/entry.js";
import { isJudged } from "../../assumptions/entry-marks.js";
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

const readings: ReadonlyArray<readonly [Source["read"], string]> = [
  ["text", "in its text"],
  ["abstract", "in an abstract"],
  ["secondary", "at second hand"],
  ["not read", "not at all: they are from memory"],
];

/** Beside a source: how it was read for this project. */
export const consulted: Readonly<Record<Source["read"], string>> = {
  text: "Consulted in its text",
  abstract: "Consulted in an abstract",
  secondary: "Consulted at second hand",
  "not read": "Not consulted",
};

/** How the sources of those that are not judged were read for this project. */
export function readText(context: ReportContext): string {
  const { run } = context;
  const overridden = new Set(run.overrides.map(({ entry }) => entry.id));
  const used = usedEntries(context).filter((entry) => !overridden.has(entry.id) && !isJudged(entry));
  const parts = readings.flatMap(([read, words]) => {
    const count = used.filter(({ source }) => run.assumptions.sources.get(source)?.read === read).length;
    return count === 0 ? [] : [`${count} ${words}`];
  });
  return parts.length === 0
    ? ""
    : `The source of those that are not judged was read by this project for ${parts.join(", ")}.`;
}
