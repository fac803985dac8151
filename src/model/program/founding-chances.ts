import type { Assumed } from "../assumed.js";
import type { Boats, VesselClass } from "../inputs.js";
import type { AssumptionId } from "../register/register.js";

/** What of a year's boats reaches the water. */
export interface Through {
  /** Fouled launches. */
  readonly launches: number;
  /** Σ α F: populations that they would found in wholly suitable water, each launch by itself. */
  readonly foundings: number;
}

/** What is typical of boats by how long they have been out of infested water. */
interface Reach {
  readonly founding: AssumptionId;
  readonly living: AssumptionId;
}

const near: Reach = { founding: "arrival.founding-near", living: "arrival.living-share-near" };
const far: Reach = { founding: "arrival.founding-far", living: "arrival.living-share-far" };
const unknown: Reach = { founding: "arrival.founding-unknown", living: "arrival.living-share-unknown" };

/**
 * α of each class: chance that one fouled launch, its mussels dead or alive, founds a population in wholly suitable
 * water. Between the days up to which boats count as near and those from which they count as far, ln α falls evenly
 * with the logarithm of the days. Where a class states the share ρ with living mussels, α = α(living) ρ, the chance of
 * a launch with living mussels being that of its reach over the living share typical of it: at that share nothing
 * changes. Never above 1. What no boat of a class brings is not read.
 */
export const foundingChances = ({ classes }: Boats, source: Assumed): number[] =>
  classes.map((each) => (each.fouled === 0 ? 0 : foundingChance(each, source)));

function foundingChance({ living, daysSince }: VesselClass, source: Assumed): number {
  const typical = (of: keyof Reach) => atReach(of, daysSince, source);
  const founding = typical("founding");
  return Math.min(1, living === undefined ? founding : (founding / typical("living")) * living);
}

function atReach(of: keyof Reach, daysSince: number | undefined, source: Assumed): number {
  if (daysSince === undefined) return source(unknown[of]);
  const share = shareOfWay(daysSince, source("arrival.near-days"), source("arrival.far-days"));
  if (share === 0) return source(near[of]);
  if (share === 1) return source(far[of]);
  return source(near[of]) ** (1 - share) * source(far[of]) ** share;
}

/** How far the days are from near, 0, to far, 1, by their logarithms. */
export function shareOfWay(days: number, from: number, to: number): number {
  if (days <= from) return 0;
  if (days >= to) return 1;
  return Math.log(days / from) / Math.log(to / from);
}

/**
 * Foundings a year of launches together, μ = Σ α F · (F/F₀)^(c−1). With c = 1 launches act by themselves; above 1 many
 * do more than each alone (Leung, Drake and Lodge 2004), and both agree at F₀ launches, so that c and α are one entry.
 */
export function togetherOf({ launches, foundings }: Through, source: Assumed): number {
  const shape = source("arrival.shape");
  if (shape === 1 || launches === 0) return foundings;
  return foundings * (launches / source("arrival.reference-launches")) ** (shape - 1);
}
