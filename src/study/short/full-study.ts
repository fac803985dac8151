import { boatsPart, launchesByMonth, launchShares } from "./boats-part.js";
import { exchangeRateOf, typicalRateOf } from "./currency.js";
import type { ShortFacts } from "./facts-schema.js";
import { type Filling, filling, type TypicalValues } from "./filling.js";
import { bearerOfUse, intakeParts, treatmentParts } from "./intake-part.js";
import { lakePart } from "./lake-part.js";
import { plantPart } from "./plant-part.js";
import { inForceId, optionParts, wantedId } from "./program-part.js";
import { shoreParts } from "./shore-parts.js";
import { siteOf } from "./site.js";
import { TypicalValue, unwrapped } from "./typical-value.js";

/**
 * A full study from a few facts: what they do not say is filled up with typical values, whose places the study lists.
 * @param today YYYY-MM-DD
 */
export function fullStudy(facts: ShortFacts, values: TypicalValues, today: string): object {
  const rate = exchangeRateOf(facts, values) ?? 1;
  const filled = filling(values, { system: facts.units, currency: facts.currency }, rate);
  const { value, typical } = unwrapped(treeOf(facts, filled, today));
  const parts = Object(value) as Readonly<Record<string, unknown>>;
  return { ...parts, study: { ...Object(parts.study), typical } };
}

function treeOf(facts: ShortFacts, filled: Filling, today: string): object {
  const site = siteOf(facts, filled);
  const shares = launchShares(site.where, filled);
  const launches = launchesByMonth(facts, site.where, filled);
  const intakes = intakeParts(facts.intakes, site, filled);
  return {
    study: studyPart(facts, today),
    lake: lakePart(facts, site, filled),
    structures: [
      ...intakes,
      ...treatmentParts(facts.intakes, intakes),
      ...(facts.plant ? [plantPart(facts.plant, site, filled)] : []),
      ...shoreParts(facts, site, launches, filled),
    ],
    boats: boatsPart(facts, site.where, filled),
    options: optionParts(facts, shares, filled),
    money: moneyPart(facts, filled, today),
  };
}

const studyPart = (facts: ShortFacts, today: string): object => ({
  name: `${facts.name ?? "The lake"}, first estimate`,
  authority: "Lake authority",
  board: "The board",
  prepared: today,
  preparedBy: "Lake office",
  units: facts.units,
  requestedOption: wantedId,
  existingOption: facts.inForce ? inForceId : undefined,
});

function moneyPart(facts: ShortFacts, { single, typical, priceYear }: Filling, today: string): object {
  const rateEntry = typicalRateOf(facts);
  const rate = rateEntry ? new TypicalValue(rateEntry, typical(rateEntry).value) : facts.exchangeRate;
  return {
    currency: facts.currency,
    exchangeRate: facts.currency === "USD" ? undefined : rate,
    exchangeRateYear: facts.currency === "USD" ? undefined : priceYear,
    exchangeRateOrigin: rateOrigin(facts),
    priceYear,
    startYear: Number(today.slice(0, 4)) + 1,
    horizon: facts.horizon ?? new TypicalValue("typical.horizon", typical("typical.horizon").value),
    discountRate: single("typical.discount-rate", "yearlyShare"),
    discountRateOrigin: "typical value",
    programBearer: "lake-authority",
    bearers: bearers(facts),
  };
}

/** Of dollars no rate is told. */
const rateOrigin = (facts: ShortFacts): string | undefined =>
  facts.currency === "USD" ? undefined : facts.exchangeRate === undefined ? "typical value" : "Lake office";

const bearerNames: Readonly<Record<string, string>> = {
  "lake-authority": "Lake authority",
  town: "Town water works",
  irrigators: "Irrigation district",
  industry: "Plant or mill",
  power: "Power office",
  marina: "Marina",
};

function bearers(facts: ShortFacts): object[] {
  const ids = [
    "lake-authority",
    ...facts.intakes.map(({ use }) => bearerOfUse(use)),
    ...(facts.plant ? ["power"] : []),
    ...(facts.docks?.slips === 0 ? [] : ["marina"]),
  ];
  return [...new Set(ids)].map((id) => ({ id, name: bearerNames[id] ?? id }));
}
