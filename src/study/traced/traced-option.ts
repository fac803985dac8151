import { at } from "../../lists.js";
import { shareStopped } from "../../model/break-even/stopped.js";
import { type CashFlows, cashFlows } from "../../model/cash-flows.js";
import type { Comparison } from "../../model/compare.js";
import { type Increment, increment, inspectorHours, staffHours } from "../../model/increments.js";
import { Money, noMoney } from "../../model/money/decimal.js";
import type { OptionResult } from "../../model/option.js";
import { type ProgramBudget, programBudget } from "../../model/program/budget.js";
import { type EquipmentBases, equipmentBases } from "../../model/program/equipment-bases.js";
import { type FullCostFee, fullCostFee } from "../../model/program/fees.js";
import { type InspectionCost, inspectionCost } from "../../model/program/inspection-cost.js";
import { detectedBy, meanDelay } from "../../model/risk/detection.js";
import { weightedTotal } from "../../model/risk/expectation.js";
import type { StudyDocument } from "../format/schema.js";
import { type ProgramSums, programSums } from "./program-sums.js";
import { type ScheduleTurn, scheduleTurn } from "./schedule-turn.js";

/** What is told of an option beside its result. */
export interface TracedOption {
  readonly result: OptionResult;
  readonly program: ProgramSums;
  /** Absent where it has no program, or the horizon fills no fiscal year. */
  readonly budget: ProgramBudget | undefined;
  /** Hours a year that its staff list pays, and those of inspectors among them. */
  readonly staffHours: number;
  readonly inspectorHours: number;
  readonly inspection: InspectionCost;
  readonly fee: FullCostFee;
  readonly flows: CashFlows;
  /** Absent where it has no equipment. */
  readonly equipment: EquipmentBases | undefined;
  /** Present value of all that it costs up to the end of each year. */
  readonly presentValueSoFar: readonly number[];
  /** Share of the fouled boats without a program that it stops. */
  readonly shareStopped: number;
  readonly meanYearsUnnoticed: number;
  /** Chance that mussels have been detected by the end of each year of an infestation. */
  readonly noticedBy: readonly number[];
  readonly noticedCosts: NoticedCosts;
  /** Against the program in force; absent where the study names none. */
  readonly increment: Increment | undefined;
  /** Absent where it follows no schedule of levels. */
  readonly scheduleTurn: ScheduleTurn | undefined;
}

/** The expected cost of an infestation, parted by when mussels are noticed. Present values. */
export interface NoticedCosts {
  readonly lossesBefore: Money;
  readonly lossesAfter: Money;
  readonly doneAfter: Money;
  readonly attempts: Money;
}

/** @param existing the program in force */
export function tracedOption(
  result: OptionResult,
  { input, baseline, options, discountFactors }: Comparison,
  existing: OptionResult | undefined,
): TracedOption {
  const { option, programLines, arrivals, detection } = result;
  const balance = options.find((each) => each.result === result);
  return {
    result,
    program: programSums(programLines),
    budget: balance ? balance.budget : programBudget(option, input.money),
    staffHours: staffHours(option),
    inspectorHours: inspectorHours(option),
    inspection: inspectionCost(programLines, arrivals),
    fee: fullCostFee(option, programLines),
    flows: cashFlows(result, input.money),
    equipment: equipmentBases(option, input.money),
    presentValueSoFar: presentValueSoFar(result, discountFactors),
    shareStopped: shareStopped({ result, baseline }),
    meanYearsUnnoticed: meanDelay(detection.chanceByAge),
    noticedBy: detectedBy(detection.chanceByAge, input.money.horizon),
    noticedCosts: noticedCosts(result),
    increment: existing && increment(result, existing),
    scheduleTurn: balance && scheduleTurn(balance),
  };
}

function presentValueSoFar({ expectedByYear }: OptionResult, factors: readonly number[]): number[] {
  let sum = 0;
  return expectedByYear.map(({ total }, year) => {
    sum += total.toNumber() * at(factors, year);
    return sum;
  });
}

function noticedCosts({ unnoticed, schedule, weights, containment }: OptionResult): NoticedCosts {
  const { harm, control } = schedule.infestation.plain;
  return {
    lossesBefore: new Money(weightedTotal(unnoticed.plain.harm, weights.unnoticed)),
    lossesAfter: new Money(weightedTotal(harm, weights.noticed)),
    doneAfter: new Money(weightedTotal(control, weights.noticed)),
    attempts: containment?.presentValue ?? noMoney,
  };
}

/** The requested option as traced. */
export function requestedTraced(
  { study }: Pick<StudyDocument, "study">,
  options: readonly TracedOption[],
): TracedOption {
  const found = options.find(({ result }) => result.option.id === study.requestedOption);
  if (!found) throw new Error(`no traced option ${study.requestedOption}`);
  return found;
}
