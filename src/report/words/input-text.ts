import type { AssumptionSet } from "../../assumptions/entry.js";
import { overrideDimensions } from "../../assumptions/units.js";
import type { AssumptionUnit } from "../../model/register/expected.js";
import { valueAtPlace } from "../../model/uncertainty/reach.js";
import type { StudyDocument } from "../../study/format/schema.js";
import { hydrologicYearId } from "../../study/odds/odds.js";
import { rangedQuantities } from "../../study/reading/ranged.js";
import type { TypedQuantity } from "../../study/typed/typed-quantities.js";
import { type DimensionName, dimensions } from "../../units/dimensions.js";
import { type Formatter, percent, significant } from "./format.js";

export interface InputReading {
  readonly document: StudyDocument;
  readonly assumptions: AssumptionSet;
  readonly typed: () => readonly TypedQuantity[];
  readonly format: Formatter;
}

/** An uncertain input's value in the units of the study's reader; the operating year by its label. */
export function inputText(
  id: string,
  value: number,
  { document, assumptions, typed: allTyped, format }: InputReading,
): string {
  const entry = assumptions.entries.get(id);
  if (entry) return assumptionText(entry.unit, value, format);
  if (id === hydrologicYearId) return yearLabel(value, document);
  const typed = allTyped().find((each) => each.id === id);
  if (typed) return typedText(typed, value, format);
  const quantity = rangedQuantities(document).find((ranged) => ranged.id === id)?.quantity;
  return quantityText(value, quantity?.dimension ?? "share", format);
}

/** Values that stand beside one another; more are told by how far they are off. */
const mostValues = 2;

/** A quantity typed as one number, and what is off with it, at a place in its range. */
function typedText({ members }: TypedQuantity, place: number, format: Formatter): string {
  const values = new Map(
    members.map(({ quantity, range }) => [quantity.value, valueAtPlace(quantity.value, range, place)]),
  );
  const [{ quantity, range }] = members;
  const { dimension, value } = quantity;
  if (values.size <= mostValues) {
    return [...values.values()].map((each) => quantityText(each, dimension, format)).join(" and ");
  }
  const moved = valueAtPlace(value, range, place);
  const side = place < 0 ? "below" : "above";
  if (dimension !== "temperature") return `${percent(Math.abs(moved / value - 1))} ${side} what was typed`;
  const change = Math.abs(format.display(moved, dimension) - format.display(value, dimension));
  return `${significant(change, 2)} ${format.unit(dimension)} ${side} what was typed`;
}

/** Figures that are told. */
interface Figures {
  readonly ofShares: number;
  readonly ofOthers: number;
}

const few: Figures = { ofShares: 2, ofOthers: 3 };

/** A value of an assumption in the study's units. */
export function assumptionText(
  unit: AssumptionUnit,
  value: number,
  format: Formatter,
  figures = few,
): string {
  const known = overrideDimensions[unit];
  return known
    ? quantityText(value / known.perCoherent, known.dimension, format, figures)
    : significant(value, figures.ofOthers);
}

/** Below this a length is told as a small one, m. */
const smallLength = 0.3;

function quantityText(value: number, dimension: DimensionName, format: Formatter, figures = few): string {
  if (dimension === "share") return percent(value, figures.ofShares);
  if (dimension === "length" && value < smallLength)
    return quantityText(value, "smallLength", format, figures);
  const shown = format.display(value, dimension);
  const unit = format.unit(dimension);
  if ("money" in dimensions[dimension]) return moneyText(shown, dimension === "money" ? "" : unit, format);
  return `${significant(shown, figures.ofOthers)}${unit.startsWith("%") ? "" : " "}${unit}`;
}

/** From here on cents are left out. */
const wholeMoney = 100;

function moneyText(amount: number, unit: string, format: Formatter): string {
  const text = amount < wholeMoney ? format.rate(amount) : format.money(amount);
  return unit === "" ? text : `${text}/${unit}`;
}

function yearLabel(place: number, { lake }: StudyDocument): string {
  const label = lake.record?.levels.years[place]?.label;
  if (label === undefined) throw new RangeError(`no year ${place} in the record of ${lake.name}`);
  return label;
}
