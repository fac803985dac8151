import type { AssumptionSet } from "../../assumptions/entry.js";
import { isPrice } from "../../assumptions/entry-marks.js";
import type { AppliedOverride } from "../../assumptions/override.js";
import type { PriceFactor } from "../../assumptions/prices.js";
import { type Assumed, recorder } from "../../model/assumed.js";
import { type Comparison, compare } from "../../model/compare.js";
import { once } from "../../model/computed-once.js";
import type { StudyInput } from "../../model/inputs.js";
import { type HabitatDoubt, habitatDoubt } from "../../model/lake/habitat-doubt.js";
import type { ClassChance } from "../../model/program/class-chances.js";
import { type ChanceOrigins, chanceOrigins } from "../../model/risk/chance-origins.js";
import { findsPerSample, foundWithin } from "../../model/risk/detection.js";
import type { StudyDocument } from "../format/schema.js";
import type { FuturesOdds, Odds } from "../odds/odds.js";
import { type Papers, paperAssumptions, papers } from "../papers/papers.js";
import { type Confidences, confidences } from "../traced/confidence.js";
import { type TracedResult, tracedResult } from "../traced/traced.js";
import { type TracedChance, tracedChance } from "../traced/traced-chance.js";
import { requestedTraced } from "../traced/traced-option.js";
import { type TypedQuantity, typedQuantities } from "../typed/typed-quantities.js";
import { tellingAmounts } from "./amounts.js";
import { logSpreadsOf } from "./chance-estimate.js";
import { type PreparedStudy, prepareStudy } from "./prepared.js";
import type { StudyPrices } from "./prices.js";
import { type StationRun, staffStations } from "./staffing.js";
import { type CoverageRun, coverageRuns, type StudyTraffic } from "./traffic.js";

/** A study with everything its report needs. */
export interface StudyRun extends Papers {
  readonly document: StudyDocument;
  readonly assumptions: AssumptionSet;
  readonly overrides: readonly AppliedOverride[];
  readonly prices: StudyPrices;
  readonly comparison: Comparison;
  /** How firmly the lake's habitat is known. */
  readonly habitatDoubt: HabitatDoubt;
  /** Ids of all assumptions read by the comparison, each once. */
  readonly usedAssumptions: readonly string[];
  /** Chances of the vessel classes, in order, updated by the study's log of seasons. */
  readonly chances: readonly ClassChance[];
  /** From what the yearly chance comes; absent where the lake is infested already. */
  readonly chance: ChanceOrigins | undefined;
  /** The comparison with the uncertain groups at their low and high values, one at a time; worked out when first asked for. */
  readonly ranges: () => readonly RangeRun[];
  /** Absent if the study gives no traffic. */
  readonly traffic: StudyTraffic | undefined;
  /** Coverage computed from open hours, for each option that gives them. */
  readonly coverage: readonly CoverageRun[];
  /** Inspectors and waits of each option with a station. */
  readonly staffing: readonly StationRun[];
  /** Quantities typed as one number that may be off; found when first asked for. */
  readonly typed: () => readonly TypedQuantity[];
  /** What reports tell beside the comparison; worked out when first asked for. */
  readonly traced: () => TracedResult;
  /** How firm the findings of its odds are. */
  readonly confidence: (odds: FuturesOdds & Pick<Odds, "matters">) => Confidences;
  /** The published counts behind the chance, and its variants; worked out when first asked for. */
  readonly tracedChance: () => TracedChance;
}

interface RangeRun {
  readonly name: string;
  readonly low: Comparison;
  readonly high: Comparison;
}

/** Computes a study and the ranges that its report shows. */
export function runStudy(document: StudyDocument, all: AssumptionSet): StudyRun {
  const prepared = prepareStudy(document, all);
  const { assumptions, input, assumed, overrides, prices, chances, traffic, inputAssumptions } = prepared;
  const overridden = new Set(overrides.map(({ entry }) => entry.id));
  const { assumed: recorded, ids } = recorder(assumed);
  const comparison = tellingAmounts(document, () => compare(input, recorded));
  const used = new Set(ids());
  const ranges = once(() => rangeRuns(document, prepared, { used, comparison }));
  const withShape = (shape: number) => {
    const variant = prepareStudy(withOwnShape(document, shape), all);
    return tellingAmounts(document, () => compare(variant.input, variant.assumed, comparison));
  };
  const comparedAssumptions = [...new Set([...inputAssumptions, ...ids()])];
  const usedAssumptions = [...new Set([...comparedAssumptions, ...paperAssumptions(document)])];
  const chance = originsOfChance(prepared, comparison);
  const judgedBy = once(() => ({
    ...{ assumptions, chance, own: overridden },
    chanceIds: usedAssumptions.filter((id) => id.split(".")[0] === "arrival"),
    central: requestedBenefit(document, comparison.options),
    otherSpecies: requestedBenefit(document, compare(withOtherSpecies(input), assumed).options),
  }));
  const computed = { document, assumptions, overrides, prices, comparison, usedAssumptions, chances };
  const traced = once(() => tracedResult({ ...computed, usedAssumptions: comparedAssumptions }));
  const staffing = staffStations(document, traffic?.scaled);
  return {
    ...computed,
    habitatDoubt: habitatDoubt(input.lake, assumed),
    chance,
    ranges,
    traffic,
    coverage: coverageRuns(document),
    staffing,
    typed: once(() => typedQuantities(document, assumptions)),
    traced,
    ...papers({
      ...{ document, comparison, staffing, assumed },
      requested: () => requestedTraced(document, traced().options),
      compared: (changed) => tellingAmounts(document, () => compare(changed, assumed, comparison)),
    }),
    confidence: (odds) => confidences(odds, judgedBy()),
    tracedChance: once(() => tracedChance({ document, assumptions, comparison, assumed, withShape })),
  };
}

function rangeRuns(
  document: StudyDocument,
  { assumptions, input, assumed, overrides, prices }: PreparedStudy,
  { used, comparison }: { readonly used: ReadonlySet<string>; readonly comparison: Comparison },
): RangeRun[] {
  const at = (bound: "low" | "high", group: RangeGroup) => {
    const shift = { assumptions, ids: group.ids, bound, factorOf: prices.factorOf };
    const known = group.movesStructures ? undefined : comparison;
    return tellingAmounts(document, () => compare(input, shifted(assumed, shift), known));
  };
  const overridden = new Set(overrides.map(({ entry }) => entry.id));
  return rangeGroups(assumptions, used)
    .map((group) => ({ ...group, ids: group.ids.filter((id) => !overridden.has(id)) }))
    .filter(({ ids }) => ids.length > 0)
    .map((group) => ({ name: group.name, low: at("low", group), high: at("high", group) }));
}

/** Of a lake that is infested there is no chance left to estimate. */
function originsOfChance(
  { input, assumed, assumptions, overrides }: PreparedStudy,
  { baseline, lake }: Comparison,
): ReturnType<typeof chanceOrigins> | undefined {
  if (input.lake.infestedSince !== undefined) return undefined;
  const suitability = lake.suitability.weight;
  const spreads = logSpreadsOf(assumptions.entries, overrides);
  return chanceOrigins(input, { baseline, suitability }, assumed, spreads);
}

function requestedBenefit({ study }: StudyDocument, options: Comparison["options"]): number {
  const found = options.find(({ result }) => result.option.id === study.requestedOption);
  return found?.netBenefit.toNumber() ?? 0;
}

const withOtherSpecies = (input: StudyInput): StudyInput => ({
  ...input,
  lake: { ...input.lake, species: input.lake.species === "quagga" ? "zebra" : "quagga" },
});

const withOwnShape = (document: StudyDocument, shape: number): StudyDocument => ({
  ...document,
  overrides: [
    ...document.overrides.filter(({ id }) => id !== "arrival.shape"),
    { id: "arrival.shape", value: shape, reason: "a variant of the report" },
  ],
});

interface RangeGroup {
  readonly name: string;
  readonly ids: readonly string[];
  /** False if only the chance of infestation changes, not its cost. */
  readonly movesStructures: boolean;
}

/** Assumptions that move together in the report's ranges; detection by samples only if used. */
function rangeGroups({ entries }: AssumptionSet, used: ReadonlySet<string>): RangeGroup[] {
  const all = [...entries.values()];
  const prices = all.filter((entry) => isPrice(entry) && !/^(checks|detection)\./.test(entry.id));
  const perSample = new Set<string>([...Object.values(findsPerSample), ...foundWithin]);
  const finds = all.filter(({ id }) => perSample.has(id) && used.has(id));
  return [
    {
      name: "chance that a fouled launch founds a population",
      ids: ["arrival.founding-unknown", "arrival.founding-near", "arrival.founding-far"],
      movesStructures: false,
    },
    {
      name: "all unit prices of work and treatment together",
      ids: prices.map(({ id }) => id),
      movesStructures: true,
    },
    { name: "settlers a month on a bare surface", ids: ["growth.settlers-per-month"], movesStructures: true },
    {
      name: "how readily a sample finds mussels",
      ids: finds.map(({ id }) => id),
      movesStructures: false,
    },
  ];
}

function shifted(
  assumed: Assumed,
  shift: { assumptions: AssumptionSet; ids: readonly string[]; bound: "low" | "high"; factorOf: PriceFactor },
): Assumed {
  const values = new Map(
    shift.ids.flatMap((id) => {
      const entry = shift.assumptions.entries.get(id);
      if (!entry) return [];
      return [[id, entry[shift.bound] * shift.factorOf(entry)] as const];
    }),
  );
  return (id) => values.get(id) ?? assumed(id);
}
