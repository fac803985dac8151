import { isPrice } from "../../assumptions/entry-marks.js";
import { at } from "../../lists.js";
import type { Increment } from "../../model/increments.js";
import { noMoney } from "../../model/money/decimal.js";
import type { OptionResult } from "../../model/option.js";
import type { OptionBalance } from "../../model/option-balance.js";
import type { Odds } from "../../study/odds/odds.js";
import type { StudyRun } from "../../study/prepare/compute.js";
import type { StationRun } from "../../study/prepare/staffing.js";
import type { TracedOption } from "../../study/traced/traced-option.js";
import { bridgeText } from "../board/headline-words.js";
import { incrementsOf } from "../board/increments-view.js";
import { checkRows } from "../document/check-rows.js";
import { reportContext } from "../document/context.js";
import { chanceJson } from "./results-chance.js";
import { detectionJson } from "./results-detection.js";
import { lineJson, text } from "./results-line.js";
import { requestJson } from "./results-request.js";
import { scheduleJson, structureJson } from "./results-structures.js";

/**
 * All results as plain JSON: amounts as text with two decimals, each cost line of each year, SI units. Odds are numbers as
 * drawn; null where none were.
 */
export function resultsJson(run: StudyRun, odds?: Odds): object {
  const { comparison, document } = run;
  const traced = run.traced();
  const [without, ...others] = traced.options;
  return {
    study: document.study,
    money: moneyJson(run),
    chance: chanceJson(run),
    suitability: comparison.lake.suitability,
    habitatDoubt: run.habitatDoubt,
    structures: traced.structures.map(structureJson),
    schedules: traced.schedules.map(scheduleJson),
    infestationByYear: comparison.infestation.byYear.map(text),
    apartByYear: otherLossesByYear(run),
    enteredByYear: Object.fromEntries(
      [...comparison.infestation.byAccount].map(([account, { byYear }]) => [account, byYear.map(text)]),
    ),
    baseline: optionJson(without),
    options: comparison.options.map((balance, index) => balanceJson(balance, at(others, index))),
    cashFlows: traced.options.map(flowsJson),
    coverage: run.coverage,
    existingOption: document.study.existingOption ?? null,
    increments: incrementsOf(traced).map(incrementJson),
    staffing: run.staffing.map(stationJson),
    request: requestJson(run, odds),
    headline: headlineJson(run, odds),
    odds: odds ?? null,
    checks: checkRows(run),
    assumptions: run.usedAssumptions.map((id) => assumptionJson(id, run)),
    overrides: run.overrides.map(({ entry, value, text: typed, reason }) => ({
      id: entry.id,
      value,
      typed,
      reason,
    })),
    alteredAssumptions: run.assumptions.alterations,
  };
}

/** The other losses that staff entered, by year of an infestation; they are in no other sum. */
const otherLossesByYear = ({ comparison: { infestation } }: StudyRun): string[] =>
  (infestation.byAccount.get("other")?.byYear ?? infestation.byYear.map(() => noMoney)).map(text);

/** The answer by the odds; null where none were drawn, and where the lake is infested. */
function headlineJson(run: StudyRun, odds: Odds | undefined): object | null {
  const { headline, format, confidence } = reportContext(run, odds);
  if (!headline) return null;
  return { ...headline, bridge: bridgeText({ headline, format }) ?? null, confidence: confidence ?? null };
}

function moneyJson({ comparison, document, prices }: StudyRun): object {
  const { money } = document;
  const { planning } = money.discountRate;
  return {
    currency: money.currency,
    priceYear: money.priceYear,
    startYear: money.startYear,
    horizon: money.horizon,
    discountRate: money.discountRate.value,
    discountRateOrigin: planning?.origin ?? money.discountRateOrigin ?? null,
    planningRate: planning
      ? {
          meanYield: planning.meanYield.value,
          previousRate: planning.previousRate.value,
          rounded: planning.rounded,
          limited: planning.limited,
        }
      : null,
    timing: money.timing,
    discountFactors: comparison.discountFactors,
    inflation: money.inflation.value,
    exchangeRate: money.exchangeRate,
    priceIndex: prices.index?.id ?? null,
    worksIndex: prices.works?.id ?? null,
    escalation: money.escalation.map(({ group, rate, origin }) => ({
      group,
      rate: rate.value,
      origin,
      priceByYear: comparison.rises.get(group) ?? null,
    })),
  };
}

/** An assumption as the files have it, and what a price was multiplied by. */
function assumptionJson(id: string, { assumptions, prices }: StudyRun): object | undefined {
  const entry = assumptions.entries.get(id);
  return entry && { ...entry, ...(isPrice(entry) ? { priceFactor: prices.factorOf(entry) } : {}) };
}

function flowsJson({ result, flows, equipment }: TracedOption): object {
  const fixed = (amounts: readonly number[]) => amounts.map((amount) => amount.toFixed(2));
  return {
    option: result.option.id,
    constantPrices: fixed(flows.constant),
    moneyOfTheYear: fixed(flows.nominal),
    nominalRate: flows.nominalRate,
    realPresentValue: flows.realPresentValue.toFixed(2),
    nominalPresentValue: flows.nominalPresentValue.toFixed(2),
    equipmentPresentValues: equipment
      ? Object.fromEntries(Object.entries(equipment).map(([key, amount]) => [key, amount.toFixed(2)]))
      : null,
  };
}

function stationJson({ optionId, days, staffing }: StationRun): object {
  return {
    option: optionId,
    staffHoursPerYear: staffing.staffHoursPerYear,
    costPerYear: staffing.costPerYear.toFixed(2),
    meanWaitHours: staffing.meanWaitHours,
    dayTypes: staffing.dayTypes.map(({ dayType, waits, ...least }, index) => ({
      site: at(days, index).siteId,
      dayType: at(days, index).dayTypeId,
      daysPerYear: dayType.daysPerYear,
      ...least,
      waits: waits.map(({ inspectors, meanWaitHours, shareOverTarget }) => ({
        inspectors,
        meanWaitHours,
        shareOverTarget,
      })),
    })),
    curve: staffing.curve.map(({ costPerYear, oneMore, ...point }) => ({
      ...point,
      costPerYear: costPerYear.toFixed(2),
      oneMore: oneMore ? { ...oneMore, costAdded: oneMore.costAdded.toFixed(2) } : null,
    })),
  };
}

function optionJson(traced: TracedOption): object {
  const { result } = traced;
  const pair = ({ program, infestation, total }: OptionResult["presentValue"]) => ({
    program: text(program),
    infestation: text(infestation),
    total: text(total),
  });
  return {
    id: result.option.id,
    name: result.option.name,
    arrivals: result.arrivals,
    hazard: result.hazard,
    detection: detectionJson(traced),
    infestedByYear: result.infestedByYear,
    programLines: result.programLines.map(lineJson),
    programPerYear: text(result.programPerYear),
    inspectionCost: inspectionJson(traced),
    fullCostFee: feeJson(traced),
    schedule: result.option.schedule ?? null,
    schedulePerYear: text(result.schedulePerYear),
    schedulePresentValue: text(result.schedulePresentValue),
    expectedByYear: result.expectedByYear.map(pair),
    presentValue: pair(result.presentValue),
    equivalentYearly: pair(result.equivalentYearly),
    undiscounted: pair(result.undiscounted),
  };
}

function inspectionJson({ inspection: { cost, checked, perBoat } }: TracedOption): object {
  return { costPerYear: text(cost), boatsChecked: checked, perBoat: perBoat ?? null };
}

function feeJson({ fee }: TracedOption): object {
  const { cost, feeRevenue, perBoat, factor, ...rest } = fee;
  return {
    costPerYear: text(cost),
    feeRevenue: text(feeRevenue),
    perBoat: perBoat ?? null,
    factor: factor ?? null,
    ...rest,
  };
}

function incrementJson({ result, addedHoursPerYear, benefitCostRatio, ...amounts }: Increment): object {
  return {
    option: result.option.id,
    addedHoursPerYear,
    addedCostPerYear: text(amounts.addedCostPerYear),
    addedProgramCost: text(amounts.addedProgramCost),
    avoidedLoss: text(amounts.avoidedLoss),
    netBenefit: text(amounts.netBenefit),
    benefitCostRatio: benefitCostRatio ?? null,
  };
}

function balanceJson(balance: OptionBalance, traced: TracedOption): object {
  const responseBenefit = balance.responseBenefit();
  return {
    ...optionJson(traced),
    addedProgramCost: text(balance.addedProgramCost),
    avoidedLoss: text(balance.avoidedLoss),
    netBenefit: text(balance.netBenefit),
    responseBenefit: responseBenefit === undefined ? null : text(responseBenefit),
    benefitCostRatio: balance.benefitCostRatio ?? null,
    breakEven: {
      hazard: balance.breakEven.hazard ?? null,
      programPerYear: balance.breakEven.programPerYear ? text(balance.breakEven.programPerYear) : null,
      lossFactor: balance.breakEven.lossFactor ?? null,
      hazards: balance.breakEven.hazards,
      stopped: balance.breakEven.stopped,
      horizons: balance.breakEven.horizons,
    },
    atOtherRates: balance.atOtherRates().map(({ netBenefit, benefitCostRatio, rate }) => ({
      rate,
      netBenefit: text(netBenefit),
      benefitCostRatio: benefitCostRatio ?? null,
    })),
    budgetInCents: balance.budget ?? null,
    bearers: balance.bearers.map(({ id, name, ...amounts }) => ({
      id,
      name,
      ...Object.fromEntries(Object.entries(amounts).map(([key, amount]) => [key, text(amount)])),
    })),
  };
}
