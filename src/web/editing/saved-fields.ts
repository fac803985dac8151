import type { FormNode } from "../../editor/form-node.js";
import { type Posted, unitName } from "../../editor/form-values.js";

/** An input whose content is written otherwise once it is saved. */
export interface WrittenAnew {
  readonly id: string;
  readonly value: string;
  readonly unitName: string;
  readonly unit: string;
}

/** Inputs of a form that show something else than was sent: a date in the study's way, an amount in another unit. */
export function writtenAnew(nodes: readonly FormNode[], posted: Posted): WrittenAnew[] {
  return nodes.flatMap(({ id, name, value, shape, units, unitName: unit }) => {
    const sent = posted[name];
    if (sent === undefined || shape.select || shape.long || shape.csv) return [];
    const chosen = units.find((each) => each.chosen)?.value ?? "";
    const keepsUnit = chosen === "" || posted[unit] === undefined || posted[unit] === chosen;
    const isSame = sent.trim() === value && keepsUnit;
    return isSame ? [] : [{ id, value, unitName: unit, unit: chosen }];
  });
}

/** A number that was converted because its unit was changed, and what to do if that was not meant. */
export interface Converted {
  readonly text: string;
  readonly name: string;
  /** The number as it was typed; empty where many were. */
  readonly typed: string;
  /** The unit that was chosen for it. */
  readonly unit: string;
}

/** @param before the nodes of the form as it was made; @param after those of what was saved, each node alone */
export function convertedFields(
  before: readonly FormNode[],
  after: readonly FormNode[],
  posted: Posted,
): Converted[] {
  const found = new Map(after.map((node) => [node.name, node]));
  return before.flatMap((node): Converted[] => {
    const { name, label, value, units } = node;
    const from = units.find(({ chosen }) => chosen);
    const to = units.find((each) => each.value === posted[unitName(name)]);
    if (!from || !to || from === to || to.value === "" || from.value === "") return [];
    if (node.shape.months) {
      const text = `${label}: the values that stayed were converted from ${from.label} to ${to.label}.`;
      return [{ text, name, typed: "", unit: "" }];
    }
    const now = found.get(name)?.value ?? "";
    if (value === "" || posted[name] !== value || now === value) return [];
    const text = `${label}: ${value} ${from.label} became ${now} ${to.label}.`;
    return [{ text, name, typed: value, unit: to.label }];
  });
}
