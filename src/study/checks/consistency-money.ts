import type { StudyDocument } from "../format/schema.js";
import type { Contradiction } from "../reading/contradiction.js";
import type { SoundParts } from "./sound-parts.js";

/** Rates without an origin, exchange rates without a year, and duplicate groups and years. */
export function moneyProblems({ money }: SoundParts): Contradiction[] {
  if (!money) return [];
  return [
    ...discountRateProblems(money),
    ...exchangeProblems(money),
    ...repeated(
      money.escalation.map(({ group }) => group),
      ["money", "escalation"],
      "group",
    ),
    ...repeated(
      money.indexValues.map(({ year }) => String(year)),
      ["money", "indexValues"],
      "year",
    ),
  ];
}

type MoneyDocument = StudyDocument["money"];

function discountRateProblems({ discountRate, discountRateOrigin }: MoneyDocument): Contradiction[] {
  const path = ["money", "discountRateOrigin"];
  if (discountRate.planning === undefined && discountRateOrigin === undefined) {
    return [{ path, found: "nothing", allowed: "a text that says where the rate comes from" }];
  }
  if (discountRate.planning !== undefined && discountRateOrigin !== undefined) {
    const remedy =
      "Remove it, and say in money.discountRate.planningRate.origin where its two rates come from.";
    const allowed = "nothing beside a planningRate, which has its own origin";
    return [{ path, found: `"${discountRateOrigin}"`, allowed, remedy }];
  }
  return [];
}

/** Assumption prices are in US dollars: any other currency needs a rate that can be checked. */
function exchangeProblems(money: MoneyDocument): Contradiction[] {
  if (money.currency === "USD") return [];
  const needed = [
    ["exchangeRateYear", "the year of which the exchange rate is"],
    ["exchangeRateOrigin", "a text that says where the exchange rate comes from"],
  ] as const;
  return needed
    .filter(([field]) => money[field] === undefined)
    .map(([field, allowed]) => ({ path: ["money", field], found: "nothing", allowed }));
}

function repeated(values: readonly string[], path: readonly PropertyKey[], field: string): Contradiction[] {
  return values.flatMap((value, index) =>
    values.indexOf(value) < index
      ? [
          {
            path: [...path, index, field],
            found: `${value} a second time`,
            allowed: `each ${field} once`,
            remedy: "Keep one of the two.",
          },
        ]
      : [],
  );
}
