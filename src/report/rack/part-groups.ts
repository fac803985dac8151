import type { Comparison } from "../../model/compare.js";
import type { ComponentResult } from "../../model/structures/component.js";

/** Parts that are the same in every figure, told once. */
export interface PartGroup {
  readonly component: ComponentResult;
  /** Names of the structures that have such a part, at least one. */
  readonly structures: readonly string[];
  readonly ids: readonly string[];
  readonly name: string;
  /** Of all of them together. */
  readonly yearlyCost: number;
}

/** The study's parts, those that are alike together, the most expensive first. */
export function partGroups({ structures }: Comparison): PartGroup[] {
  const groups = new Map<string, { component: ComponentResult; structures: string[]; ids: string[] }>();
  for (const { structure, components } of structures) {
    for (const component of components) {
      const key = likeness(structure.kind, component);
      const group = groups.get(key);
      if (group) {
        group.structures.push(structure.name);
        group.ids.push(structure.id);
      } else groups.set(key, { component, structures: [structure.name], ids: [structure.id] });
    }
  }
  return [...groups.values()]
    .map((group) => ({
      ...group,
      name: nameOf(group.structures, group.component.name),
      yearlyCost: group.component.chosen.yearlyCost * group.structures.length,
    }))
    .sort((a, b) => b.yearlyCost - a.yearlyCost);
}

function likeness(kind: string, { name, chosen, pinned, untouchedLayer }: ComponentResult): string {
  return JSON.stringify([
    kind,
    name,
    chosen.plan.id,
    chosen.yearlyCost,
    chosen.brokenLimit,
    pinned?.reason,
    untouchedLayer.mass,
  ]);
}

function nameOf([first, ...others]: readonly string[], part: string): string {
  const more = others.length === 0 ? "" : ` and ${others.length} like it`;
  return `${first}${more}: ${part}`;
}
