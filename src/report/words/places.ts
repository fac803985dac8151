import type { ReportContext } from "../document/context.js";

/** An elevation at which structures stand. */
export interface Place {
  readonly names: readonly string[];
  readonly elevation: number;
}

/** Elevations of structures that do not float, in the study's order; those at one elevation together. */
export function fixedPlaces({ traced }: ReportContext, { withRamps = false } = {}): Place[] {
  const places = new Map<number, string[]>();
  for (const { result, reach } of traced.structures) {
    if (!reach || reach.floats) continue;
    const isSloped = reach.low < reach.high;
    if (isSloped && !withRamps) continue;
    const { name: given } = result.structure;
    const name = isSloped ? `${given}, foot` : given;
    places.set(reach.low, [...(places.get(reach.low) ?? []), name]);
  }
  return [...places].map(([elevation, names]) => ({ elevation, names }));
}
