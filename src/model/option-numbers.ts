import { at, noElement, numbersBy } from "../lists.js";
import type { CostStream, YearlyCost } from "./cost-streams.js";
import type { EnteredAccount } from "./money/account.js";
import type { CostSettings, OptionCosts } from "./option-costs.js";
import { attemptInYear } from "./program/containment.js";
import { costShare } from "./program/ramp-up.js";
import { type Detection, type StateProbabilities, stateProbabilities } from "./risk/state-probabilities.js";

/** A loss by year of an infestation, in plain money: while it is unnoticed, and once it is noticed. */
interface LossStream {
  readonly unnoticed: readonly number[];
  readonly noticed: readonly number[];
  /** What it counts in each year of the horizon: always once, or by how much the prices of its group have risen. */
  readonly share: readonly number[] | undefined;
}

/** All that decides what an option costs, but for its chances of establishment; plain money by year of the horizon. */
export interface OptionNumbers {
  readonly factors: readonly number[];
  /** The program while no mussels are known, as far as it has grown. */
  readonly programInYear: readonly number[];
  /** Share of it that goes on once they are. */
  readonly keptShare: number;
  /** Whether the lake is declared infested: its mussels are known before the first year. */
  readonly knownAtStart: boolean;
  /** Following the option's schedule of levels, once they are known. */
  readonly scheduleInYear: readonly number[];
  readonly losses: readonly LossStream[];
  readonly detection: Detection;
  /** Cost of one attempt at containment in each year. */
  readonly attemptInYear: readonly number[];
}

export function numbersOf(
  { option, unnoticed, schedule, programInYear, scheduleInYear, detection }: OptionCosts,
  { factors, rises }: Pick<CostSettings, "factors" | "rises">,
  knownAtStart = false,
): OptionNumbers {
  return {
    factors,
    programInYear: programInYear.map((cost, year) => costShare(option, year) * cost),
    keptShare: option.afterInfestation.share,
    knownAtStart,
    scheduleInYear,
    losses: lossStreams(unnoticed, schedule.infestation, { factors, rises }),
    detection,
    attemptInYear: attemptInYear(option, factors.length, rises),
  };
}

function lossStreams(
  unnoticed: YearlyCost | undefined,
  noticed: YearlyCost | undefined,
  { factors, rises }: Pick<CostSettings, "factors" | "rises">,
): LossStream[] {
  const none = Array<number>(factors.length).fill(0);
  const streamOf = (before?: CostStream, known?: CostStream, rise?: readonly number[]): LossStream => ({
    unnoticed: before?.plain.harm ?? none,
    noticed: known?.plain.byYear ?? none,
    share: rise?.map((each) => each - 1),
  });
  const streams = [streamOf(unnoticed, noticed)];
  for (const [group, rise] of rises) {
    const stream = streamOf(unnoticed?.rising.get(group), noticed?.rising.get(group), rise);
    if (stream.unnoticed.some(isAmount) || stream.noticed.some(isAmount)) streams.push(stream);
  }
  return streams;
}

const isAmount = (amount: number) => amount !== 0;

/** One account of an infestation alone, with no program beside it; absent where nothing is entered in it. */
export function accountNumbers(
  account: EnteredAccount,
  numbers: OptionNumbers,
  { unnoticed, schedule }: OptionCosts,
  settings: Pick<CostSettings, "factors" | "rises">,
): OptionNumbers | undefined {
  const [before, known] = [unnoticed, schedule.infestation].map(({ byAccount }) => byAccount.get(account));
  if (!before && !known) return undefined;
  const none = Array<number>(settings.factors.length).fill(0);
  return {
    ...numbers,
    programInYear: none,
    scheduleInYear: none,
    attemptInYear: none,
    losses: lossStreams(before, known, settings),
  };
}

/** What an option costs by the year in which mussels establish, in present values. */
export interface CostByEstablishment {
  /** v g G: the program in a clean year. */
  readonly clean: readonly number[];
  /** D: an infestation established in year 1, 2, …, with the program beside it, until it is contained. */
  readonly established: readonly number[];
  /** q: chance that it is contained in its first, second, … year; empty where nothing is tried. */
  readonly contained: readonly number[];
}

/** How an infestation goes that establishes in the first year: by the years since. */
export const statesSince = ({
  factors,
  detection,
}: Pick<OptionNumbers, "factors" | "detection">): StateProbabilities[] =>
  stateProbabilities(
    factors.map((_, year) => Number(year === 0)),
    detection,
  );

/** The chances of `statesSince` as lists, made once for all amounts of one option. */
interface ChancesByAge {
  readonly unnoticed: readonly number[];
  readonly noticed: readonly number[];
  readonly attempts: readonly number[];
  /** Of being there and known when the year ends. */
  readonly known: readonly number[];
  /** q: see `CostByEstablishment`. */
  readonly contained: readonly number[];
}

export const chancesByAge = (
  statesByYear: readonly StateProbabilities[],
  detection: Pick<Detection, "containment">,
): ChancesByAge => ({
  unnoticed: numbersBy(statesByYear.length, (age) => at(at(statesByYear, age).unnoticed, 0)),
  noticed: numbersBy(statesByYear.length, (age) => at(at(statesByYear, age).noticed, 0)),
  attempts: numbersBy(statesByYear.length, (age) => at(statesByYear, age).attempts),
  known: numbersBy(statesByYear.length, (age) => at(statesByYear, age).known),
  contained: containedByAge(statesByYear, detection),
});

export function costByEstablishment(
  numbers: OptionNumbers,
  chances: ChancesByAge = chancesByAge(statesSince(numbers), numbers.detection),
): CostByEstablishment {
  const { factors, programInYear } = numbers;
  const established = numbersBy(factors.length, () => 0);
  for (const { byAge, inYear } of weighedAmounts(numbers, chances))
    addByFirstYear(established, byAge, productsOf(inYear, factors));
  return { clean: productsOf(programInYear, factors), established, contained: chances.contained };
}

/** Adds what falls due by the age of an infestation that begins in each year: Σ a(age) w(first + age). */
export function addByFirstYear(sums: number[], byAge: readonly number[], weights: readonly number[]): void {
  for (let first = 0; first < sums.length; first++) {
    let sum = 0;
    for (let year = first; year < weights.length; year++)
      sum +=
        (byAge[year - first] ?? noElement(byAge, year - first)) * (weights[year] ?? noElement(weights, year));
    sums[first] = (sums[first] ?? noElement(sums, first)) + sum;
  }
}

function productsOf(some: readonly number[] | undefined, factors: readonly number[]): readonly number[] {
  return some ? numbersBy(factors.length, (year) => at(factors, year) * at(some, year)) : factors;
}

interface WeighedAmount {
  /** By age of an infestation. */
  readonly byAge: readonly number[];
  /** What it counts in each year of the horizon; once where absent. */
  readonly inYear: readonly number[] | undefined;
}

/** The program, the schedule of levels, attempts at containment and each stream of losses, as far as there are any. */
function weighedAmounts(
  { programInYear, scheduleInYear, attemptInYear, losses, keptShare, knownAtStart }: OptionNumbers,
  { unnoticed, noticed, attempts, known }: ChancesByAge,
): WeighedAmount[] {
  const amounts = losses.map(
    (stream): WeighedAmount => ({
      byAge: numbersBy(
        unnoticed.length,
        (age) => at(stream.unnoticed, age) * at(unnoticed, age) + at(stream.noticed, age) * at(noticed, age),
      ),
      inYear: stream.share,
    }),
  );
  if (programInYear.some(isAmount)) {
    const atStart = knownAtStart ? keptShare : 1;
    const sharesBefore = numbersBy(unnoticed.length, (age) =>
      age === 0 ? atStart : at(unnoticed, age - 1) + at(known, age - 1) * keptShare,
    );
    amounts.push({ byAge: sharesBefore, inYear: programInYear });
  }
  if (scheduleInYear.some(isAmount)) amounts.push({ byAge: noticed, inYear: scheduleInYear });
  if (attemptInYear.some(isAmount)) amounts.push({ byAge: attempts, inYear: attemptInYear });
  return amounts;
}

/** q: see `CostByEstablishment`. */
export const containedByAge = (
  statesByYear: readonly StateProbabilities[],
  { containment }: Pick<Detection, "containment">,
): number[] =>
  containment
    ? statesByYear.slice(0, containment.latestAge).map(({ attempts }) => attempts * containment.success)
    : [];

/**
 * W: present cost from year 1, 2, … on of a lake that is clean when that year begins, and 0 past the horizon, by the
 * year in which mussels establish: W(t) = (1−h(t)) (v(t) g(t) G + W(t+1)) + h(t) (D(t) + Σ q(a) W(t+a)), from the last
 * year back; D is what an infestation established in year t costs with the program beside it, and q(a) the chance that
 * it is contained in its year a. W(1) is the same number as by the course of the chances, in far fewer steps.
 * @param hazards h: chance of establishment in year 1, 2, … of the horizon
 * @param toGo takes the result, so that many futures need no list each: one more than the years of the horizon
 */
export function costToGo(
  { clean, established, contained }: CostByEstablishment,
  hazards: readonly number[],
  toGo: Float64Array = new Float64Array(clean.length + 1),
): Float64Array {
  let next = 0;
  toGo[clean.length] = next;
  for (let year = clean.length - 1; year >= 0; year--) {
    const hazard = hazards[year] ?? noElement(hazards, year);
    const after = contained.length === 0 ? 0 : afterContainment(contained, toGo, year);
    next =
      hazard * ((established[year] ?? noElement(established, year)) + after) +
      (1 - hazard) * ((clean[year] ?? noElement(clean, year)) + next);
    toGo[year] = next;
  }
  return toGo;
}

/** Σ q(a) W(t+a): what is expected from the year after containment on. */
export function afterContainment(contained: readonly number[], toGo: Float64Array, year: number): number {
  let sum = 0;
  const ages = Math.min(contained.length, toGo.length - 1 - year);
  for (let age = 0; age < ages; age++)
    sum +=
      (contained[age] ?? noElement(contained, age)) *
      (toGo[year + age + 1] ?? noElement(toGo, year + age + 1));
  return sum;
}
