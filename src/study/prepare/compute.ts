import type { AssumptionSet } from "../../assumptions/entry.js";
import { type AppliedOverride, applyOverrides, assumedFrom } from "../../assumptions/override.js";
import { isPrice, type PriceFactor } from "../../assumptions/prices.js";
import { type Assumed, recorder } from "../../model/assumed.js";
import { type Comparison, compare } from "../../model/compare.js";
import type { StudyInput } from "../../model/inputs.js";
import type { ClassChance } from "../../model/program/class-chances.js";
import { findsPerSample } from "../../model/risk/detection.js";
import { impossibleProblems } from "../checks/impossible.js";
import { pinnedProblems } from "../checks/pinned-plans.js";
import type { StudyDocument } from "../format/schema.js";
import { describe, InputError, type Problem, pathText, problemOf } from "../reading/problems.js";
import { tellingAmounts } from "./amounts.js";
import { type StudyPrices, studyPrices } from "./prices.js";
import { type StationRun, staffStations } from "./staffing.js";
import { toModel } from "./to-model.js";
import { type CoverageRun, coverageRuns, type StudyTraffic, trafficOf } from "./traffic.js";
import { vesselChances } from "./vessel-chances.js";

/** A study with everything its report needs. */
export interface StudyRun {
  readonly document: StudyDocument;
  readonly assumptions: AssumptionSet;
  readonly overrides: readonly AppliedOverride[];
  readonly prices: StudyPrices;
  readonly comparison: Comparison;
  /** Ids of all assumptions read by the comparison. */
  readonly usedAssumptions: readonly string[];
  /** Chances of the vessel classes, in order, updated by the study's log of seasons. */
  readonly chances: readonly ClassChance[];
  /** Comparisons with one uncertain group at a time at its low and high values. */
  readonly ranges: readonly RangeRun[];
  /** Absent if the study gives no traffic. */
  readonly traffic: StudyTraffic | undefined;
  /** Coverage computed from open hours, for each option that gives them. */
  readonly coverage: readonly CoverageRun[];
  /** Inspectors and waits of each option with a station. */
  readonly staffing: readonly StationRun[];
}

export interface RangeRun {
  readonly name: string;
  readonly low: Comparison;
  readonly high: Comparison;
}

export interface PreparedStudy {
  readonly input: StudyInput;
  readonly assumed: Assumed;
  readonly overrides: readonly AppliedOverride[];
  readonly prices: StudyPrices;
  readonly chances: readonly ClassChance[];
  readonly traffic: StudyTraffic | undefined;
  /** Ids of assumptions read to prepare the input. */
  readonly inputAssumptions: readonly string[];
}

/** Prepares a study for the model. @throws InputError naming each unusable override, price, entry or prescribed plan */
export function prepareStudy(document: StudyDocument, set: AssumptionSet): PreparedStudy {
  const { prices, problems: priceProblems } = studyPrices(document.money, set);
  refuse(
    document,
    priceProblems.map((each) => problemOf(each, document)),
  );
  const { factorOf } = prices;
  const { applied, problems } = applyOverrides(set, document.overrides, factorOf);
  refuse(
    document,
    problems.map(({ index, field, found, allowed }) => ({
      path: pathText(["overrides", index, field], document),
      at: ["overrides", index, field],
      found: describe(found),
      allowed,
      remedy: "Correct or remove this override.",
    })),
  );
  const assumed = assumedFrom(set, applied, factorOf);
  const { assumed: recorded, ids } = recorder(assumed);
  const chances = vesselChances(document.boats, recorded);
  const traffic = trafficOf(document.boats);
  const input = { ...toModel(document, { chances, traffic }), plans: set.plans };
  refuse(
    document,
    impossibleProblems(document, input, assumed).map((each) => problemOf(each, document)),
  );
  refuse(
    document,
    pinnedProblems(input, assumed).map(({ path, found, allowed }) => ({
      path: pathText(path, document),
      at: path,
      found,
      allowed,
      remedy: "Correct or remove this prescribed plan.",
    })),
  );
  return { input, assumed, overrides: applied, prices, chances, traffic, inputAssumptions: ids() };
}

function refuse(document: StudyDocument, problems: readonly Problem[]): void {
  if (problems.length > 0) throw new InputError(document.study.name, problems);
}

export function compareStudy(document: StudyDocument, set: AssumptionSet): Comparison {
  const { input, assumed } = prepareStudy(document, set);
  return tellingAmounts(document, () => compare(input, assumed));
}

/** Computes a study and the ranges in its report. */
export function runStudy(document: StudyDocument, assumptions: AssumptionSet): StudyRun {
  const { input, assumed, overrides, prices, chances, traffic, inputAssumptions } = prepareStudy(
    document,
    assumptions,
  );
  const overridden = new Set(overrides.map(({ entry }) => entry.id));
  const { assumed: recorded, ids } = recorder(assumed);
  const comparison = tellingAmounts(document, () => compare(input, recorded));
  const at = (bound: "low" | "high", group: RangeGroup) => {
    const shift = { assumptions, ids: group.ids, bound, factorOf: prices.factorOf };
    const known = group.movesStructures ? undefined : comparison;
    return tellingAmounts(document, () => compare(input, shifted(assumed, shift), known));
  };
  const ranges = rangeGroups(assumptions, new Set(ids()))
    .map((group) => ({ ...group, ids: group.ids.filter((id) => !overridden.has(id)) }))
    .filter(({ ids: moved }) => moved.length > 0)
    .map((group) => ({ name: group.name, low: at("low", group), high: at("high", group) }));
  return {
    document,
    assumptions,
    overrides,
    prices,
    comparison,
    usedAssumptions: [...inputAssumptions, ...ids()],
    chances,
    ranges,
    traffic,
    coverage: coverageRuns(document),
    staffing: staffStations(document, traffic?.scaled),
  };
}

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
  const perSample = new Set<string>(Object.values(findsPerSample));
  const finds = all.filter(({ id }) => perSample.has(id) && used.has(id));
  return [
    {
      name: "chance that a fouled launch founds a population",
      ids: ["arrival.establishment-per-fouled-launch"],
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
