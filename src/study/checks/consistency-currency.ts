import { type DimensionName, dimensions } from "../../units/dimensions.js";
import type { WrittenStudy } from "../format/schema.js";
import type { Contradiction } from "../reading/contradiction.js";

/** Signs that only these currencies may use; a code of three letters stands for itself. */
const signs: Record<string, RegExp> = {
  $: /^(USD|CAD|AUD|NZD|HKD|SGD|MXN|CLP)$/,
  "€": /^EUR$/,
  "£": /^(GBP|FKP|GIP)$/,
};

/** Amounts written in another currency than the study's: they would be read as if they were its own. */
export function currencyProblems(document: WrittenStudy): Contradiction[] {
  const { currency } = document.money;
  const overrides = document.overrides.map(({ value }, index) => ({
    path: ["overrides", index, "value"],
    text: String(value),
  }));
  const amounts = overrides.filter(({ text }) => /^([A-Z]{3} |[$€£])/.test(text));
  return [...moneyTexts(document, []), ...amounts].flatMap(({ path, text }) =>
    marksIn(text).every((mark) => signs[mark]?.test(currency) ?? mark === currency)
      ? []
      : [{ path, found: `"${text}"`, allowed: `an amount in the study's currency, ${currency}` }],
  );
}

/** Signs and codes of an amount, more than one where it has a range. */
const marksIn = (text: string) =>
  [...text.matchAll(/[$€£]|(?:^|\s)([A-Z]{3})(?=\s|\/|$)/g)].map(([mark, code]) => code ?? mark);

function moneyTexts(
  value: unknown,
  path: readonly PropertyKey[],
): { path: readonly PropertyKey[]; text: string }[] {
  if (typeof value !== "object" || value === null) return [];
  if ("dimension" in value && "text" in value) {
    const dimension = dimensions[value.dimension as DimensionName];
    return "money" in dimension && dimension.money ? [{ path, text: String(value.text) }] : [];
  }
  if (Array.isArray(value))
    return value.flatMap((item: unknown, index) => moneyTexts(item, [...path, index]));
  return Object.entries(value).flatMap(([key, item]) => moneyTexts(item, [...path, key]));
}
