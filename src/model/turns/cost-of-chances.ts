import type { CostStream } from "../infestation-cost.js";
import { at } from "../lake/calendar.js";
import type { Money } from "../money/line.js";
import type { OptionResult, OptionSettings } from "../option.js";
import { costShare } from "../program/ramp-up.js";
import { followCourse } from "../risk/course.js";

/** An option's cost for any chances of establishment; plain numbers, since a search needs no cents. */
export interface CostOfChances {
  /**
   * Present value of all that an option costs, by the year in which mussels establish: W(t), what it costs from year t on
   * if the lake is then clean, is W(t) = (1−h(t)) (v(t) g(t) G + W(t+1)) + h(t) (D(t) + Σ q(a) W(t+a)), from the last
   * year back; D is what an infestation established in year t costs with the program beside it, and q(a) the chance that
   * it is contained in its year a. It is the same number as by the course of the chances, in far fewer steps.
   * @param hazards h: chance of establishment in year 1, 2, … of the horizon
   */
  readonly expected: (hazards: readonly number[]) => number;
  /** What one more clean year adds: the cost if mussels establish in year t + 1 for certain less that in year t, and at
   * last never less in the last year. Only of meaning where nothing is contained. */
  readonly ofCleanYears: readonly number[];
}

export function costOfChances(
  option: OptionResult,
  settings: Pick<OptionSettings, "factors" | "rises">,
): CostOfChances {
  const { factors } = settings;
  const horizon = factors.length;
  const contained = containedByAge(option, horizon);
  const established = costsIfEstablished(option, settings);
  const clean = factors.map(
    (factor, year) => factor * costShare(option.option, year) * at(option.programInYear, year).toNumber(),
  );
  return {
    expected: (hazards) => {
      const toGo = new Float64Array(horizon + 1);
      for (let year = horizon - 1; year >= 0; year--) {
        let infested = at(established, year);
        for (let age = 0; age < contained.length && year + age < horizon; age++) {
          infested += at(contained, age) * at(toGo, year + age + 1);
        }
        const hazard = at(hazards, year);
        toGo[year] = hazard * infested + (1 - hazard) * (at(clean, year) + at(toGo, year + 1));
      }
      return at(toGo, 0);
    },
    ofCleanYears: clean.map(
      (program, year) => program + (established[year + 1] ?? 0) - at(established, year),
    ),
  };
}

/** q: chance that an infestation is contained in its first, second, … year; empty where nothing is tried. */
function containedByAge({ noticing }: OptionResult, horizon: number): number[] {
  const { containment } = noticing;
  if (!containment) return [];
  const certain = Array.from({ length: horizon }, (_, year) => Number(year === 0));
  return followCourse(certain, noticing)
    .slice(0, containment.latestAge)
    .map(({ attempts }) => attempts * containment.success);
}

/** D: present cost, from its year on, of an infestation established in year 1, 2, … for certain, until it is contained. */
function costsIfEstablished(
  option: OptionResult,
  { factors, rises }: Pick<OptionSettings, "factors" | "rises">,
): number[] {
  const { unnoticed, schedule, noticing } = option;
  const certain = factors.map((_, year) => Number(year === 0));
  const course = followCourse(certain, noticing);
  const lossesOf = (before: CostStream | undefined, known: CostStream | undefined) =>
    course.map(
      (during, age) =>
        amountOf(before?.harm, age) * at(during.unnoticed, 0) +
        amountOf(known?.byYear, age) * at(during.noticed, 0),
    );
  const all = lossesOf(unnoticed, schedule.infestation);
  const rising = [...rises].map(([group, growth]) => ({
    growth,
    losses: lossesOf(unnoticed.rising.get(group), schedule.infestation.rising.get(group)),
  }));
  const kept = course.map((_, age) => {
    const before = course[age - 1];
    return before ? at(before.unnoticed, 0) + before.known * option.option.afterInfestation.share : 1;
  });
  const followed = course.map(({ noticed }) => at(noticed, 0));
  const programs = factors.map(
    (_, year) => costShare(option.option, year) * at(option.programInYear, year).toNumber(),
  );
  const schedules = option.scheduleInYear.map((cost) => cost.toNumber());
  return factors.map((_, established) => {
    let sum = 0;
    for (let year = established; year < factors.length; year++) {
      const age = year - established;
      let cost = at(all, age) + at(followed, age) * at(schedules, year) + at(kept, age) * at(programs, year);
      for (const { growth, losses } of rising) cost += at(losses, age) * (at(growth, year) - 1);
      sum += at(factors, year) * cost;
    }
    return sum;
  });
}

const amountOf = (amounts: readonly Money[] | undefined, age: number) =>
  amounts ? at(amounts, age).toNumber() : 0;
