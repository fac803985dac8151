import { at } from "../../lists.js";
import { daysInYear, daysOf, months, secondsPerDay } from "../lake/calendar.js";
import { waterTemperature } from "../lake/temperature.js";
import { depthOf } from "../mussels/surface.js";
import type { AssumptionId } from "../register/register.js";
import type { Component, Priced } from "./component.js";
import type { LakeContext } from "./context.js";

const costIds = [
  "oxidant.small-plant-cost",
  "oxidant.small-plant-flow",
  "oxidant.large-plant-cost",
  "oxidant.large-plant-flow",
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
  const inMonth = doseOf(component, context, ["oxidant.settlement-factor"]);
  return (month) => (context.spawningMonths.includes(month) ? inMonth(month, daysOf(month)) : none);
}

/** Dosing once, in the last month of settlement, until the season's mussels are dead. */
export function endOfSeasonDose(component: Component, context: LakeContext): MonthlyDose {
  const inMonth = doseOf(component, context, killIdsFor(context));
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

/**
 * The unit cost falls with the plant's size: a power law from the published cost at 1 mgd to that above 10 mgd,
 * level beyond (Chakraborti and others 2016).
 */
function doseOf({ oxidant }: Component, context: LakeContext, ids: readonly AssumptionId[]) {
  if (oxidant === undefined) return () => none;
  const { assumed } = context;
  const [smallCost, smallFlow, largeCost, largeFlow] = costIds;
  const ends = {
    small: { cost: assumed(smallCost), flow: assumed(smallFlow) },
    large: { cost: assumed(largeCost), flow: assumed(largeFlow) },
  };
  const meanFlow = months.reduce((sum, each) => sum + at(oxidant.flow, each) * daysOf(each), 0) / daysInYear;
  const unitRate = costAtSize(meanFlow, ends);
  const assumptionIds = [...costIds, ...ids];
  return (month: number, days: number): readonly Priced[] => [
    {
      what: "oxidant at the intake",
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
