import { fileURLToPath } from "node:url";
import type { Assumption, AssumptionSet } from "../../src/assumptions/entry.js";
import { loadAssumptions } from "../../src/assumptions/load.js";

/** The folder of assumptions that the project is delivered with. */
export const assumptionsFolder = fileURLToPath(new URL("../../assumptions", import.meta.url));

export const realSet = (): AssumptionSet => loadAssumptions(assumptionsFolder);

/** An entry as it would stand in a file, with values made up for a test. */
export function entryOf(changes: Partial<Assumption> & Pick<Assumption, "id" | "unit">): Assumption {
  return {
    value: 60,
    low: 20,
    high: 200,
    basis: "judged",
    source: "a-source",
    note: "",
    distribution: "pert",
    ...changes,
  };
}

/** A set of made-up entries. */
export function setOf(...entries: readonly Assumption[]): AssumptionSet {
  return {
    entries: new Map(entries.map((entry) => [entry.id, entry])),
    sources: new Map(),
    plans: [],
    priceIndices: [],
    groups: [],
    alterations: [],
  };
}
