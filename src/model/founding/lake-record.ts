import { at, sumOf } from "../../lists.js";

/** A yearly rate λ whose logarithm is normal: its median, and the standard deviation of ln λ. */
export interface YearlyRate {
  readonly median: number;
  readonly spread: number;
}

/** Years without a find, in which a part of the rate reached the water. */
export interface CleanPeriod {
  readonly years: number;
  /** x: what λ was multiplied by in these years, as by checks of boats or by traffic. */
  readonly factor: number;
}

/** What years without a find say of the rate that stood before them. */
export interface LakeRecord {
  /** Median of λ after the years over that before: e to the change of the mean of ln λ. */
  readonly medianFactor: number;
  /** Standard deviation of ln λ after the years. */
  readonly spread: number;
  /** Chance that these years pass without a find, before anything is known of them. */
  readonly chanceOfClean: number;
  /** Chance, after these years, that mussels live in the lake and were not found. */
  readonly infestedUnseen: number;
}

/** Points of λ on each side of its median, and how far out they lie in standard deviations. */
const [points, reach] = [200, 6];

/** A normal distribution in points of equal distance: standard deviations from the median, each with its chance. */
const grid = normalGrid();

/**
 * A lake without a find so far. A founding of year t is unseen after T years with Π_{u ≤ T−t+1} (1 − p_u), so that
 * P(not seen) = exp(−λ X_T) + Σ_t [exp(−λ X_{t−1}) − exp(−λ X_t)]·Π_{u ≤ T−t+1} (1 − p_u), where X_t is x summed to year t.
 * The rate after it has the mean and the standard deviation of ln λ given that nothing was seen, and is lognormal again.
 * @param periods from the first to the last
 * @param chanceByAge p: chance to be found in the first, second, … year of what was not found before; then the last of them
 */
export function lakeRecord(
  { median, spread }: YearlyRate,
  periods: readonly CleanPeriod[],
  chanceByAge: readonly number[],
): LakeRecord {
  const steps = stepsOf(periods, chanceByAge);
  const outcomes = grid.map(({ away, chance }) => {
    const { logUnseen, infestedIfUnseen } = outcomeOf(median * Math.exp(away * spread), steps);
    return { away, chance, logUnseen, infestedIfUnseen };
  });
  const largest = Math.max(...outcomes.map(({ logUnseen }) => logUnseen));
  const weights = outcomes.map(({ chance, logUnseen }) => chance * Math.exp(logUnseen - largest));
  const all = sumOf(weights);
  const after = (value: (outcome: (typeof outcomes)[number]) => number) =>
    sumOf(outcomes.map((outcome, index) => (weights[index] ?? 0) * value(outcome))) / all;
  const shift = after(({ away }) => away);
  return {
    medianFactor: Math.exp(spread * shift),
    spread: spread * Math.sqrt(after(({ away }) => (away - shift) ** 2)),
    chanceOfClean: all * Math.exp(largest),
    infestedUnseen: after(({ infestedIfUnseen }) => infestedIfUnseen),
  };
}

function normalGrid(): { readonly away: number; readonly chance: number }[] {
  const offsets = Array.from({ length: 2 * points + 1 }, (_, point) => (point / points - 1) * reach);
  const heights = offsets.map((away) => Math.exp(-(away ** 2) / 2));
  const all = sumOf(heights);
  return offsets.map((away, index) => ({ away, chance: at(heights, index) / all }));
}

/** A year of the record, or the part of one with which a period ends. */
interface Step {
  /** x times its length. */
  readonly arriving: number;
  /** Chance that a founding of this step is not found to the end of the record. */
  readonly unfound: number;
}

function stepsOf(periods: readonly CleanPeriod[], chanceByAge: readonly number[]): Step[] {
  let left = sumOf(periods.map(({ years }) => years));
  return periods.flatMap(({ years, factor }) =>
    Array.from({ length: Math.ceil(years) }, (_, year) => {
      const length = Math.min(1, years - year);
      const step = { arriving: factor * length, unfound: unfoundAfter(left, chanceByAge) };
      left -= length;
      return step;
    }),
  );
}

/** Chance that a founding is not found within years: Π (1 − p), where a part of a year counts by its length. */
function unfoundAfter(years: number, chanceByAge: readonly number[]): number {
  let unfound = 1;
  for (let age = 0; age < years && unfound > 0; age++) {
    const chance = chanceByAge[age] ?? chanceByAge.at(-1) ?? 0;
    unfound *= (1 - chance) ** Math.min(1, years - age);
  }
  return unfound;
}

/** What becomes of a lake with a yearly rate: whether nothing is seen, and whether it is infested if so. */
function outcomeOf(rate: number, steps: readonly Step[]) {
  let arrived = 0;
  let infested = 0;
  for (const { arriving, unfound } of steps) {
    infested += Math.exp(-rate * arrived) * -Math.expm1(-rate * arriving) * unfound;
    arrived += arriving;
  }
  const unseen = Math.exp(-rate * arrived) + infested;
  return unseen > 0
    ? { logUnseen: Math.log(unseen), infestedIfUnseen: infested / unseen }
    : { logUnseen: -rate * arrived, infestedIfUnseen: 0 };
}
