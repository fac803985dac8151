import { at } from "../lake/calendar.js";
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

/** Growth of a price at a yearly rate from the price year to the flow of year 1, 2, … of the horizon: (1+rate)^years. */
export function growthFactors(horizon: number, rate: number, times: PriceTimes): number[] {
  if (!(rate > -1)) throw new RangeError(`a yearly growth of ${rate}; allowed: above -1, which is -100 %`);
  return Array.from({ length: horizon }, (_, index) => (1 + rate) ** yearsFromPrices(index + 1, times));
}

/** Growth of a price at a yearly rate from the price year to a time in years from the start of year 1. */
export function priceGrowth(rate: number, time: number, { priceYear, startYear }: PriceTimes): number {
  return (1 + rate) ** (startYear + time - priceYear - 1 / 2);
}

/**
 * Sum by year of the flows of several cost groups, in constant prices of the price year, where some groups rise
 * faster or slower than prices in general. A group without a rate goes with general inflation.
 * @param flows each group's amount in year 1, 2, … at the price of the price year; all of one length
 * @param realRates yearly rise above general inflation: (1 + rise) / (1 + inflation) − 1
 */
export function escalatedTotal<Group extends string>(
  flows: ReadonlyMap<Group, readonly number[]>,
  realRates: ReadonlyMap<Group, number>,
  times: PriceTimes,
): number[] {
  const horizon = Math.max(0, ...[...flows.values()].map(({ length }) => length));
  const total = Array<number>(horizon).fill(0);
  for (const [group, amounts] of flows) {
    if (amounts.length !== horizon) {
      throw new RangeError(`flows of ${group} for ${amounts.length} years beside others for ${horizon}`);
    }
    const factors = growthFactors(horizon, realRates.get(group) ?? 0, times);
    amounts.forEach((amount, index) => {
      total[index] = at(total, index) + amount * at(factors, index);
    });
  }
  return total;
}

/** Nominal rate of a real one under general inflation (Fisher): (1+real)(1+inflation) − 1. */
export const nominalRate = (real: number, inflation: number): number => real + inflation + real * inflation;

/** Real rate of a nominal one under general inflation: (1+nominal)/(1+inflation) − 1. */
export const realRate = (nominal: number, inflation: number): number =>
  (nominal - inflation) / (1 + inflation);

/** Flows in constant prices as they will be paid, in money of each year: each × the rise of prices until then. */
export function nominalFlows(constant: readonly number[], inflation: number, times: PriceTimes): number[] {
  const levels = growthFactors(constant.length, inflation, times);
  return constant.map((amount, index) => amount * at(levels, index));
}

/**
 * Present value of nominal flows at the nominal rate, in prices of the price year. Discounting leads to money of the
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
