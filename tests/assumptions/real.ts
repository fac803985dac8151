import { fileURLToPath } from "node:url";
import type { Assumption, AssumptionSet } from "../../src/assumptions/entry.js";
import { loadAssumptions } from "../../src/assumptions/load.js";
import type { HeldIds } from "../../src/assumptions/written-items.js";
import type { Bounds } from "../../src/model/register/expected.js";

/** The folder of assumptions that the project is delivered with. */
export const assumptionsFolder = fileURLToPath(new URL("../../assumptions", import.meta.url));

export const realSet = (): AssumptionSet => loadAssumptions(assumptionsFolder);

/** An entry as it would stand in a file, with values made up for a test. */
export function entryOf(changes: Partial<Assumption> & Pick<Assumption, "id" | "unit">): Assumption {
  return {
    title: `made-up ${changes.id}`,
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

/** Ids as if files held them, and all files could be read. */
export const heldIds = (list: readonly string[]): HeldIds => ({
  has: (id) => list.includes(id),
  list,
  areAll: true,
});

/** A set of made-up entries, held to no bounds. */
export const setOf = (...entries: readonly Assumption[]): AssumptionSet => setWithin({}, ...entries);

/** A set of made-up entries, all held to the same bounds. */
export function setWithin(bounds: Bounds, ...entries: readonly Assumption[]): AssumptionSet {
  return {
    entries: new Map(entries.map((entry) => [entry.id, entry])),
    expected: new Map(entries.map(({ id, unit }) => [id, { unit, bounds }])),
    sources: new Map(),
    plans: [],
    priceIndices: [],
    planningRates: new Map(),
    groups: [],
    foundingEvidence: realSet().foundingEvidence,
    habitatLakes: realSet().habitatLakes,
    alterations: [],
  };
}
