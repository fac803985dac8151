import type { ShortFacts } from "./facts-schema.js";
import type { TypicalId, TypicalValues } from "./filling.js";

const typicalRates: Readonly<Record<string, TypicalId>> = {
  CAD: "typical.exchange-cad",
  EUR: "typical.exchange-eur",
};

/** The entry from which the exchange rate of a study comes, where its author gave none. */
export const typicalRateOf = ({ currency, exchangeRate }: ShortFacts): TypicalId | undefined =>
  exchangeRate === undefined ? typicalRates[currency] : undefined;

/** Units of a study's currency for a US dollar; nothing where nobody knows it. */
export function exchangeRateOf(facts: ShortFacts, values: TypicalValues): number | undefined {
  if (facts.exchangeRate !== undefined) return facts.exchangeRate;
  if (facts.currency === "USD") return 1;
  const entry = typicalRateOf(facts);
  return entry && values.get(entry)?.value;
}
