import type { AssumptionSet } from "../../assumptions/entry.js";
import { counted } from "../../counted.js";
import { recorder } from "../../model/assumed.js";
import { compare } from "../../model/compare.js";
import { habitatDoubt } from "../../model/lake/habitat-doubt.js";
import type { StudyDocument } from "../format/schema.js";
import { tellingAmounts } from "../prepare/amounts.js";
import type { StudyRun } from "../prepare/compute.js";
import { prepareStudy } from "../prepare/prepared.js";
import { assumptionDifferences } from "./assumption-differences.js";
import { differencesByPart, isOtherLake, type PartDifference } from "./by-part.js";
import { type Explanation, explainDifference } from "./explain.js";
import { type InputDifference, inputDifferences } from "./input-differences.js";
import { type SchedulesOf, workedSchedules } from "./kept-schedules.js";
import { type PlanDifference, planDifferences } from "./plan-differences.js";
import { type ResultDifference, resultDifferences } from "./result-differences.js";

/** The parts of a computed study that are compared. */
export type ComparedRun = Pick<
  StudyRun,
  "document" | "assumptions" | "comparison" | "habitatDoubt" | "usedAssumptions"
>;

/** A study computed so far, without the ranges of its report. @throws InputError */
export function comparedRun(
  document: StudyDocument,
  all: AssumptionSet,
  schedulesOf: SchedulesOf = workedSchedules,
): ComparedRun {
  const prepared = prepareStudy(document, all);
  const { assumptions, input, assumed, inputAssumptions } = prepared;
  const { assumed: recorded, ids } = recorder(assumed);
  return tellingAmounts(document, () => {
    const worked = schedulesOf(prepared, document);
    const comparison = compare(input, recorded, worked.known);
    return {
      document,
      assumptions,
      comparison,
      habitatDoubt: habitatDoubt(input.lake, assumed),
      usedAssumptions: [...new Set([...inputAssumptions, ...worked.ids(), ...ids()])],
    };
  });
}

export interface StudyDifferences {
  readonly inputs: readonly InputDifference[];
  readonly results: readonly ResultDifference[];
  /** Names of the options that are requested. */
  readonly requested: { readonly left: string; readonly right: string };
  /** Parts of the studies with what each decides; none where both are of one lake. */
  readonly parts: readonly PartDifference[];
  /** Parts that are kept by another plan. */
  readonly plans: readonly PlanDifference[];
  /** Limits of the comparison, in whole sentences. */
  readonly limits: readonly string[];
  /** False if the studies use different currencies; no differences of amounts are given then. */
  readonly moneyCompares: boolean;
}

/** Differences between two studies in inputs and results. */
export function studyDifferences(left: ComparedRun, right: ComparedRun): StudyDifferences {
  const used = new Set([...left.usedAssumptions, ...right.usedAssumptions]);
  const moneyCompares = left.document.money.currency === right.document.money.currency;
  const inputs = [
    ...inputDifferences(left.document, right.document),
    ...assumptionDifferences(left, right, used),
  ];
  return {
    inputs,
    parts: isOtherLake(left.document, right.document) ? differencesByPart(left, right, inputs) : [],
    results: resultDifferences(left.comparison, right.comparison),
    requested: { left: requestedName(left.document), right: requestedName(right.document) },
    plans: planDifferences(left, right),
    limits: limits(left, right),
    moneyCompares,
  };
}

/**
 * How much each changed input explains; undefined if currencies differ, and for two lakes, of whose inputs none can be
 * exchanged alone. See `explainDifference`.
 */
export async function explained(
  left: ComparedRun,
  right: ComparedRun,
  { inputs, parts, moneyCompares }: StudyDifferences,
): Promise<Explanation | undefined> {
  return moneyCompares && parts.length === 0 ? await explainDifference(left, right, inputs) : undefined;
}

function limits({ document: left }: ComparedRun, { document: right }: ComparedRun): string[] {
  const [before, after] = [left.money, right.money];
  const found: string[] = [];
  if (before.currency !== after.currency) {
    found.push(
      `The studies reckon in different currencies, ${before.currency} and ${after.currency}: their amounts stand beside each other, but differences of money are not told and not explained.`,
    );
  }
  if (left.study.requestedOption !== right.study.requestedOption) {
    found.push(
      `The studies request different options, “${requestedName(left)}” and “${requestedName(right)}”: the difference in the net benefit of what is requested is not explained. Options with the same id stand beside each other.`,
    );
  }
  if (before.priceYear !== after.priceYear) {
    found.push(
      `Amounts are in prices of ${before.priceYear} at the left and of ${after.priceYear} at the right.`,
    );
  }
  if (before.horizon !== after.horizon) {
    found.push(
      `Present values and chances are over ${counted(before.horizon, "year")} at the left and over ${after.horizon} at the right.`,
    );
  }
  if ((left.lake.infestedSince === undefined) !== (right.lake.infestedSince === undefined)) {
    found.push(
      "In one of the studies the lake is infested already: its program keeps nothing out, so chances and ratios are not those of the other.",
    );
  }
  return found;
}

function requestedName({ options, study }: ComparedRun["document"]): string {
  return options.find(({ id }) => id === study.requestedOption)?.name ?? study.requestedOption;
}
