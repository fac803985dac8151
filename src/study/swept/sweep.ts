import type { AssumptionSet } from "../../assumptions/entry.js";
import { optionResults } from "../../model/compare.js";
import { difference } from "../../model/increments.js";
import type { OptionResult } from "../../model/option.js";
import type { StudyDocument } from "../format/schema.js";
import { tellingAmounts } from "../prepare/amounts.js";
import { prepareStudy } from "../prepare/prepared.js";
import { InputError, type Problem } from "../reading/problems.js";
import type { ParsedStudy } from "../reading/read.js";
import { recordReaders } from "../reading/record-readers.js";
import { lakesInTurn } from "./known-lake.js";
import { pointsOf, type SweptValues } from "./points.js";
import { type Setting, unknownSettings, withSettings } from "./settings.js";

/** An option at one point; present values at central values, in the money of the study. */
export interface SweptOption {
  readonly id: string;
  readonly name: string;
  readonly programPerYear: number;
  readonly addedProgramCost: number;
  readonly avoidedDamage: number;
  readonly netBenefit: number;
  readonly benefitCostRatio: number | null;
  readonly expectedDamage: number;
  readonly chancePerYear: number;
  readonly chanceAtEnd: number;
}

export interface SweptPoint {
  readonly settings: readonly Setting[];
  /** None where the study cannot be computed there. */
  readonly options: readonly SweptOption[];
  /** Why it cannot. */
  readonly problems: readonly Problem[];
}

export interface Sweep {
  readonly study: string;
  readonly currency: string;
  readonly priceYear: number;
  readonly horizon: number;
  readonly swept: readonly string[];
  readonly points: readonly SweptPoint[];
}

/**
 * A study computed at every combination of some values, by the exact model at central values. A point at which it
 * contradicts itself says so; the others are computed all the same.
 * @throws InputError where nothing can be computed: an unknown id, too many points, an unfinished study
 */
export function sweep(parsed: ParsedStudy, values: readonly SweptValues[], set: AssumptionSet): Sweep {
  const settings = pointsOf(parsed.name, values);
  const unknown = unknownSettings(parsed, values, set);
  if (unknown.length > 0) throw new InputError(parsed.name, unknown);
  const { document, points } = sweptPoints(parsed, settings, set);
  const { money, study } = document;
  return {
    study: study.name,
    currency: money.currency,
    priceYear: money.priceYear,
    horizon: money.horizon,
    swept: values.map(({ id }) => id),
    points,
  };
}

/** The study, and what each of its options comes to with some settings after others. @throws InputError of an unfinished study */
export function sweptPoints(
  parsed: ParsedStudy,
  points: readonly (readonly Setting[])[],
  set: AssumptionSet,
): { readonly document: StudyDocument; readonly points: readonly SweptPoint[] } {
  const readers = recordReaders();
  const document = withSettings(parsed, [], set, readers);
  const optionsAt = computing(set);
  return {
    document,
    points: points.map((settings) =>
      toldAt(settings, () => optionsAt(withSettings(parsed, settings, set, readers), settings)),
    ),
  };
}

function toldAt(settings: readonly Setting[], optionsAt: () => SweptOption[]): SweptPoint {
  try {
    return { settings, options: optionsAt(), problems: [] };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { settings, options: [], problems: error.problems };
  }
}

function computing(set: AssumptionSet) {
  const lakeOf = lakesInTurn(set);
  return (document: StudyDocument, settings: readonly Setting[]): SweptOption[] => {
    const prepared = prepareStudy(document, set);
    const { results, baseline } = tellingAmounts(document, () =>
      optionResults(prepared.input, prepared.assumed, lakeOf(prepared, settings)),
    );
    return results.map((result) => sweptOption(result, baseline));
  };
}

function sweptOption(result: OptionResult, baseline: OptionResult): SweptOption {
  const { addedProgramCost, avoidedLoss, netBenefit, benefitCostRatio } = difference(result, baseline);
  const { option, programPerYear, presentValue, hazard, infestedByYear } = result;
  return {
    id: option.id,
    name: option.name,
    programPerYear: programPerYear.toNumber(),
    addedProgramCost: addedProgramCost.toNumber(),
    avoidedDamage: avoidedLoss.toNumber(),
    netBenefit: netBenefit.toNumber(),
    benefitCostRatio: benefitCostRatio ?? null,
    expectedDamage: presentValue.infestation.toNumber(),
    chancePerYear: hazard,
    chanceAtEnd: infestedByYear.at(-1) ?? 0,
  };
}
