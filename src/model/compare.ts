import { at } from "../lists.js";
import { type Assumed, recorder } from "./assumed.js";
import { plausibilityChecks } from "./checks.js";
import { withLater } from "./computed-once.js";
import { entryChecks } from "./entries/entries.js";
import type { EntryCheck } from "./entries/entry-check.js";
import type { InfestationCost } from "./infestation-cost.js";
import type { MoneySettings, StudyInput } from "./inputs.js";
import type { Suitability } from "./lake/suitability.js";
import { discountFactors } from "./money/interest.js";
import { type Rises, risesOf } from "./money/price-rises.js";
import { type OptionResult, type OptionSettings, optionResult } from "./option.js";
import { type OptionBalance, optionBalance } from "./option-balance.js";
import { throughBoats } from "./program/arrivals.js";
import { foundingChances, togetherOf } from "./program/founding-chances.js";
import type { AssumptionId } from "./register/register.js";
import { foundingRates } from "./risk/founding-rates.js";
import type { FoundingRates } from "./risk/hazard.js";
import {
  type LevelsResult,
  type ScheduleResult,
  type ScheduleSettings,
  underSchedules,
} from "./schedules.js";
import type { Check, MeasuredCheck } from "./structures/component.js";
import type { StructureResult } from "./structures/structure.js";

interface LakeResult extends LevelsResult {
  readonly suitability: Suitability;
  /** Density over capacity times suitability at the end of each year of the horizon, from establishment or, in an
   * infested lake, from its age at the start. */
  readonly densityByYear: readonly number[];
  /** Ids of the assumptions behind suitability, growth and drying: behind every layer. */
  readonly layerAssumptionIds: readonly AssumptionId[];
}

export interface Comparison {
  readonly input: StudyInput;
  readonly lake: LakeResult;
  /** Under the lake's own levels. */
  readonly structures: readonly StructureResult[];
  readonly infestation: InfestationCost;
  /** The lake's own levels and each other schedule of the study. */
  readonly schedules: readonly [ScheduleResult, ...ScheduleResult[]];
  readonly discountFactors: readonly number[];
  readonly rises: Rises;
  readonly baseline: OptionResult;
  readonly options: readonly OptionBalance[];
  readonly rates: FoundingRates;
  /** Worked out when asked for. */
  readonly checks: ReadonlyArray<Check | MeasuredCheck>;
  /** Worked out when asked for. What was entered against what is usual; unlike the others these have limits with units, for each reader's own. */
  readonly entryChecks: readonly EntryCheck[];
}

/**
 * The main job. R = (X0 − X)/(K − K0) and B = (X0 − X) − (K − K0): what an infestation would cost the structures year by year, weighed by its chance under each
 * option, against what the option costs. All present values are real, at the study's rate and timing.
 * @param source reads assumptions; overrides of the study are already in it
 * @param known schedules already worked out, where only arrivals or money differ
 * @throws Error naming structure and quantity where a result is not finite
 */
export function compare(
  input: StudyInput,
  source: Assumed,
  known?: Pick<Comparison, "schedules" | "lake">,
): Comparison {
  const { lake, settings, results, baseline } = optionResults(input, source, known);
  const { schedules, rates, factors, rises } = settings;
  const [{ structures, infestation, contexts }] = schedules;
  const others = results.filter((result) => result !== baseline);
  const comparison = {
    input,
    lake,
    structures,
    infestation,
    schedules,
    discountFactors: factors,
    rises,
    baseline,
    options: others.map((result) => optionBalance(result, baseline, { input, source, settings })),
    rates,
  };
  return withLater(comparison, {
    checks: () => [
      ...structures.flatMap((each) => each.checks),
      ...plausibilityChecks(input, structures, infestation, source),
    ],
    entryChecks: () => entryChecks(input, contexts, source),
  });
}

/** The options of a study with what they rest on. */
export interface OptionResults {
  readonly lake: LakeResult;
  readonly settings: OptionSettings;
  readonly results: readonly OptionResult[];
  readonly baseline: OptionResult;
}

/** What each option costs and risks, without what it is weighed against: a part of `compare`, and much quicker. */
export function optionResults(
  input: StudyInput,
  source: Assumed,
  known?: Pick<Comparison, "schedules" | "lake">,
): OptionResults {
  const { money } = input;
  const yearsInfested = yearsSinceEstablishment(input);
  const { schedules, lake } = known ?? lakeUnderSchedules({ input, yearsInfested, source });
  const settings = {
    schedules,
    rates: ratesOf(input, lake.suitability.weight, source),
    factors: discountFactors(money.horizon, money.discountRate, money.timing),
    rises: risesOf(money.escalation ?? [], money.horizon, money),
  };
  const results = input.options.map((option) => optionResult(option, input, source, settings));
  const baseline = at(results, input.options.findIndex(isBaseline));
  return { lake, settings, results, baseline };
}

/** The option that does nothing, which the others are held against. */
export const isBaseline = ({ steps, schedule }: { readonly steps?: unknown; readonly schedule?: unknown }) =>
  steps === undefined && schedule === undefined;

/** The lake under its own levels and the others; assumptions that lie behind every layer are recorded apart. */
export function lakeUnderSchedules(settings: ScheduleSettings): Pick<Comparison, "schedules" | "lake"> {
  const reader = recorder(settings.source);
  const schedules = underSchedules(settings, reader.assumed);
  const [own] = schedules;
  const [{ suitability, density }] = own.contexts;
  return {
    schedules,
    lake: {
      ...own.levels,
      suitability,
      densityByYear: density.slice(settings.yearsInfested * 12).filter((_, month) => month % 12 === 11),
      layerAssumptionIds: reader.ids(),
    },
  };
}

/** Years that a lake declared infested has been so at the start; 0 for a lake without mussels. */
export function yearsSinceEstablishment({
  lake,
  money,
}: {
  lake: StudyInput["lake"];
  money: MoneySettings;
}): number {
  return lake.infestedSince === undefined ? 0 : Math.max(0, money.startYear - lake.infestedSince);
}

/** What turns boats into chances; see `foundingRates`. */
export function ratesOf(
  { boats, options, lake, money }: StudyInput,
  suitability: number,
  source: Assumed,
  chances: readonly number[] = foundingChances(boats, source),
): FoundingRates {
  const open = options.find(isBaseline);
  if (!open) throw new Error("options: one must have neither steps nor schedule, to compare the others with");
  const through = throughBoats(boats, open, lake, source, chances);
  const reaching = { launches: through.launches, foundings: togetherOf(through, source) };
  return foundingRates(reaching, suitability, { boats, horizon: money.horizon }, source);
}
