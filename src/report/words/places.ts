import type { Structure } from "../../model/structures/kinds.js";
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
    const elevation = elevationOf(structure, withRamps);
    if (elevation === undefined) continue;
    const name = structure.kind === "ramp" ? `${structure.name}, foot` : structure.name;
    places.set(elevation, [...(places.get(elevation) ?? []), name]);
  }
  return [...places].map(([elevation, names]) => ({ elevation, names }));
}

function elevationOf(structure: Structure, withRamps: boolean): number | undefined {
  switch (structure.kind) {
    case "intake":
    case "hydropower":
    case "service-line":
      return structure.elevation;
    case "dock":
      return structure.floating ? undefined : structure.elevation;
    case "ramp":
      return withRamps ? structure.bottomElevation : undefined;
    case "lake-wide":
      return undefined;
  }
}
