import { fileURLToPath } from "node:url";
import { loadAssumptions } from "../../src/assumptions/load.js";
import { assumedFrom } from "../../src/assumptions/override.js";
import { exchanged } from "../../src/assumptions/prices.js";
import type { Assumed } from "../../src/model/assumed.js";

export const assumptionSet = loadAssumptions(fileURLToPath(new URL("../../assumptions", import.meta.url)));

/** The shipped assumptions, in US dollars, as a study without overrides reads them. */
export const assumed: Assumed = assumedFrom(assumptionSet, [], exchanged(1));

/** The shipped assumptions with some of them replaced, in the unit of their entries. */
export function assumedWith(replaced: Readonly<Record<string, number>>): Assumed {
  for (const id of Object.keys(replaced)) assumed(id); // throws on an id that no file holds
  return (id) => replaced[id] ?? assumed(id);
}
