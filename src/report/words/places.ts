import { kindOf } from "../../model/structures/kinds.js";
import type { ReportContext } from "../document/context.js";

/** An elevation at which structures stand. */
export interface Place {
  readonly names: readonly string[];
  readonly elevation: number;
}

/** Elevations of structures that do not float, in the study's order; those at one elevation together. */
export function fixedPlaces({ comparison }: ReportContext, { withRamps = false } = {}): Place[] {
  const places = new Map<number, string[]>();
  for (const structure of comparison.input.structures) {
    const reach = kindOf(structure).reach(structure);
    if (!reach || reach.floats) continue;
    const isSloped = reach.low < reach.high;
    if (isSloped && !withRamps) continue;
    const name = isSloped ? `${structure.name}, foot` : structure.name;
    places.set(reach.low, [...(places.get(reach.low) ?? []), name]);
  }
  return [...places].map(([elevation, names]) => ({ elevation, names }));
}
