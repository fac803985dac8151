import { type TypedId, typedIdOf } from "../../study/typed/typed-kinds.js";
import { type TypedEntries, typedRange, typedReach } from "../../study/typed/typed-range.js";
import type { DimensionName } from "../../units/dimensions.js";
import { QuantityError } from "../../units/quantity.js";
import { parseSpread, type SpreadQuantity } from "../../units/spread.js";
import type { Field } from "../fields.js";
import { childOf, monthKeys } from "../form-values.js";
import type { Place } from "../study-text.js";

interface Telling {
  readonly entries: TypedEntries["entries"] | undefined;
  readonly system: "us" | "si";
}

/** Between which values a number is taken to lie that is typed alone: "taken as ± 10 % unless you say otherwise". */
export function takenText(field: Field, at: Place, value: unknown, { entries, system }: Telling): string {
  if (!entries) return "";
  const from = { entries, system };
  if (field.kind === "quantity") return told(value, [...at], field.dimension, from);
  if (field.kind !== "months" || field.each.kind !== "quantity") return "";
  const { dimension } = field.each;
  for (const month of monthKeys) {
    const found = told(childOf(value, month), [...at, month], dimension, from);
    if (found !== "") return found;
  }
  return "";
}

type Told = TypedEntries & Pick<Telling, "system">;

function told(value: unknown, at: Place, dimension: DimensionName, from: Told): string {
  const quantity = quantityIn(value, dimension);
  const id = quantity && !quantity.spread && !quantity.exact && typedIdOf(at, dimension);
  const range = id && typedRange({ id, ...quantity }, from);
  return id && range ? `Taken as ${spanText(id, range, from)} unless you say otherwise.` : "";
}

function quantityIn(value: unknown, dimension: DimensionName): SpreadQuantity | undefined {
  if (typeof value !== "string" && typeof value !== "number") return undefined;
  try {
    return parseSpread(value, dimension);
  } catch (error) {
    if (error instanceof QuantityError) return undefined;
    throw error;
  }
}

function spanText(
  id: TypedId,
  { low, high }: { readonly low: number; readonly high: number },
  from: Told,
): string {
  const { reach, size } = typedReach(id, from);
  switch (reach) {
    case "relative":
      return `± ${percents(size)} %`;
    case "absolute":
      return from.system === "us" ? `± ${figure(size * fahrenheitStep)} °F` : `± ${figure(size)} °C`;
    case "log-odds":
      return `${percents(low)} to ${percents(high)} %`;
  }
}

/** Degrees Fahrenheit in one Celsius. */
const fahrenheitStep = 1.8;

const figure = (value: number) => value.toLocaleString("en-US", { maximumSignificantDigits: 2 });
const percents = (share: number) => figure(share * 100);
