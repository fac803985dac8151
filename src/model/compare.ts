import { type Assumed, recorder } from "./assumed.js";
import { type BearerShare, bearerShares } from "./bearers.js";
import { type BreakEven, breakEven, noBreakEven } from "./break-even.js";
import { plausibilityChecks } from "./checks.js";
import { type InfestationCost, infestationCost } from "./infestation-cost.js";
import type { MoneySettings, StudyInput } from "./inputs.js";
import { exposedBand } from "./lake/levels.js";
import { exposedArea, storageBetween } from "./lake/storage.js";
import type { Suitability } from "./lake/suitability.js";
import { discountFactors } from "./money/interest.js";
import type { Money } from "./money/line.js";
import { type OptionResult, optionResult } from "./option.js";
import type { HazardParameters } from "./risk/hazard.js";
import type { Check } from "./structures/component.js";
import { lakeContexts } from "./structures/context.js";
import { type StructureResult, structureResult } from "./structures/structure.js";

export interface LakeResult {
  readonly daily: readonly number[];
  readonly band: { readonly lowest: number; readonly highest: number };
  readonly exposedArea: number;
  readonly storageInBand: number;
  readonly suitability: Suitability;
  /** Density over capacity times suitability at the end of each year of the horizon, from establishment or, in an
   * infested lake, from its age at the start. */
  readonly densityByYear: readonly number[];
  /** Ids of the assumptions behind suitability, growth and drying: behind every layer. */
  readonly layerAssumptionIds: readonly string[];
}

/** An option against the baseline. Positive net benefit: the program costs less than what it avoids. */
export interface OptionBalance {
  readonly result: OptionResult;
  readonly addedProgramCost: Money;
  readonly avoidedLoss: Money;
  readonly netBenefit: Money;
  /** Avoided loss over added program cost, present values; absent where the option costs nothing more. */
  readonly benefitCostRatio: number | undefined;
  readonly breakEven: BreakEven;
  readonly bearers: readonly BearerShare[];
}

export interface Comparison {
  readonly input: StudyInput;
  readonly lake: LakeResult;
  readonly structures: readonly StructureResult[];
  readonly infestation: InfestationCost;
  readonly discountFactors: readonly number[];
  readonly baseline: OptionResult;
  readonly options: readonly OptionBalance[];
  readonly hazard: HazardParameters;
  readonly checks: readonly Check[];
}

/**
 * The main job: what an infestation would cost the structures year by year, weighed by its chance under each
 * program option, against what the option costs. All present values are real, at the study's rate and timing.
 * @param source reads assumptions; overrides of the study are already in it
 * @param known structures already worked out, where only arrivals or money differ
 * @throws Error naming structure and quantity where a result is not finite
 */
export function compare(
  input: StudyInput,
  source: Assumed,
  known?: Pick<Comparison, "structures">,
): Comparison {
  const { money, lake } = input;
  const layerReader = recorder(source);
  const yearsInfested = yearsSinceEstablishment(input);
  const contexts = lakeContexts(lake, money.horizon + yearsInfested, layerReader.assumed, {
    plans: input.plans,
    discountRate: money.discountRate,
  });
  const [context] = contexts;
  const layerAssumptionIds = layerReader.ids();
  const structures =
    known?.structures ?? input.structures.map((each) => structureResult(each, withReader(contexts, source)));
  const infestation = infestationCost(structures, yearsInfested);
  const hazard = hazardParameters(input, source);
  const factors = discountFactors(money.horizon, money.discountRate, money.timing);
  const settings = { infestation, hazard, suitability: context.suitability.weight, factors };
  const results = input.options.map((option) => optionResult(option, input, source, settings));
  const baseline = results.find(({ option }) => option.steps === undefined);
  if (!baseline) throw new Error("options: one option must have no steps, to compare the others with");
  const programs = results.filter((result) => result !== baseline);
  return {
    input,
    lake: {
      ...lakeResult(input, context.daily, context.density.slice(yearsInfested * 12)),
      suitability: context.suitability,
      layerAssumptionIds,
    },
    structures,
    infestation,
    discountFactors: factors,
    baseline,
    options: programs.map((result) => balance(result, baseline, { input, infestation, settings })),
    hazard,
    checks: [
      ...structures.flatMap((each) => each.checks),
      ...plausibilityChecks(input, structures, infestation, source),
    ],
  };
}

/** The contexts with the reader that structures use, so that the lake's own assumptions are recorded apart. */
function withReader(
  [first, ...rest]: ReturnType<typeof lakeContexts>,
  assumed: Assumed,
): ReturnType<typeof lakeContexts> {
  return [{ ...first, assumed }, ...rest.map((each) => ({ ...each, assumed }))];
}

/** Years that a lake declared infested has been so at the start; 0 for a lake without mussels. */
function yearsSinceEstablishment({
  lake,
  money,
}: {
  lake: StudyInput["lake"];
  money: MoneySettings;
}): number {
  return lake.infestedSince === undefined ? 0 : Math.max(0, money.startYear - lake.infestedSince);
}

function hazardParameters(input: StudyInput, source: Assumed): HazardParameters {
  return {
    establishmentPerArrival: source("arrival.establishment-per-fouled-launch"),
    shape: source("arrival.shape"),
    otherPathways: input.boats.otherPathways,
  };
}

function lakeResult(input: StudyInput, daily: readonly number[], density: readonly number[]) {
  const band = exposedBand(daily);
  const { storageTable } = input.lake;
  return {
    daily,
    band,
    exposedArea: exposedArea(storageTable, band.lowest, band.highest),
    storageInBand: storageBetween(storageTable, band.lowest, band.highest),
    densityByYear: density.filter((_, month) => month % 12 === 11),
  };
}

function balance(
  result: OptionResult,
  baseline: OptionResult,
  rest: {
    input: StudyInput;
    infestation: InfestationCost;
    settings: Parameters<typeof breakEven>[2];
  },
): OptionBalance {
  const addedProgramCost = result.presentValue.program.minus(baseline.presentValue.program);
  const avoidedLoss = baseline.presentValue.infestation.minus(result.presentValue.infestation);
  return {
    result,
    addedProgramCost,
    avoidedLoss,
    netBenefit: avoidedLoss.minus(addedProgramCost),
    benefitCostRatio: addedProgramCost.greaterThan(0)
      ? avoidedLoss.dividedBy(addedProgramCost).toNumber()
      : undefined,
    breakEven:
      rest.input.lake.infestedSince === undefined ? breakEven(result, baseline, rest.settings) : noBreakEven,
    bearers: bearerShares(rest.input.money, rest.infestation, { result, baseline, addedProgramCost }),
  };
}
