import { at } from "../lists.js";
import type { Assumed } from "./assumed.js";
import type { InfestationCost } from "./infestation-cost.js";
import { daysInYear, daysOf, months, secondsPerDay } from "./lake/calendar.js";
import type { Check, MeasuredCheck } from "./structures/component.js";
import { kindOf } from "./structures/kinds.js";
import { costAtSize } from "./structures/oxidant.js";
import type { StructureResult } from "./structures/structure.js";

/**
 * The yearly cost of a structure in a mature infestation against published ones: of water works by the volume that they
 * take, of power plants whole. Held only against those that need work done: what the published figures cover.
 */
export function costCheck(
  { structure, components }: StructureResult,
  infestation: InfestationCost,
  assumed: Assumed,
): Array<Check | MeasuredCheck> {
  if (components.every(({ chosen }) => chosen.plan.entry.measure === "leave")) return [];
  const { hasPublishedCosts, waterTaken } = kindOf(structure);
  if (!hasPublishedCosts) return [];
  const mature = infestation.ofStructure(structure.id).byYear.at(-1)?.toNumber() ?? 0;
  if (mature === 0) return [];
  const flow = waterTaken?.(structure);
  return flow === undefined
    ? [plantCheck(structure.name, mature, assumed)]
    : waterCheck(structure.name, mature, flow, assumed);
}

function plantCheck(name: string, mature: number, assumed: Assumed): Check {
  const high = assumed("checks.plant-cost-high");
  return {
    what: `${name}: yearly cost in a mature infestation`,
    found: `${wholeNumber(mature)} a year`,
    allowed: `at most ${wholeNumber(high)} a year, the mean of nuclear stations`,
    passed: mature <= high,
  };
}

/** Smaller plants than the smallest published one are not judged: no figure says how much dearer they are. */
function waterCheck(
  name: string,
  mature: number,
  flow: readonly number[],
  assumed: Assumed,
): MeasuredCheck[] {
  const volume = months.reduce((sum, month) => sum + at(flow, month) * daysOf(month) * secondsPerDay, 0);
  const meanFlow = volume / (daysInYear * secondsPerDay);
  if (meanFlow < assumed("oxidant.small-plant-flow")) return [];
  const found = mature / volume;
  const { low, high } = publishedCosts(meanFlow, assumed);
  return [
    {
      what: `${name}: cost of its water in a mature infestation`,
      measure: "moneyPerVolume",
      found,
      low,
      high,
      from: "from published water works of its size",
      passed: found >= low && found <= high,
    },
  ];
}

/** Least and most published of plants of a size, money per m³: by the same law of size as the cost of dosing. */
export function publishedCosts(meanFlow: number, assumed: Assumed): { low: number; high: number } {
  const small = assumed("oxidant.small-plant-flow");
  const large = assumed("oxidant.large-plant-flow");
  const between = (ofSmall: number, ofLarge: number) =>
    costAtSize(meanFlow, { small: { cost: ofSmall, flow: small }, large: { cost: ofLarge, flow: large } });
  return {
    low: between(assumed("checks.water-cost.small-low"), assumed("checks.water-cost.large-low")),
    high: between(assumed("checks.water-cost.small-high"), assumed("checks.water-cost.large-high")),
  };
}

const wholeNumbers = new Intl.NumberFormat("en-US", { maximumFractionDigits: 0 });
const wholeNumber = (value: number) => wholeNumbers.format(value);
