import { stringify } from "csv-stringify/sync";
import { structureKinds } from "../../model/structures/kinds.js";
import { dimensions } from "../../units/dimensions.js";
import type { Writing } from "../amounts/units-offered.js";
import { unitsOffered } from "../amounts/units-offered.js";
import { namedThings } from "../choices.js";
import type { Place } from "../study-text.js";
import { type Column, columnsOf, headOf } from "./structure-columns.js";

/**
 * The template of a kind: a head with the required and common columns, and a line that shows what goes below it. That line
 * is left out when the table is read.
 */
export function templateOf(kind: string, writing: Writing, document: unknown): string {
  const columns = columnsOf(kind).filter(({ at, required }) => required || isCommon(kind, at));
  return stringify([
    columns.map((column) => headOf(column, writing)),
    columns.map((column) => exampleOf(column, writing, document)),
  ]);
}

/** Every head that a table of a kind may have. */
export const headsAllowed = (kind: string, writing: Writing): string[] =>
  columnsOf(kind).map((column) => headOf(column, writing));

const exampleName = "Example: write over this line";

/** Whether a line is the template's own. */
export const isExampleName = (name: string): boolean => name.trim().toLowerCase().startsWith("example:");

function exampleOf({ at, field }: Column, writing: Writing, document: unknown): string {
  if (at[0] === "name") return exampleName;
  switch (field.kind) {
    case "quantity":
      return quantityExample(field.dimension, writing);
    case "number":
      return "1";
    case "yes-no":
      return "yes";
    case "choice":
      return field.values[0] ?? "";
    case "reference":
      return namedThings(field.to, document)[0]?.name ?? "name of who pays";
    case "date":
      return "2026-10-15";
    case "day-of-year":
      return "10-15";
    default:
      return "";
  }
}

/** The number of an example that is in the unit of the head, or else the example with its own unit. */
function quantityExample(dimension: keyof typeof dimensions, writing: Writing): string {
  const [unit = ""] = unitsOffered(dimension, writing);
  const quoted = [...dimensions[dimension].example.matchAll(/"([^"]+)"/g)].map(([, text = ""]) => text);
  const found = quoted.find((text) => unit !== "" && text.endsWith(unit)) ?? quoted[0] ?? "1";
  if (found.startsWith("$")) return moneyExample(found, unit);
  return found.endsWith(unit) ? found.slice(0, found.length - unit.length).trim() : found;
}

/** An example in dollars, under a head whose currency is the study's. */
function moneyExample(found: string, unit: string): string {
  const [, amount = "", under = ""] = /^\$([\d.,]+)(.*)$/.exec(found) ?? [];
  const [currency = ""] = unit.split("/");
  if (unit === `${currency}${under}`) return amount;
  return `${currency.length > 1 ? `${currency} ` : currency}${amount}${under}`;
}

/** A common field, or a month of one. */
const isCommon = (kind: string, at: Place) =>
  structureKinds.some(
    (each) =>
      each.kind === kind &&
      each.commonFields.some((field) => at.join("/") === field || at.join("/").startsWith(`${field}/`)),
  );
