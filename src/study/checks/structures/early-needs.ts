import { z } from "zod";
import { structureSchema } from "../../format/structure-schema.js";
import type { Contradiction } from "../../reading/contradiction.js";
import { valueAt } from "../../reading/problems.js";

/** Of each pair exactly one is needed; neither is needed by itself, so that no field says it alone. */
const pairs: ReadonlyArray<readonly [string, string, string]> = [
  ["roughness", "hazenWilliamsC", "a value here or in hazenWilliamsC, not in both"],
  ["efficiency", "turbine", "a value here, or a group turbine in place of it"],
  ["availableHead", "outletElevation", "a value here or in outletElevation, not in both"],
];

interface Node {
  readonly properties?: Readonly<Record<string, Node>>;
  readonly required?: readonly string[];
  readonly oneOf?: readonly Node[];
  readonly const?: unknown;
}

let schema: Node | undefined;
const structureNode = (): Node => {
  schema ??= z.toJSONSchema(structureSchema, { io: "input", unrepresentable: "any" }) as Node;
  return schema;
};

/**
 * What a structure needs by two of its fields together, told while others are still missing: a structure that cannot be
 * read yet has none of its contradictions found.
 */
export function earlyNeeds(structure: unknown, index: number): Contradiction[] {
  const at = ["structures", index];
  return [...needsWithin(structureNode(), structure, at), ...dockNeeds(structure, at)];
}

function needsWithin(node: Node, value: unknown, at: readonly PropertyKey[]): Contradiction[] {
  const fields = fieldsOf(node, value);
  if (!fields) return [];
  const has = (key: string) => valueAt(value, [key]) !== undefined;
  const open = pairs.filter(([one, other]) => fields.properties?.[one] && fields.properties[other]);
  const needed = open.filter(([one, other]) => !has(one) && !has(other));
  return [
    ...needed.map(([one, , allowed]) => ({ path: [...at, one], found: "nothing", allowed })),
    ...Object.entries(fields.properties ?? {})
      .filter(([key]) => has(key) || fields.required?.includes(key))
      .flatMap(([key, child]) => needsWithin(child, valueAt(value, [key]), [...at, key])),
  ];
}

/** The group itself, or that of the kind which is chosen. */
function fieldsOf(node: Node, value: unknown): Node | undefined {
  if (node.properties) return node;
  return node.oneOf?.find(({ properties = {} }) =>
    Object.entries(properties).some(
      ([key, child]) => child.const !== undefined && child.const === valueAt(value, [key]),
    ),
  );
}

/** A floating dock needs its depth, a fixed one its elevation. */
function dockNeeds(structure: unknown, at: readonly PropertyKey[]): Contradiction[] {
  const floating = valueAt(structure, ["floating"]);
  if (typeof floating !== "boolean") return [];
  const needed = floating ? "depth" : "elevation";
  if (valueAt(structure, [needed]) !== undefined) return [];
  const allowed = `a value, since the dock is ${floating ? "floating" : "fixed"}`;
  return [{ path: [...at, needed], found: "nothing", allowed }];
}
