import type { DimensionName } from "./dimensions.js";
import { parseQuantity, type Quantity, QuantityError } from "./quantity.js";

/** How sure an author is of a quantity, in the coherent unit of its dimension. */
export type Spread =
  /** `pert` and `triangular` have the quantity's value as their mode; `uniform` has none. */
  | { readonly kind: "pert" | "triangular" | "uniform"; readonly low: number; readonly high: number }
  /** Nine in ten are above the low, nine in ten below the high: P10 and P90. */
  | { readonly kind: "normal" | "lognormal"; readonly low: number; readonly high: number }
  /** Values with their shares, which make up 1. */
  | { readonly kind: "discrete"; readonly choices: ReadonlyArray<{ value: number; share: number }> };

export interface SpreadQuantity extends Quantity {
  /** Absent for a quantity that is given as one value. */
  readonly spread?: Spread;
  /** Whether its author says that the one value is exact. */
  readonly exact?: true;
}

type Kind = Exclude<Spread["kind"], "discrete">;

/** No range is longer. It is asked first: the patterns below take the square of a text of blanks. */
export const longestSpread = 160;
const kinds = /^(.*?)\s+as\s+(pert|triangular|uniform|normal|lognormal)$/i;
/** Currency before the number or with the unit after it: "$6/m2", "6 $/m2". BTU is a unit that looks like a currency. */
const part = /^([$€£]|[A-Z]{3}(?=\s))?\s*([-+\d.,eE]+)\s*([$€£]|(?!BTU)[A-Z]{3}(?=\/|$))?\s*(.*)$/;
/** "42 ± 3 in": the range reaches as far either way. */
const around = /^([^±]+?)(?:±|\+\/-)([^±]+)$/;
/** After one value that is known for certain: "42 in exact". */
export const exactly = /\sexact$/i;
const choice = /^(.*?)\s*\(\s*([\d.]+)\s*%\s*\)$/;

/**
 * Reads a quantity with its range, if it has one: "6 to 9 to 14 $/m2" (low, most likely, high; beta-PERT), the same "as
 * triangular"; "6 to 14 $/m2" (uniform; the middle is used alone), "as normal" or "as lognormal" (P10 and P90; the median
 * is used alone); "42 ± 3 in" or "42 in ± 10 %" for low, most likely and high; "one of 2 h (60 %), 5 h (40 %)" (the likeliest is used alone);
 * "42 in exact" for what is known for certain.
 * @throws QuantityError saying what is allowed
 */
export function parseSpread(text: string | number, dimension: DimensionName): SpreadQuantity {
  const trimmed = String(text).trim();
  if (trimmed.length > longestSpread) throw new QuantityError(`at most ${longestSpread} characters`);
  if (exactly.test(trimmed)) return exactValue(trimmed, dimension);
  if (/^one of\s/i.test(trimmed)) return discrete(trimmed, dimension);
  const named = kinds.exec(trimmed);
  const parts = aroundOf(trimmed) ?? (named?.[1] ?? trimmed).split(/\s+to\s+/i);
  if (parts.length === 1 && !named) return parseQuantity(text, dimension);
  const values = sharedUnits(parts).map((each) => parseQuantity(each, dimension).value);
  const kind = (named?.[2]?.toLowerCase() ?? (values.length === 3 ? "pert" : "uniform")) as Kind;
  return { text: trimmed, dimension, ...spreadOf(values, kind) };
}

/** Low, likeliest and high of "42 ± 3 in", or of "42 in ± 10 %"; undefined for anything else. */
function aroundOf(text: string): string[] | undefined {
  const [, left, right] = around.exec(text) ?? [];
  if (left === undefined || right === undefined) return undefined;
  const [middle, off] = [left, right].map((each) => part.exec(each.trim()));
  const [value, size] = [middle, off].map((each) => Number((each?.[2] ?? "").replaceAll(",", "")));
  if (!middle || !off || value === undefined || size === undefined || !Number.isFinite(value + size))
    return undefined;
  const isRelative = off[4]?.trim() === "%" && /[^%\s]/.test(`${middle[1] ?? ""}${middle[4] ?? ""}`);
  const half = isRelative ? (Math.abs(value) * size) / 100 : size;
  const { 3: after = "", 4: under = "" } = isRelative || !off[4] ? middle : off;
  return [value - half, value, value + half].map((each) =>
    `${middle[1] ?? ""} ${Number(each.toPrecision(12))} ${after}${under}`.trim(),
  );
}

function exactValue(text: string, dimension: DimensionName): SpreadQuantity {
  const { value, spread } = parseSpread(text.replace(exactly, ""), dimension);
  if (spread)
    throw new QuantityError('one value before "exact", such as "42 in exact", or a range without it');
  return { text, dimension, value, exact: true };
}

/** Parts of "6 to 9 to 14 $/m2", each with the currency and the unit of the last where it has none. */
function sharedUnits(parts: readonly string[]): string[] {
  const read = parts.map((each) => {
    const [, before = "", number = "", after = "", unit = ""] = part.exec(each.trim()) ?? [];
    return { currency: before || after, number, unit };
  });
  const last = read.at(-1);
  return read.map(({ currency, number, unit }) => {
    const money = currency || (last?.currency ?? "");
    const gap = money.length > 1 ? " " : "";
    const under = unit || (last?.unit ?? "");
    return money ? `${money}${gap}${number}${under}` : `${number} ${under}`;
  });
}

function spreadOf(values: readonly number[], kind: Kind): Pick<SpreadQuantity, "value" | "spread"> {
  const [low = Number.NaN, middle = Number.NaN, high = middle] = values;
  const isThree = values.length === 3;
  if (isThree !== (kind === "pert" || kind === "triangular") || values.length > 3) {
    throw new QuantityError(
      'a range such as "6 to 9 to 14 m2" (low, most likely, high), or "6 to 14 m2" as uniform, normal or lognormal',
    );
  }
  if (!(low < high) || (isThree && !(low <= middle && middle <= high))) {
    throw new QuantityError(`a range that rises from low to high, such as "6 to 9 to 14 m2"`);
  }
  if (kind === "lognormal" && !(low > 0)) {
    throw new QuantityError("a lognormal range with a low above zero");
  }
  const alone = kind === "lognormal" ? Math.sqrt(low * high) : (low + high) / 2;
  return { value: isThree ? middle : alone, spread: { kind, low, high } };
}

const roundingError = 1e-9;

function discrete(text: string, dimension: DimensionName): SpreadQuantity {
  const choices = text
    .replace(/^one of\s+/i, "")
    .split(/,\s+/)
    .map((each) => {
      const [, value, percent] = choice.exec(each.trim()) ?? [];
      if (value === undefined) {
        throw new QuantityError('choices with their shares, such as "one of 2 h (60 %), 5 h (40 %)"');
      }
      return { value: parseQuantity(value, dimension).value, share: Number(percent) / 100 };
    });
  const sum = choices.reduce((total, { share }) => total + share, 0);
  if (!(Math.abs(sum - 1) <= roundingError)) {
    throw new QuantityError(`choices whose shares add up to 100 %, not ${Number((sum * 100).toFixed(4))} %`);
  }
  const likeliest = choices.reduce((best, each) => (each.share > best.share ? each : best));
  return { text, dimension, value: likeliest.value, spread: { kind: "discrete", choices } };
}
