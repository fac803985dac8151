import type { AssumptionSet } from "../../assumptions/entry.js";
import { isPrice } from "../../assumptions/entry-marks.js";
import type { AppliedOverride } from "../../assumptions/override.js";
import { capitalRecoveryFactor } from "../../model/money/interest.js";
import type { CostLine } from "../../model/money/line.js";
import type { AssumptionId } from "../../model/register/register.js";
import type { InstalledPlan, PlanEntry } from "../../model/structures/catalogue.js";
import type { Structure } from "../../model/structures/kinds.js";
import type { StudyPrices } from "../prepare/prices.js";

/**
 * From what the unit rate of a line comes: a price among the assumptions, more where work is forced; the capital of an
 * installation with its life and upkeep; or, where it has neither, a rate of its own, which lines of one key share.
 */
export type LineRate =
  | { readonly by: "price"; readonly id: AssumptionId; readonly price: number; readonly isForced: boolean }
  | {
      readonly by: "capital";
      readonly capital: number;
      readonly life: AssumptionId;
      readonly upkeep: AssumptionId;
    }
  | { readonly by: "own"; readonly key: string; readonly of: string | undefined; readonly rate: number };

/** What rates are read from. */
export interface RateReading {
  readonly used: (id: AssumptionId) => number;
  readonly isPrice: (id: AssumptionId) => boolean;
  readonly plans: readonly PlanEntry[];
  readonly discountRate: number;
}

export const rateReading = (
  { assumptions, overrides, prices }: UsedValues,
  settings: Pick<RateReading, "plans" | "discountRate">,
): RateReading => ({
  ...settings,
  used: (id) => usedValue(id, { assumptions, overrides, prices }),
  isPrice: (id) => {
    const entry = assumptions.entries.get(id);
    return entry !== undefined && isPrice(entry);
  },
});

interface UsedValues {
  readonly assumptions: AssumptionSet;
  readonly overrides: readonly AppliedOverride[];
  readonly prices: Pick<StudyPrices, "factorOf">;
}

/** An assumption as the study uses it: its own value, or that of the files at its prices. */
export function usedValue(id: AssumptionId, { assumptions, overrides, prices }: UsedValues): number {
  const own = overrides.find(({ entry }) => entry.id === id);
  if (own) return own.value;
  const entry = assumptions.entries.get(id);
  if (!entry) throw new Error(`no assumption ${id}`);
  return entry.value * prices.factorOf(entry);
}

/** @param isSteady whether the line has the same rate in all years */
export function rateOf(
  line: CostLine,
  isSteady: boolean,
  structure: Structure,
  reading: RateReading,
): LineRate {
  const prices = line.assumptionIds.filter(reading.isPrice);
  return (
    (isSteady ? (byCapital(line, reading) ?? byPrice(line, prices, reading)) : undefined) ??
    ownRate(line, isSteady ? prices : [], structure, isSteady)
  );
}

const isInstalled = (plan: PlanEntry): plan is InstalledPlan => "capital" in plan.numbers;

function byCapital(
  { type, quantityKind, unitRate, assumptionIds }: CostLine,
  { plans, discountRate, used }: RateReading,
): LineRate | undefined {
  if (type !== "protection" || quantityKind !== "year") return undefined;
  const plan = plans
    .filter(isInstalled)
    .find(({ numbers: { capital, life, upkeep } }) =>
      [capital, life, upkeep].every((id) => assumptionIds.includes(id)),
    );
  if (!plan) return undefined;
  const { life, upkeep } = plan.numbers;
  const capital = unitRate / (capitalRecoveryFactor(discountRate, used(life)) + used(upkeep));
  return { by: "capital", capital, life, upkeep };
}

/** By how much more forced work costs. */
const forcedFactor: AssumptionId = "limit.forced-factor";

/** A rate that is one price of the assumptions, or a multiple of it where the work is forced. */
function byPrice(
  { unitRate, assumptionIds }: CostLine,
  prices: readonly AssumptionId[],
  { used }: RateReading,
): LineRate | undefined {
  const plain = prices.find((id) => isNear(used(id), unitRate));
  if (plain !== undefined) return { by: "price", id: plain, price: used(plain), isForced: false };
  if (!assumptionIds.includes(forcedFactor)) return undefined;
  const forced = prices.find((id) => isNear(used(id) * used(forcedFactor), unitRate));
  return forced && { by: "price", id: forced, price: used(forced), isForced: true };
}

const roundingError = 1e-9;
const isNear = (one: number, other: number) => Math.abs(one - other) <= roundingError * Math.abs(other);

/** The key of a rate that lines of a structure share. */
export const structureRateKey = ({
  structure,
  quantityKind,
  unitRate,
}: Pick<CostLine, "structure" | "quantityKind" | "unitRate">): string =>
  JSON.stringify([structure, quantityKind, unitRate.toPrecision(9)]);

/** Lines that rest on the same prices share a rate; else those of a structure that are counted alike. */
function ownRate(
  { what, quantityKind, unitRate }: CostLine,
  prices: readonly AssumptionId[],
  { id, name }: Structure,
  isSteady: boolean,
): LineRate {
  const rate = unitRate.toPrecision(9);
  if (prices.length > 0) {
    return { by: "own", key: JSON.stringify([prices, quantityKind, rate]), of: undefined, rate: unitRate };
  }
  const key = isSteady
    ? structureRateKey({ structure: id, quantityKind, unitRate })
    : JSON.stringify([id, what, quantityKind, rate]);
  return { by: "own", key, of: name, rate: unitRate };
}
