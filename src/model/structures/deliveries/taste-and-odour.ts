import { at } from "../../../lists.js";
import { type ByMonth, daysOf, months, secondsPerDay } from "../../lake/calendar.js";
import type { AssumptionId } from "../../register/register.js";
import type { Priced } from "../component.js";
import type { LakeContext } from "../context.js";

/** Extra powdered carbon against tastes and odours of blue-green algae; what is not given is typical. */
export interface TasteAndOdour {
  /** In a mature infestation, by month, mg/L. */
  readonly dose?: ByMonth | undefined;
  readonly carbonPrice?: number | undefined;
  /** Total phosphorus of the lake in summer, mg/L. */
  readonly totalPhosphorus?: number | undefined;
}

const fromId = "taste-odour.from-temperature";
const fullId = "taste-odour.full-temperature";
const richId = "taste-odour.phosphorus-none";
const poorId = "taste-odour.phosphorus-full";
const doseId = "taste-odour.dose";
const priceId = "taste-odour.carbon-price";

const risingShare = (value: number, none: number, full: number) =>
  Math.min(1, Math.max(0, (value - none) / (full - none)));

/**
 * Share of a month in which blue-green algae grow, by the temperature of the surface:
 * w = min(1, max(0, (T − T0)/(T1 − T0))). Judged: near Chicago tastes are told of from July to early October
 * (`highland-park`).
 */
export function algaeSeason(temperature: number, { from, full }: { from: number; full: number }): number {
  return risingShare(temperature, from, full);
}

/**
 * Whether mussels further blue-green algae, by total phosphorus: they did at about 10 µg/L and held them down as much
 * at about 40 (Sarnelle and others 2012, enclosures). In full up to P1, none from P0 midway on:
 * φ = min(1, max(0, (P0 − P)/(P0 − P1))).
 */
export function algaeFurthered(phosphorus: number, { full, none }: { full: number; none: number }): number {
  return risingShare(phosphorus, none, full);
}

const kilogramsPerCubicMetre = 1e-3;

/** Doses of a mature infestation by month, kg/m³, with the assumptions behind them. */
function matureDoses(taste: TasteAndOdour, { assumed, lake }: LakeContext) {
  const { dose, totalPhosphorus } = taste;
  const ids: AssumptionId[] = [];
  const season = { from: assumed(fromId), full: assumed(fullId) };
  const typical = () => {
    ids.push(doseId, fromId, fullId);
    const full = assumed(doseId) * kilogramsPerCubicMetre;
    return months.map((month) => full * algaeSeason(at(lake.surfaceTemperature, month), season));
  };
  const doses = dose ? dose.map((each) => each * kilogramsPerCubicMetre) : typical();
  if (totalPhosphorus === undefined) return { doses, ids };
  ids.push(poorId, richId);
  const furthered = algaeFurthered(totalPhosphorus, { full: assumed(poorId), none: assumed(richId) });
  return { doses: doses.map((each) => each * furthered), ids };
}

/**
 * What the treatment takes by year since establishment, of carbon or of money: the mature amount d by volume in each
 * month on its water V, in proportion to the lake's density of mussels times its suitability, x: m = Σ x d V.
 */
export function amountByYear(treated: ByMonth, byVolume: ByMonth, density: readonly number[]): number[] {
  const mature = months.map(
    (month) => at(byVolume, month) * at(treated, month) * daysOf(month) * secondsPerDay,
  );
  return Array.from({ length: density.length / 12 }, (_, year) =>
    months.reduce((sum, month) => sum + at(density, year * 12 + month) * at(mature, month), 0),
  );
}

/** Lines of extra carbon by year since establishment; mussels cost it whether anybody knows of them or not. */
export function carbonLines(taste: TasteAndOdour, treated: ByMonth, context: LakeContext): Priced[] {
  const { doses, ids } = matureDoses(taste, context);
  const { carbonPrice } = taste;
  const assumptionIds: readonly AssumptionId[] = carbonPrice === undefined ? [...ids, priceId] : ids;
  return amountByYear(treated, doses, context.density).map((quantity) => ({
    what: "powdered carbon against taste and odour",
    type: "loss",
    quantity,
    quantityKind: "mass",
    unitRate: carbonPrice ?? context.assumed(priceId),
    assumptionIds,
  }));
}
