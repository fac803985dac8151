import { at } from "../../lists.js";
import { discountFactors, type Timing } from "./interest.js";

/**
 * Where prices and flows stand in time. Prices of a year are its average, in mid-year; flows of year 1, 2, … of the
 * horizon fall as `timing` says; the present is the start of `startYear`, which is year 1.
 */
export interface PriceTimes {
  readonly priceYear: number;
  readonly startYear: number;
  readonly timing: Timing;
}

/** Years from the prices to the flow of a year of the horizon; negative where the flow comes first. */
export function yearsFromPrices(year: number, { priceYear, startYear, timing }: PriceTimes): number {
  const inYear = timing === "end-of-year" ? 1 / 2 : 0;
  return startYear + year - 1 + inYear - priceYear;
}

/**
 * Growth of a price at a yearly rate s from the price year to the flow of year 1, 2, … of the horizon: e(t) = (1+s)^y, with y
 * the years from the middle of the price year to the flow.
 * @throws RangeError for a rate of -100 % or less
 */
export function growthFactors(horizon: number, rate: number, times: PriceTimes): number[] {
  if (!(rate > -1)) throw new RangeError(`a yearly growth of ${rate}; allowed: above -1, which is -100 %`);
  return Array.from({ length: horizon }, (_, index) => (1 + rate) ** yearsFromPrices(index + 1, times));
}

/** Growth of a price at a yearly rate from the price year to a time in years from the start of year 1. */
export function priceGrowth(rate: number, time: number, { priceYear, startYear }: PriceTimes): number {
  return (1 + rate) ** (startYear + time - priceYear - 1 / 2);
}

/** Nominal rate of a real one, r, under general inflation, i (Fisher): m = (1+r)(1+i) − 1. */
export function nominalRate(real: number, inflation: number): number {
  return real + inflation + real * inflation;
}

/** Flows in constant prices as they will be paid, in money of each year: each × the rise of prices until then. */
export function nominalFlows(constant: readonly number[], inflation: number, times: PriceTimes): number[] {
  const levels = growthFactors(constant.length, inflation, times);
  return constant.map((amount, index) => amount * at(levels, index));
}

/**
 * Present value of nominal flows M at the nominal rate m, in prices of the price year: P = Σ M(t) (1+m)^−(t−½)/(1+i)^b in
 * mid-year, with b the years from the middle of the price year to the present. Discounting leads to money of the
 * present, the start of year 1; the rise of prices from the price year to then is taken out. It equals the present
 * value of the constant-price flows at the real rate.
 */
export function presentValueOfNominal(
  nominal: readonly number[],
  rates: { readonly real: number; readonly inflation: number },
  times: PriceTimes,
): number {
  const factors = discountFactors(nominal.length, nominalRate(rates.real, rates.inflation), times.timing);
  const inMoneyOfThePresent = nominal.reduce((sum, amount, index) => sum + amount * at(factors, index), 0);
  const yearsToPresent = times.startYear - times.priceYear - 1 / 2;
  return inMoneyOfThePresent / (1 + rates.inflation) ** yearsToPresent;
}
