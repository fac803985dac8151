import { at } from "../../lists.js";
import { remembered } from "../computed-once.js";
import { hoursPerDay, secondsPerDay } from "../lake/calendar.js";
import { waterTemperature } from "../lake/temperature.js";
import type { Layer } from "../mussels/layer.js";
import { depthOf } from "../mussels/surface.js";
import type { AssumptionId } from "../register/register.js";
import type { PlanBy, PlanEntry } from "./catalogue.js";
import { cleaningOutage } from "./cleaning.js";
import type { Component, Plan, Priced } from "./component.js";
import type { LakeContext } from "./context.js";
import { disposalIds, shellDisposalIds, shellShareId } from "./disposal-rate.js";

/**
 * The work at one date of a plan's routine, apart from what is carted away. Heat for a line's flow, drawn at
 * the depth of the part and held for some hours: E = c Q t·max(0, Tk − T).
 */
export function workLines(
  entry: PlanEntry,
  component: Component,
  context: LakeContext,
  month: number,
): readonly Priced[] {
  switch (entry.measure) {
    case "leave":
    case "oxidant-season":
    case "oxidant-end":
    case "chemical-season":
      return [];
    case "heat":
      return withOutage(heating(entry, component, context, month), component, context, month);
    case "second-line":
      return [switching(entry, component, context)];
    case "dry":
    case "coating":
    case "clean":
    case "trigger":
    case "filter":
      return withOutage(component.cleaning.work(shareOf(entry)), component, context, month);
  }
}

/** The assumption that holds the share of the usual cost of a cleaning, where a plan makes the work lighter. */
function shareOf(entry: PlanEntry): AssumptionId | undefined {
  switch (entry.measure) {
    case "dry":
      return "cleaning.dry-share";
    case "coating":
      return entry.numbers.cleaningShare;
    default:
      return undefined;
  }
}

const withOutage = (
  work: readonly Priced[],
  component: Component,
  { assumed }: LakeContext,
  month: number,
): readonly Priced[] => [...work, ...cleaningOutage(component, assumed, month)];

/** Heating the line's flow from the water's temperature to the killing one, and the boiler's visit. */
function heating(
  { numbers }: PlanBy<"heat">,
  component: Component,
  { assumed, lake, monthlyLevels }: LakeContext,
  month: number,
): Priced[] {
  const depth = depthOf(component.surface.place, at(monthlyLevels, month));
  const ids = [numbers.temperature, numbers.hours, numbers.energyPrice, numbers.visit];
  const warming = Math.max(0, assumed(numbers.temperature) - waterTemperature(lake, month, depth));
  const volume = (component.designFlow * assumed(numbers.hours) * secondsPerDay) / hoursPerDay;
  const price = assumed(numbers.energyPrice);
  const visit = assumed(numbers.visit);
  return [
    {
      what: "heating the line",
      type: "protection",
      quantity: volume * warming * assumed("water.heat-capacity"),
      quantityKind: "energy",
      unitRate: price,
      assumptionIds: [...ids, "water.heat-capacity"],
    },
    {
      what: "visits with the boiler",
      type: "protection",
      quantity: component.count,
      quantityKind: "visits",
      unitRate: visit,
      assumptionIds: ids,
    },
  ];
}

const labourRateId = "labour.maintenance-rate";

function switching(
  { numbers: { switchingHours } }: PlanBy<"second-line">,
  { count }: Component,
  { assumed }: LakeContext,
): Priced {
  return {
    what: "changing over and flushing",
    type: "work",
    quantity: assumed(switchingHours) * count,
    quantityKind: "hours",
    unitRate: assumed(labourRateId),
    assumptionIds: [switchingHours, labourRateId],
  };
}

/** Treatments kill and leave the shells; work with tools takes the mussels whole. */
const leavesShells: ReadonlySet<PlanEntry["measure"]> = new Set([
  "oxidant-season",
  "oxidant-end",
  "chemical-season",
  "heat",
  "second-line",
]);

/** What is taken off, by its mass, and carted away when a plan makes the surface bare. */
export function removalLines(
  { entry }: Plan,
  layer: Layer,
  component: Component,
  context: LakeContext,
): Priced[] {
  const mass = layer.mass * component.wettedArea;
  if (mass === 0) return [];
  if (leavesShells.has(entry.measure)) return [shellDisposal(mass, component, context)];
  const removed = component.cleaning.removal(mass, shareOf(entry));
  return [...removed, disposal(mass, context, scrapedIds(component.areaIds ?? noIds))];
}

/** Shells of what drying and frost killed in the month. */
export function shellLines(layer: Layer, component: Component, context: LakeContext): Priced[] {
  if (layer.killed === 0) return [];
  return [shellDisposal(layer.killed * component.wettedArea, component, context)];
}

/** Removing and dumping the shells of dead mussels, which as a whole had this mass. */
function shellDisposal(mass: number, component: Component, context: LakeContext): Priced {
  const ids = shellIds(component.areaIds ?? noIds);
  return disposal(mass * context.assumed(shellShareId), context, ids);
}

const noIds: readonly AssumptionId[] = [];
/** One list for all months, by what is assumed of the area: lines are known by their lists. */
const scrapedIds = remembered((areaIds: readonly AssumptionId[]) => [...disposalIds, ...areaIds]);
const shellIds = remembered((areaIds: readonly AssumptionId[]) => [...shellDisposalIds, ...areaIds]);

/** Removing and dumping what was scraped off: its mass at two prices, M (c + p). */
export function disposal(
  mass: number,
  { disposalRate }: LakeContext,
  assumptionIds: readonly AssumptionId[],
): Priced {
  return {
    what: "disposal of shells and mussels",
    type: "work",
    quantity: mass,
    quantityKind: "mass",
    unitRate: disposalRate(),
    assumptionIds,
  };
}
