import { at } from "../../lists.js";
import type { Assumed } from "../assumed.js";
import { ratesOf } from "../compare.js";
import type { LearnedRate, StudyInput } from "../inputs.js";
import type { OptionResult } from "../option.js";
import { foundingChances } from "../program/founding-chances.js";
import { boatRates } from "./founding-rates.js";
import { type LogSpreads, lakesVariance, launchesVariance } from "./weighing.js";

/** A yearly rate −ln(1−h) with the standard deviation of its logarithm. */
export interface SpreadRate {
  readonly rate: number;
  readonly spread: number;
}

/** From what the yearly chance without a program comes. Rates are of the first year. */
export interface ChanceOrigins {
  /** Fouled launches a year without a program, and of each class with its chance of a founding. */
  readonly fouledLaunches: number;
  readonly classes: ReadonlyArray<{
    readonly id: string;
    readonly fouled: number;
    readonly founding: number;
  }>;
  /** Rate of the boats, from fouled launches and from comparable lakes, and both together as they are weighed. */
  readonly byLaunches: SpreadRate;
  readonly byLakes: SpreadRate;
  readonly pooled: SpreadRate;
  readonly weightOfBoats: number;
  /** Fouled launches a year that the rate of comparable lakes would need; absent without fouled launches. */
  readonly launchesForLakes: number | undefined;
  /** Rates of the other ways in: those that no check stops, and those that stations check. */
  readonly unchecked: number;
  readonly checked: number;
  /** Factor of the clean years on the rate; 1 where there are none. */
  readonly learnedFactor: number;
  /** What clean years tell beside; absent where there are none. */
  readonly clean: Pick<LearnedRate, "chanceOfClean" | "infestedUnseen"> | undefined;
  /** Share of the rate without a program that no program can stop. */
  readonly beyondPrograms: number;
}

/** @param baseline the option without a program */
export function chanceOrigins(
  input: StudyInput,
  { baseline, suitability }: { readonly baseline: OptionResult; readonly suitability: number },
  source: Assumed,
  spreadOf: LogSpreads,
): ChanceOrigins {
  const { boats } = input;
  const open = { launches: baseline.arrivals.slipThrough, foundings: baseline.arrivals.foundings };
  const rates = boatRates(open, suitability, boats, source);
  const ofLaunches = launchesVariance(boats, source, spreadOf);
  const ofLakes = lakesVariance(boats, source, spreadOf);
  const { weightOfBoats: weight } = boats.comparable;
  const used = ratesOf(input, suitability, source);
  const unlearned = ratesOf({ ...input, boats: { ...boats, learned: undefined } }, suitability, source);
  const [unchecked, checked] = [at(used.unchecked, 0), at(used.checked, 0)];
  const all = used.ofBoats * open.foundings + unchecked + checked;
  const chances = foundingChances(boats, source);
  return {
    fouledLaunches: open.launches,
    classes: baseline.arrivals.classes.map(({ vesselClass, fouled }, index) => ({
      id: vesselClass.id,
      fouled,
      founding: at(chances, index),
    })),
    byLaunches: { rate: rates.byLaunches, spread: Math.sqrt(ofLaunches) },
    byLakes: { rate: rates.byLakes, spread: Math.sqrt(ofLakes) },
    pooled: { rate: rates.pooled, spread: Math.sqrt(weight ** 2 * ofLaunches + (1 - weight) ** 2 * ofLakes) },
    weightOfBoats: weight,
    launchesForLakes: rates.byLaunches === 0 ? undefined : (open.launches * rates.byLakes) / rates.byLaunches,
    unchecked,
    checked,
    learnedFactor: unlearned.ofBoats === 0 ? 1 : used.ofBoats / unlearned.ofBoats,
    clean: boats.learned,
    beyondPrograms: all === 0 ? 0 : unchecked / all,
  };
}
