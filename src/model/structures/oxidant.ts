import { at } from "../../lists.js";
import type { Assumed } from "../assumed.js";
import { daysInYear, daysOf, months, secondsPerDay } from "../lake/calendar.js";
import { waterTemperature } from "../lake/temperature.js";
import { depthOf } from "../mussels/surface.js";
import type { AssumptionId } from "../register/register.js";
import type { PlanBy } from "./catalogue.js";
import type { Component, Priced } from "./component.js";
import type { LakeContext } from "./context.js";

const costIds = [
  "oxidant.small-plant-cost",
  "oxidant.small-plant-flow",
  "oxidant.large-plant-cost",
  "oxidant.large-plant-flow",
  "oxidant.published-season",
] as const;
const killIds = [
  "oxidant.kill-temperature.cold",
  "oxidant.kill-hours.cold",
  "oxidant.kill-temperature.warm",
  "oxidant.kill-hours.warm",
] as const;
const quaggaFactorId = "oxidant.quagga-kill-factor";

/** Lines of dosing in a month of the year. */
type MonthlyDose = (month: number) => readonly Priced[];

const none: readonly Priced[] = [];

/**
 * Dosing at the mouth in every month in which larvae settle: few settlers last, and what did settle is dead by the
 * year's end.
 */
export function seasonDose(component: Component, context: LakeContext): MonthlyDose {
  return throughSeason(context, oxidantDose(component, context, ["oxidant.settlement-factor"]));
}

/** The same with another chemical, at a price of its own by volume. */
export function chemicalDose(
  { numbers: { dosePrice, settlementFactor } }: PlanBy<"chemical-season">,
  component: Component,
  context: LakeContext,
): MonthlyDose {
  const inMonth = doseOf(component, {
    what: "chemical at the intake",
    unitRate: () => context.assumed(dosePrice),
    assumptionIds: [dosePrice, settlementFactor],
  });
  return throughSeason(context, inMonth);
}

const throughSeason =
  ({ spawningMonths }: LakeContext, inMonth: Dose): MonthlyDose =>
  (month) =>
    spawningMonths.includes(month) ? inMonth(month, daysOf(month)) : none;

/** Dosing once, in the last month of settlement, until the season's mussels are dead. */
export function endOfSeasonDose(component: Component, context: LakeContext): MonthlyDose {
  const inMonth = oxidantDose(component, context, killIdsFor(context));
  const depthIn = (month: number) => depthOf(component.surface.place, at(context.monthlyLevels, month));
  return (month) =>
    context.spawningMonths.at(-1) === month ? inMonth(month, killDays(context, month, depthIn(month))) : none;
}

/**
 * Days of continuous dosing that kill: published times of 95 % death of zebra mussels at two temperatures, joined
 * linearly on the logarithm of time, h = hc (hw/hc)^((T − Tc)/(Tw − Tc)) hours (Rajagopal and others 2002); quagga dies
 * sooner, by a factor q (Brady and others 1996): d = q h/24. Temperature is that at the depth of the part.
 */
export function killDays({ assumed, lake }: LakeContext, month: number, depth: number): number {
  const temperature = waterTemperature(lake, month, depth);
  const [coldTemperature, coldHours, warmTemperature, warmHours] = killIds;
  const cold = { temperature: assumed(coldTemperature), hours: assumed(coldHours) };
  const warm = { temperature: assumed(warmTemperature), hours: assumed(warmHours) };
  const share = (temperature - cold.temperature) / (warm.temperature - cold.temperature);
  const hours = cold.hours * (warm.hours / cold.hours) ** share;
  return (hours / 24) * (lake.species === "quagga" ? assumed(quaggaFactorId) : 1);
}

const killIdsFor = ({ lake }: LakeContext): readonly AssumptionId[] =>
  lake.species === "quagga" ? [...killIds, quaggaFactorId] : killIds;

/** Lines of so many days of dosing in a month of the year. */
type Dose = (month: number, days: number) => readonly Priced[];

const oxidantDose = (component: Component, { assumed }: LakeContext, ids: readonly AssumptionId[]): Dose =>
  doseOf(component, {
    what: "oxidant at the intake",
    unitRate: (meanFlow) => priceOfDose(meanFlow, assumed),
    assumptionIds: [...costIds, ...ids],
  });

/**
 * Price of a volume dosed, k = c/y: the published cost by size (Chakraborti and others 2016) is read as a year's cost over
 * the year's water, of which the published plants dose a share. It falls with the plant's size: a power law from the
 * cost at 1 mgd to that above 10 mgd, level beyond.
 */
export function priceOfDose(meanFlow: number, assumed: Assumed): number {
  const [smallCost, smallFlow, largeCost, largeFlow, dosedShare] = costIds;
  const ends = {
    small: { cost: assumed(smallCost), flow: assumed(smallFlow) },
    large: { cost: assumed(largeCost), flow: assumed(largeFlow) },
  };
  return costAtSize(meanFlow, ends) / assumed(dosedShare);
}

interface DosePricing {
  readonly what: string;
  /** @param meanFlow mean flow of the year, m³/s */
  readonly unitRate: (meanFlow: number) => number;
  readonly assumptionIds: readonly AssumptionId[];
}

function doseOf({ oxidant }: Component, { what, unitRate: rateAt, assumptionIds }: DosePricing): Dose {
  if (oxidant === undefined) return () => none;
  const meanFlow = months.reduce((sum, each) => sum + at(oxidant.flow, each) * daysOf(each), 0) / daysInYear;
  const unitRate = rateAt(meanFlow);
  return (month, days) => [
    {
      what,
      type: "protection",
      quantity: at(oxidant.flow, month) * days * secondsPerDay,
      quantityKind: "volume",
      unitRate,
      assumptionIds,
    },
  ];
}

interface SizedCost {
  readonly cost: number;
  readonly flow: number;
}

/**
 * Unit cost between two sizes on a power law, c = c1 (Q/Q1)^(ln(c2/c1)/ln(Q2/Q1)); level beyond them. Costs by size:
 * Chakraborti and others 2016.
 */
export function costAtSize(flow: number, ends: { small: SizedCost; large: SizedCost }): number {
  const { small, large } = ends;
  const bounded = Math.min(large.flow, Math.max(small.flow, flow));
  const exponent = Math.log(large.cost / small.cost) / Math.log(large.flow / small.flow);
  return small.cost * (bounded / small.flow) ** exponent;
}
