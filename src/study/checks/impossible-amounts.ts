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
 * at central values does not.
 */
export function amountProblems(document: StudyDocument, assumed: Assumed): Contradiction[] {
  const text = amountTextIn(document);
  return moneyIn(asWritten(document), []).flatMap(({ path, quantity }) => {
    const { dimension, spread } = quantity;
    const kind = largestOf[dimension];
    const most = kind && assumed(largestAmounts[kind]);
    const largest = spread ? Math.max(...endsOf(spread)) : quantity.value;
    if (most === undefined || largest <= most) return [];
    const found = `"${quantity.text}"${spread ? `, whose high end is ${text(largest, dimension)}` : ""}`;
    const allowed = `at most ${text(most, dimension)}`;
    return [{ path, found, allowed, remedy: "Correct the amount, its unit or its range." }];
  });
}

/** Writes amounts in a study's currency and units, to three digits. */
const amountTextIn =
  ({ money, study }: Pick<StudyDocument, "money" | "study">) =>
  (value: number, dimension: DimensionName): string => {
    const number = toDisplay(value, dimension, study.units);
    const { label } = dimensions[dimension][study.units];
    const amount = `${money.currency} ${number.toLocaleString("en-US", { maximumSignificantDigits: 3 })}`;
    return dimension === "money" ? amount : `${amount}/${label}`;
  };
