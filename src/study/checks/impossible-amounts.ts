import type { Assumed } from "../../model/assumed.js";
import { largestAmounts } from "../../model/entries/largest-amounts.js";
import { type DimensionName, dimensions } from "../../units/dimensions.js";
import { toDisplay } from "../../units/quantity.js";
import { asWritten } from "../format/as-written.js";
import type { StudyDocument } from "../format/schema.js";
import type { Contradiction } from "../reading/contradiction.js";
import { moneyIn } from "./consistency-currency.js";
import { endsOf } from "./range-problems.js";

const largestOf: Partial<Record<DimensionName, keyof typeof largestAmounts>> = {
  money: "amount",
  moneyPerYear: "amount",
  moneyPerDay: "perDay",
  moneyPerHour: "perHour",
  moneyPerVolume: "perVolume",
  moneyPerTreatedVolume: "perVolume",
  moneyPerEnergy: "perEnergy",
  moneyPerMass: "perMass",
};

/**
 * Amounts of money that nobody pays, also where one end of a range alone is that: draws reach it, and what is worked out
 * at central values does not. Amounts and limits are compared as they are told, so that what is allowed may be entered.
 */
export function amountProblems(document: StudyDocument, assumed: Assumed): Contradiction[] {
  const { money, study } = document;
  const told = (value: number, dimension: DimensionName) =>
    Number(toDisplay(value, dimension, study.units).toPrecision(3));
  const text = (value: number, dimension: DimensionName) => {
    const { label } = dimensions[dimension][study.units];
    const inCurrency = `${money.currency} ${told(value, dimension).toLocaleString("en-US")}`;
    return dimension === "money" ? inCurrency : `${inCurrency}/${label}`;
  };
  return moneyIn(asWritten(document)).flatMap(({ path, quantity }) => {
    const { dimension, spread } = quantity;
    const kind = largestOf[dimension];
    if (!kind) return [];
    const id = largestAmounts[kind];
    const most = assumed(id);
    const largest = spread ? Math.max(...endsOf(spread)) : quantity.value;
    if (largest <= most || told(largest, dimension) <= told(most, dimension)) return [];
    const found = `"${quantity.text}"${spread ? `, whose high end is ${text(largest, dimension)}` : ""}`;
    const remedy = `Correct the amount, its unit or its range. If it is right, give this study a value of its own for ${id}.`;
    return [{ path, found, allowed: `at most ${text(most, dimension)}`, remedy }];
  });
}
