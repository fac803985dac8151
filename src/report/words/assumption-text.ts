import type { Assumption } from "../../assumptions/entry.js";
import { trueMinus } from "./minus.js";

/** Low and high, with the distribution between them where it is not the usual one. */
export function rangeText({ low, high, distribution }: Assumption): string {
  const range = `${statedNumber(low)}–${statedNumber(high)}`;
  if (distribution === "pert" || low === high) return range;
  return `${range}; ${distribution}`;
}

/** As its file has it, every digit. */
export const statedNumber = (value: number): string => trueMinus(String(value));

/** The unit of an entry, of a price with its year; empty for a pure number. */
export function unitText({ unit, priceYear }: Assumption): string {
  if (unit === "1") return "";
  return priceYear === undefined ? unit : `${unit.replace("$", "USD")} of ${priceYear}`;
}

/** An id that may break after its dots. */
export const breakable = (id: string): string => id.replaceAll(".", ".\u200b");
