import { at, daysInYear, daysOf, months, secondsPerDay } from "../lake/calendar.js";
import { waterTemperature } from "../lake/temperature.js";
import type { Component, Priced } from "./component.js";
import type { LakeContext } from "./context.js";

const costIds = ["small-plant-cost", "small-plant-flow", "large-plant-cost", "large-plant-flow"].map(
  (name) => `oxidant.${name}`,
);

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
  const inMonth = doseOf(component, context, killIds(context));
  return (month) =>
    context.spawningMonths.at(-1) === month ? inMonth(month, killDays(context, month)) : none;
}

/**
 * Days of continuous dosing that kill: published times of 95 % death of zebra mussels at two temperatures, joined
 * linearly on the logarithm of time, h = hc (hw/hc)^((T − Tc)/(Tw − Tc)) hours (Rajagopal and others 2002); quagga dies
 * sooner, by a factor q (Brady and others 1996): d = q h/24.
 */
export function killDays({ assumed, lake }: LakeContext, month: number): number {
  const temperature = waterTemperature(lake, month, 0);
  const [cold, warm] = ["cold", "warm"].map((name) => ({
    temperature: assumed(`oxidant.kill-temperature.${name}`),
    hours: assumed(`oxidant.kill-hours.${name}`),
  }));
  if (!cold || !warm) throw new Error("oxidant: two killing times are needed");
  const share = (temperature - cold.temperature) / (warm.temperature - cold.temperature);
  const hours = cold.hours * (warm.hours / cold.hours) ** share;
  return (hours / 24) * (lake.species === "quagga" ? assumed("oxidant.quagga-kill-factor") : 1);
}

function killIds({ lake }: LakeContext): string[] {
  const ids = ["kill-temperature.cold", "kill-hours.cold", "kill-temperature.warm", "kill-hours.warm"];
  return [...ids, ...(lake.species === "quagga" ? ["quagga-kill-factor"] : [])].map((id) => `oxidant.${id}`);
}

/**
 * The unit cost falls with the plant's size: a power law from the published cost at 1 mgd to that above 10 mgd,
 * level beyond (Chakraborti and others 2016).
 */
function doseOf({ oxidant }: Component, context: LakeContext, ids: readonly string[]) {
  if (oxidant === undefined) return () => none;
  const [smallCost, smallFlow, largeCost, largeFlow] = costIds.map((id) => context.assumed(id));
  const ends = {
    small: { cost: smallCost ?? 0, flow: smallFlow ?? 0 },
    large: { cost: largeCost ?? 0, flow: largeFlow ?? 0 },
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
