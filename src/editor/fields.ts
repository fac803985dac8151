import { monthNames } from "../study/format/month-names.js";
import { type DimensionName, dimensions } from "../units/dimensions.js";
import { labelOf } from "./labels.js";
import { pageWords } from "./page-words.js";
import { type SchemaNode, studyNode } from "./schema-node.js";

/** Input offered by a form for a place in the study. */
export type Field =
  | { readonly kind: "quantity"; readonly dimension: DimensionName }
  | { readonly kind: "number" }
  | { readonly kind: "text"; readonly form: "line" | "long" | "csv" | "id" }
  | { readonly kind: "reference"; readonly to: string }
  | ({ readonly kind: "choice" } & Offer)
  /** Any number of the values offered. */
  | ({ readonly kind: "several" } & Offer)
  | { readonly kind: "yes-no" }
  | { readonly kind: "date" }
  | { readonly kind: "day-of-year" }
  /** One value for each month. */
  | { readonly kind: "months"; readonly each: Field }
  | GroupField
  | ListField
  /** Plain values on one line, separated by commas or semicolons. */
  | { readonly kind: "values"; readonly each: Field }
  | KindsField
  /** Alternative ways of giving a value, recognised by its form. */
  | { readonly kind: "either"; readonly ways: readonly Way[] }
  /** Ids from elsewhere in the study, each with a share. */
  | { readonly kind: "shares"; readonly to: string; readonly each: Field };

export interface Offer {
  readonly values: readonly string[];
  /** Labels of values that cannot be derived from their keys. */
  readonly titles: Readonly<Record<string, string>>;
}

/** Groups that can be added, removed and moved. */
export interface ListField {
  readonly kind: "list";
  readonly item: GroupField | KindsField;
  /** Whether rows stand for the years of the study, from the first. */
  readonly byYear: boolean;
}

export interface GroupField {
  readonly kind: "group";
  readonly fields: readonly NamedField[];
}

/** Groups distinguished by the value of one field. */
export interface KindsField {
  readonly kind: "kinds";
  readonly by: string;
  readonly ways: readonly GroupWay[];
}

interface Way {
  readonly value: string;
  readonly label: string;
  readonly field: Field;
}

interface GroupWay extends Way {
  readonly field: GroupField;
}

/** A field with its key and label. */
export interface NamedField {
  readonly key: string;
  readonly label: string;
  /** Description; empty if the label suffices. */
  readonly help: string;
  /** Where to find the figure; empty if plain. */
  readonly where: string;
  /** Ids of assumptions that are typical values of it. */
  readonly typical: readonly string[];
  /** Those of each value of another field beside it. */
  readonly typicalBy?: SchemaNode["typicalBy"];
  readonly required: boolean;
  /** Whether the answer moves with it though it may be left out. */
  readonly moves?: boolean;
  /** In a group where one of several ways is taken: the way that it belongs to. */
  readonly way?: string | undefined;
  /** Default; empty if there is none. */
  readonly usual: string;
  readonly field: Field;
}

const longText = 300;

/** The fields of a node of the schema. */
function fieldOf(node: SchemaNode, key: string): Field {
  if (isDimension(node.dimension)) return { kind: "quantity", dimension: node.dimension };
  if (node.oneOf) return kindsOf(node.oneOf);
  if (node.anyOf) return eitherOf(node.anyOf, key);
  if (node.enum) return { kind: "choice", ...offerOf(node) };
  if (node.properties) return groupOf(node);
  if (node.propertyNames) return sharesOf(node);
  if (node.type === "array") return listOf(node, key);
  if (node.type === "boolean") return { kind: "yes-no" };
  if (node.type === "number" || node.type === "integer") return { kind: "number" };
  return textOf(node, key);
}

const offerOf = (node: SchemaNode): Offer => ({
  values: (node.enum ?? []).map(String).filter((value) => !Object.hasOwn(node.moved ?? {}, value)),
  titles: { ...node.titles, ...node.moved },
});

function textOf(node: SchemaNode, key: string): Field {
  if (node.format === "date") return { kind: "date" };
  if (node.input === "day-of-year") return { kind: "day-of-year" };
  if (node.input === "reference" && node.refersTo) return { kind: "reference", to: node.refersTo };
  if (node.input === "id") return { kind: "text", form: "id" };
  if (key === "csv") return { kind: "text", form: "csv" };
  return { kind: "text", form: (node.maxLength ?? 0) > longText ? "long" : "line" };
}

function groupOf(node: SchemaNode): GroupField | Extract<Field, { kind: "months" }> {
  const properties = Object.entries(node.properties ?? {});
  const [first] = properties;
  if (
    first &&
    properties.length === monthNames.length &&
    monthNames.every((name) => node.properties?.[name])
  ) {
    return { kind: "months", each: fieldOf(first[1], first[0]) };
  }
  return plainGroup(node);
}

function plainGroup(node: SchemaNode): GroupField {
  const required = new Set(node.required);
  const fields = Object.entries(node.properties ?? {})
    .filter(([key, child]) => child.const === undefined && !notInForms.has(key))
    .map(([key, child]) => named(key, child, required.has(key)));
  return { kind: "group", fields };
}

/** Keys for studies read from a folder, which a browser does not have, and what the page of records enters. */
const notInForms = new Set(["file", "kept", "export"]);

function named(key: string, node: SchemaNode, required: boolean): NamedField {
  const field = fieldOf(node, key);
  return {
    key,
    label: labelOf(key),
    help: helpOf(node, field),
    where: node.where ?? "",
    typical: node.typical ?? [],
    typicalBy: node.typicalBy,
    required,
    moves: node.moves === true,
    way: node.way,
    usual: isPlain(node.default) ? String(node.default) : "",
    field,
  };
}

/** The schema's description of a field; for a bare quantity the example of its dimension. */
function helpOf({ description }: SchemaNode, field: Field): string {
  if (field.kind === "text" && field.form === "id") return idHelp;
  if (field.kind !== "quantity") return inWords(description ?? "");
  const { name, example } = dimensions[field.dimension];
  return description === `${name}, for instance ${example}` ? "" : inWords(description ?? "");
}

const idHelp = "Name within the file, such as north-intake";

/** Descriptions are written for authors of files. */
const inWords = (text: string) =>
  pageWords(
    text
      .replace(/^Ids? from [\w.]+: t/, "T")
      .replace(/^Ids? (from|of) [\w ]*[\w.]+; /, "Ids with commas between; ")
      .replace(/`/g, ""),
  );

const isPlain = (value: unknown) =>
  (typeof value === "string" && value !== "") || typeof value === "number" || typeof value === "boolean";

function sharesOf(node: SchemaNode): Field {
  return { kind: "shares", to: node.refersTo ?? "", each: { kind: "quantity", dimension: "share" } };
}

function listOf(node: SchemaNode, key: string): Field {
  const item = node.prefixItems?.[0] ?? node.items;
  if (!item) return { kind: "values", each: { kind: "text", form: "line" } };
  const byYear = node.rows === "years";
  if (item.oneOf) return { kind: "list", item: kindsOf(item.oneOf), byYear };
  if (item.properties) return { kind: "list", item: plainGroup(item), byYear };
  if (item.enum) return { kind: "several", ...offerOf(item) };
  return { kind: "values", each: fieldOf(item, key) };
}

function kindsOf(nodes: readonly SchemaNode[]): KindsField {
  const by =
    Object.keys(nodes[0]?.properties ?? {}).find((key) => nodes[0]?.properties?.[key]?.const !== undefined) ??
    "";
  return {
    kind: "kinds",
    by,
    ways: nodes.map((node) => {
      const value = String(node.properties?.[by]?.const);
      return { value, label: labelOf(value), field: plainGroup(node) };
    }),
  };
}

function eitherOf(nodes: readonly SchemaNode[], key: string): Field {
  const ways = nodes.map((node): Way => {
    const field = fieldOf(node, key);
    return { value: field.kind, label: wayLabel(field), field };
  });
  return { kind: "either", ways };
}

function wayLabel(field: Field): string {
  switch (field.kind) {
    case "months":
      return "A value for each month";
    case "shares":
      return "Several, with shares";
    case "group":
      return field.fields.length === 1 ? (field.fields[0]?.label ?? "") : "From counts";
    default:
      return "One value";
  }
}

const isDimension = (name: string | undefined): name is DimensionName =>
  name !== undefined && Object.hasOwn(dimensions, name);

let whole: GroupField | undefined;

/** All fields of a study. */
export function studyFields(): GroupField {
  whole ??= plainGroup(studyNode());
  return whole;
}
