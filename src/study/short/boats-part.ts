import { at } from "../../lists.js";
import { hoursPerDay, months } from "../../model/lake/calendar.js";
import { mapped, type Range, rangeOf } from "./amount-text.js";
import { peakAt, type Where } from "./climate.js";
import type { ShortFacts } from "./facts-schema.js";
import { type Filling, rangeOr, type TypicalId } from "./filling.js";
import { byMonth, seasonShape, yearShares } from "./season.js";
import { TypicalValue } from "./typical-value.js";

/** Shares of a year's launches by month. */
export function launchShares(where: Where, { typical }: Filling): number[] {
  return yearShares(
    seasonShape({
      peak: peakAt(where, typical("typical.launches-peak").value),
      sharpness: typical("typical.launches-sharpness").value,
      least: 0,
    }),
  );
}

/** Launches of each month with central values. */
export function launchesByMonth(facts: ShortFacts, where: Where, filling: Filling): number[] {
  const { value } = rangeOr(facts.launches, filling.typical("typical.launches"));
  return launchShares(where, filling).map((share) => share * value);
}

/** The boats of the full study. */
export function boatsPart(facts: ShortFacts, where: Where, filling: Filling): object {
  const { amount, typical } = filling;
  const shares = launchShares(where, filling);
  const launches = facts.launches ? rangeOf(facts.launches) : typical("typical.launches");
  const entry = facts.launches ? "typical.launches-sharpness" : "typical.launches";
  return {
    launches: byMonth((month) =>
      amount(
        entry,
        mapped(launches, (each) => each * at(shares, month)),
        "count",
      ),
    ),
    classes: classesOf(facts, filling),
    chance: { lakes: comparableLakes(facts, filling) },
  };
}

/** How far infested water is. */
type Nearness = "near" | "mid" | "far" | "unknown";

const infestedEntries = {
  near: "typical.infested-near",
  mid: "typical.infested-mid",
  far: "typical.infested-far",
  unknown: "typical.infested-unknown",
} as const satisfies Record<Nearness, TypicalId>;

function nearness({ nearestInfested }: ShortFacts, { typical }: Filling): Nearness {
  if (!nearestInfested) return "unknown";
  const hours = nearestInfested.value * hoursPerDay;
  if (hours <= typical("typical.near-until").value) return "near";
  return hours <= typical("typical.mid-until").value ? "mid" : "far";
}

/** The entry of the share of boats from elsewhere that were on infested water. */
export const infestedEntry = (facts: ShortFacts, filling: Filling): TypicalId =>
  infestedEntries[nearness(facts, filling)];

/** Lakes near infested water are like those of a region without checks; far ones with a program like those with. */
function comparableLakes(facts: ShortFacts, filling: Filling): unknown {
  const near = nearness(facts, filling);
  const lakes =
    near === "unknown" ? "unknown" : near === "far" ? (facts.inForce ? "inspected" : "unknown") : "open";
  return near === "unknown" ? lakes : new TypicalValue(infestedEntries[near], lakes);
}

/** Three classes; shares make up 1, so that what is not known of them is in the range of the fouled share. */
function classesOf(facts: ShortFacts, filling: Filling): object[] {
  const { amount, typical, ranged } = filling;
  const away = rangeOr(facts.fromAway, typical("typical.away"));
  const entry = infestedEntry(facts, filling);
  const infested = typical(entry);
  const fouled = typical("typical.fouled-infested-water");
  const shares = threeShares(away.value, infested.value);
  const awayEntry = facts.fromAway ? entry : "typical.away";
  const share = (value: number, id: TypicalId) => new TypicalValue(id, percent(value));
  const origin = "typical value";
  return [
    {
      ...{ id: "local", name: "Boats that stay at this lake", lastWater: "this-lake", origin },
      share: facts.fromAway ? percent(shares.local) : share(shares.local, "typical.away"),
      fouled: "0 %",
    },
    {
      ...{ id: "clean-waters", name: "From waters without mussels", lastWater: "clean", origin },
      share: share(shares.clean, awayEntry),
      fouled: ranged("typical.fouled-clean-water", "share"),
    },
    {
      ...{
        id: "infested-waters",
        name: "On infested water in the last 30 days",
        lastWater: "infested",
        origin,
      },
      share: share(shares.infested, entry),
      fouled: amount("typical.fouled-infested-water", product(fouled, [infested, away]), "share"),
    },
  ];
}

/** Decimals of percents that make up 100 exactly. */
const decimals = 6;
const percent = (share: number) => `${Number((share * 100).toFixed(decimals - 2))} %`;
const round = (share: number) => Number(share.toFixed(decimals));

function threeShares(away: number, infested: number) {
  const ofInfested = round(away * infested);
  const clean = round(round(away) - ofInfested);
  return { local: round(1 - round(away)), clean, infested: ofInfested };
}

/** The first range, widened by those by which it is multiplied: errors of independent factors, as logarithms, add in squares. */
function product(first: Range, others: readonly Range[]): Range {
  const reach = (end: "low" | "high") =>
    Math.exp(
      Math.hypot(
        ...[first, ...others].map((range) =>
          Math.log(Math.max(range[end], tiny) / Math.max(range.value, tiny)),
        ),
      ),
    );
  return {
    low: first.value / reach("low"),
    value: first.value,
    high: Math.min(1, first.value * reach("high")),
  };
}

/** In place of a share of nothing, which has no logarithm. */
const tiny = 1e-9;

/** Of a year's launches, those in some months. @param from month from 0 */
export const shareOfMonths = (shares: readonly number[], from: number, until: number): number =>
  months
    .filter((month) => month >= from && month <= until)
    .reduce((sum, month) => sum + at(shares, month), 0);
