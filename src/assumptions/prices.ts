import { type PriceIndex, priceFactor } from "../model/money/price-index.js";
import type { Assumption } from "./entry.js";
import { isPrice } from "./entry-marks.js";

/** What a value of the files is multiplied by to be in the money of a study: 1 for what is no price. */
export type PriceFactor = (entry: Pick<Assumption, "unit" | "priceYear" | "index">) => number;

/** Prices as they stand in the files, in another currency. @param rate units of that currency for one US dollar */
export const exchanged =
  (rate: number): PriceFactor =>
  (entry) =>
    isPrice(entry) ? rate : 1;

/**
 * Prices turned into those of another year in US dollars, and then into another currency.
 * @param works index that prices of works follow
 * @throws PriceYearError, when it is used, if the index lacks the year of a price or the other year
 */
export function converted(
  index: PriceIndex,
  year: number,
  rate: number,
  works: PriceIndex = index,
): PriceFactor {
  return (entry) => {
    if (!isPrice(entry)) return 1;
    const followed = entry.index === "works" ? works : index;
    return rate * (entry.priceYear === undefined ? 1 : priceFactor(followed, entry.priceYear, year));
  };
}
