import { amountOf } from "./amounts/amount.js";
import { unitsOffered, type Writing } from "./amounts/units-offered.js";
import { namedThings, unitChoices, waysOf } from "./choices.js";
import type { Field, ListField, NamedField } from "./fields.js";
import type { FormContext, FormNode } from "./form-node.js";
import { childOf, itemsOf, monthKeys, shownText, unitName } from "./form-values.js";
import { labelOf } from "./labels.js";
import { fieldsShown, wayGiven, waysAmong } from "./one-of.js";
import { rowTitle } from "./rows.js";
import type { Place } from "./study-text.js";

/** Makes the node of a field. */
export type Maker = (named: NamedField, at: Place, value: unknown) => FormNode;

interface Nested {
  readonly at: Place;
  readonly value: unknown;
  readonly make: Maker;
}

/** The node of a field of a group. */
export const child = (named: NamedField, { at, value, make }: Nested) =>
  make(named, [...at, named.key], childOf(value, named.key));

interface Whole extends Nested {
  readonly base: FormNode;
}

export function groupNode(fields: readonly NamedField[], { base, ...nested }: Whole): FormNode {
  if (nested.value === undefined && !base.required) {
    return { ...base, shape: { absent: true }, add: `add:${base.name}` };
  }
  const acts = base.required ? [] : [{ value: `remove:${base.name}`, label: "Leave this out" }];
  return { ...base, shape: { group: true }, children: fieldNodes(fields, nested), acts };
}

/** The fields of a group in their order; those of which one way is taken stand under one choice. */
export function fieldNodes(fields: readonly NamedField[], nested: Nested): FormNode[] {
  const first = fields.find(({ way }) => way !== undefined);
  return fields.flatMap((named) => {
    if (named.way === undefined) return [child(named, nested)];
    return named === first ? [oneOfNode(fields, named, nested)] : [];
  });
}

function oneOfNode(fields: readonly NamedField[], first: NamedField, nested: Nested): FormNode {
  const ways = waysAmong(fields);
  const given = wayGiven(fields, nested.value);
  const { id, needed, ...base } = child(first, nested);
  return {
    ...base,
    id: `${id}-choice`,
    label: ways
      .map((way, index) => (index === 0 ? way : way.charAt(0).toLowerCase() + way.slice(1)))
      .join(" or "),
    ...{ help: "", where: "", value: "", add: "", errors: [], acts: [] },
    needed: given === undefined ? needed : "",
    shape: { ways: true },
    choices: waysOf(
      ways.map((label, index) => ({ value: String(index), label })),
      given === undefined ? undefined : String(ways.indexOf(given)),
    ),
    children: fieldsShown(fields, nested.value).map((each) => child(each, nested)),
  };
}

export function listNode(
  field: ListField,
  { base, at, value, make }: Whole,
  { document }: FormContext,
): FormNode {
  const items = itemsOf(value);
  const children = items.map((item, index) => {
    const named = {
      key: String(index),
      label: rowTitle(field, item, index, document),
      help: "",
      where: "",
      typical: [],
      required: true,
      usual: "",
      field: field.item,
    };
    const node = make(named, [...at, index], item);
    return { ...node, acts: itemActs(node.name, index, items.length) };
  });
  return { ...base, value: "", shape: { list: true }, children, add: `add:${base.name}` };
}

const itemActs = (name: string, index: number, count: number) => [
  ...(index > 0 ? [{ value: `up:${name}`, label: "Up" }] : []),
  ...(index < count - 1 ? [{ value: `down:${name}`, label: "Down" }] : []),
  { value: `remove:${name}`, label: "Remove" },
];

export function monthsNode(each: Field, { base, at, value, make }: Whole, making: FormContext): FormNode {
  const children = monthKeys.map((key) => {
    const named = {
      key,
      label: labelOf(key),
      help: "",
      where: "",
      typical: [],
      required: true,
      usual: "",
      field: each,
    };
    return make(named, [...at, key], childOf(value, key));
  });
  const units = each.kind === "quantity" ? monthUnits(each.dimension, value, making.writing) : undefined;
  if (!units) return { ...base, value: "", shape: { months: true }, children };
  const whole = units.chosen === "" && value !== undefined;
  const shown = whole
    ? children.map((node) => ({
        ...node,
        value: shownText(childOf(value, node.name.split("/").at(-1) ?? "")),
      }))
    : children;
  return {
    ...{ ...base, value: "", shape: { months: true }, children: shown },
    ...{ unitName: unitName(base.name), units: unitChoices(units.offered, units.chosen) },
  };
}

/** The unit shared by all months; empty if they differ. */
function monthUnits(dimension: Parameters<typeof unitsOffered>[0], value: unknown, writing: Writing) {
  const offered = unitsOffered(dimension, writing);
  const given = monthKeys
    .map((key) => childOf(value, key))
    .filter((each) => each !== undefined && each !== "");
  const units = new Set(given.map((each) => amountOf(each, dimension, writing).unit));
  const [only = offered[0] ?? ""] = units;
  return { offered, chosen: units.size > 1 ? "" : only };
}

export function sharesNode(
  field: Extract<Field, { kind: "shares" }>,
  whole: Whole,
  making: FormContext,
): FormNode {
  const { base, at, value, make } = whole;
  const known = namedThings(field.to, making.document);
  const given = typeof value === "object" && value !== null ? Object.keys(value) : [];
  const all = [
    ...known,
    ...given.filter((key) => !known.some(({ id }) => id === key)).map((id) => ({ id, name: id })),
  ];
  const children = all.map(({ id, name }) => {
    const named = {
      key: id,
      label: name,
      help: "",
      where: "",
      typical: [],
      required: false,
      usual: "",
      field: field.each,
    };
    return make(named, [...at, id], childOf(value, id));
  });
  return { ...base, shape: { group: true }, children };
}
