import type { FormNode } from "../../src/editor/form-node.js";
import type { Posted } from "../../src/editor/form-values.js";

/** What a browser would send of a form: the value of each input, and the unit chosen beside it. */
export function postedOf(nodes: readonly FormNode[]): Posted {
  return Object.fromEntries(nodes.flatMap(entriesOf));
}

function entriesOf({ shape, name, value, choices, unitName, units, children }: FormNode): [string, string][] {
  const unit = units.find(({ chosen }) => chosen);
  const units_: [string, string][] = unit ? [[unitName, unit.value]] : [];
  if (shape.boxes) return choices.map(({ value: each, chosen }) => [`${name}#${each}`, chosen ? "yes" : ""]);
  if (shape.select) return [[name, choices.find(({ chosen }) => chosen)?.value ?? ""]];
  if (shape.group || shape.list || shape.ways || shape.months || shape.absent) {
    return [...units_, ...children.flatMap(entriesOf)];
  }
  return [[name, value], ...units_];
}
