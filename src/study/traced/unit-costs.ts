import type { Comparison } from "../../model/compare.js";
import { kindOf } from "../../model/structures/kinds.js";
import type { StructureResult } from "../../model/structures/structure.js";
import type { YearlyOutput } from "../../model/structures/structure-kind.js";
import { type MatureYears, matureMean } from "../levels/mature-years.js";

/** What a year of a mature infestation costs a structure by what it gives in a year. */
export interface UnitCost extends Pick<YearlyOutput, "what" | "quantity" | "measure"> {
  /** Of the structure, and of the one told with it. */
  readonly costPerYear: number;
  /** Money per m³ or m². */
  readonly perUnit: number;
  /** Name of the structure told with it. */
  readonly alongWith: string | undefined;
}

/** An output that has another structure's cost told with it is told by itself as well. */
export function unitCosts(
  { structure }: StructureResult,
  { infestation, structures }: Pick<Comparison, "infestation" | "structures">,
  mature: MatureYears,
): UnitCost[] {
  const yearlyOf = (id: string) => matureMean(infestation.ofStructure(id).byYear, mature);
  const own = yearlyOf(structure.id);
  return (kindOf(structure).outputs?.(structure) ?? []).flatMap(({ what, quantity, measure, alongWith }) => {
    if (quantity === 0) return [];
    const told = (costPerYear: number, name: string | undefined): UnitCost => ({
      ...{ what, quantity, measure, costPerYear },
      perUnit: costPerYear / quantity,
      alongWith: name,
    });
    const other = structures.find((each) => each.structure.id === alongWith)?.structure;
    return [told(own, undefined), ...(other ? [told(own + yearlyOf(other.id), other.name)] : [])];
  });
}
