import { dimensions } from "../../units/dimensions.js";
import type { SpreadQuantity } from "../../units/spread.js";
import type { WrittenStudy } from "../format/schema.js";
import type { Contradiction } from "../reading/contradiction.js";
import { isQuantity } from "../typed/single-values.js";

/** Currencies that share each sign; a three-letter code stands for itself. */
const signs: Record<string, RegExp> = {
  $: /^(USD|CAD|AUD|NZD|HKD|SGD|MXN|CLP)$/,
  "€": /^EUR$/,
  "£": /^(GBP|FKP|GIP)$/,
};

/** Amounts in a currency other than the study's, which would otherwise be taken as the study's own. */
export function currencyProblems(document: WrittenStudy): Contradiction[] {
  const { currency } = document.money;
  const overrides = document.overrides.map(({ value }, index) => ({
    path: ["overrides", index, "value"],
    text: String(value),
  }));
  const typed = moneyIn(document).map(({ path, quantity }) => ({ path, text: quantity.text }));
  return [...typed, ...overrides.filter(({ text }) => isAmount(text))].flatMap(({ path, text }) =>
    isOfCurrency(text, currency)
      ? []
      : [{ path, found: `"${text}"`, allowed: amountAllowed(currency), remedy: conversionAsked(currency) }],
  );
}

const conversionAsked = (currency: string): string =>
  `Convert the amount to ${currency}, or keep the whole study in the other currency: change money.currency and every amount.`;

const isAmount = (text: string): boolean => /^([A-Z]{3} |[$€£])/.test(text);

const isOfCurrency = (text: string, currency: string): boolean =>
  marksIn(text).every((mark) => signs[mark]?.test(currency) ?? mark === currency);

/** What is allowed in place of an amount in another currency. */
export const amountAllowed = (currency: string): string => `an amount in the study's currency, ${currency}`;

/** Whether a value of an agency's set is an amount in another currency than a study's. */
export const isForeignAmount = (value: string | number, currency: string): boolean =>
  isAmount(String(value)) && !isOfCurrency(String(value), currency);

/** Currency signs and codes in an amount; a range may have several. */
const marksIn = (text: string) =>
  [...text.matchAll(/[$€£]|(?:^|\s)([A-Z]{3})(?=\s|\/|$)/g)].map(([mark, code]) => code ?? mark);

/** A quantity of money as it was typed. */
interface MoneyQuantity {
  readonly path: readonly PropertyKey[];
  readonly quantity: SpreadQuantity;
}

/** Holds the one value of all months, as it is read; its author typed no such key. */
const forAllMonths = "all";

/** All of them, in document order. */
export function moneyIn(document: WrittenStudy): MoneyQuantity[] {
  const found: MoneyQuantity[] = [];
  addMoney(document, [], found);
  return found;
}

/** @param path of the value; its list is copied where money is found alone, since a study is walked through at each key */
function addMoney(value: unknown, path: PropertyKey[], found: MoneyQuantity[]): void {
  if (typeof value !== "object" || value === null) return;
  if (isQuantity(value)) {
    if ("money" in dimensions[value.dimension]) found.push({ path: path.slice(), quantity: value });
    return;
  }
  const isList = Array.isArray(value);
  for (const [key, item] of Object.entries(value)) {
    if (key === forAllMonths) addMoney(item, path, found);
    else {
      path.push(isList ? Number(key) : key);
      addMoney(item, path, found);
      path.pop();
    }
  }
}
