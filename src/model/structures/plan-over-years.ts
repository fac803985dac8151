import { at, noElement } from "../../lists.js";
import { type GrowingSurface, growLayers, grownOnce } from "../mussels/growth.js";
import type { Layer } from "../mussels/layer.js";
import { isEverDry } from "../mussels/surface.js";
import type { AssumptionId } from "../register/register.js";
import type { Plan, Priced, Routine } from "./component.js";
import { nearLimit, type PartYear, thickest } from "./growth-between-visits.js";
import { forcedCleaning } from "./limits.js";
import { removalLines, shellLines, workLines } from "./plan-work.js";

/** What following a plan from establishment on leads to, year by year. */
export interface Followed {
  readonly years: readonly (readonly Priced[])[];
  readonly thickestByYear: readonly Layer[];
}

type SurfacePart = PartYear & { readonly surface: GrowingSurface };

/**
 * Follows a plan from establishment over the horizon. Cleaning starts on the first date at which there is a layer
 * worth a visit; from then on every date is kept, as a routine. A protection is in place once mussels are regularly
 * found, or it is first used. Once the lake's density has settled and the surface has been bare on a date, years repeat: they are
 * worked out once.
 */
export function followPlan(plan: Plan, part: SurfacePart): Followed {
  const { density } = part.context;
  const cycle = cycleOf(plan.routine, part);
  if (cycle === undefined) return followMonths(plan, part, density.length).followed;
  const tried = followMonths(plan, part, (cycle.firstYear + cycle.years) * 12);
  return isBareIn(cycle, plan.routine, tried)
    ? repeated(tried.followed, cycle.years, density.length / 12)
    : followMonths(plan, part, density.length).followed;
}

/** Was the surface bare as the cycle needs: cleaned on its date, or killed to the last mussel in its year? */
function isBareIn({ bareMonth, firstYear }: Cycle, routine: Routine, tried: ReturnType<typeof followMonths>) {
  return routine.by === "nothing"
    ? tried.layers.slice(bareMonth, firstYear * 12).some(({ number, killed }) => number === 0 && killed > 0)
    : tried.cleanedMonths.has(bareMonth);
}

interface Cycle {
  /** A date of the routine, or the first month, after which the density no longer changes. */
  readonly bareMonth: number;
  /** The first year that lies wholly after it. */
  readonly firstYear: number;
  readonly years: number;
}

/** When a routine may come to repeat itself within the horizon; undefined if it cannot. */
function cycleOf(routine: Routine, { context, surface }: SurfacePart): Cycle | undefined {
  const { density, settledMonth } = context;
  if (routine.by === "trigger" || (routine.by === "nothing" && !isEverDry(surface.months))) return undefined;
  let bareMonth = settledMonth;
  while (routine.by !== "nothing" && !isDate(routine, bareMonth)) bareMonth += 1;
  const firstYear = Math.floor(bareMonth / 12) + (routine.by === "nothing" ? 2 : 1);
  const years = routine.by === "interval" ? Math.max(1, routine.months / 12) : 1;
  return (firstYear + years) * 12 < density.length ? { bareMonth, firstYear, years } : undefined;
}

function isDate(routine: Routine, month: number): boolean {
  switch (routine.by) {
    case "nothing":
    case "trigger":
      return false;
    case "interval":
      return (month + 1) % routine.months === 0;
    case "month-of-year":
      return month % 12 === routine.month;
  }
}

function repeated({ years, thickestByYear }: Followed, cycle: number, horizon: number): Followed {
  const source = (year: number) =>
    year < years.length ? year : years.length - cycle + ((year - years.length) % cycle);
  const all = Array.from({ length: horizon }, (_, year) => source(year));
  return {
    years: all.map((year) => at(years, year)),
    thickestByYear: all.map((year) => at(thickestByYear, year)),
  };
}

function followMonths(plan: Plan, part: SurfacePart, months: number) {
  const { component, context, surface } = part;
  const foundFrom = context.assumed("protection.start-density");
  const isFound = (month: number) => at(context.density, month) >= foundFrom;
  const factor = plan.protection?.settlementFactor ?? 1;
  const grow = () => {
    const { cleanedMonths, cleanAfter } = cleaningDates(plan, part);
    const density = context.density
      .slice(0, months)
      .map((share, month) => (isFound(month) ? share * factor : share));
    return { layers: growLayers({ surface, density, cleanAfter }, context.growth), cleanedMonths };
  };
  const { routine } = plan;
  const { layers, cleanedMonths } =
    routine.by === "trigger"
      ? grow()
      : grownOnce(surface, `${months} months, ${routineName(routine)}, settlers × ${factor}`, grow);
  const forced = forcedCleaning(component, context);
  const firstUse = Math.min(...cleanedMonths);
  const isInPlace = (month: number) => isFound(month) || month >= firstUse;
  const isScreened = plan.entry.measure === "filter";
  const upstream = (month: number) => at(context.density, month) / context.matureDensity;
  const addLines = (lines: Priced[], month: number): void => {
    const layer = layers[month] ?? noElement(layers, month);
    const monthOfYear = month % 12;
    if (layer.mass > 0 || component.isFed) {
      append(
        lines,
        component.losses(layer, monthOfYear, isInPlace(month) && isScreened ? 0 : upstream(month)),
      );
    }
    if (layer.mass > 0) {
      append(lines, forced.lines(component.limit(layer, monthOfYear), monthOfYear));
    }
    if (layer.killed > 0) append(lines, shellLines(layer, component, context));
    if (plan.protection && isInPlace(month)) append(lines, at(plan.protection.monthly, monthOfYear));
    if (!cleanedMonths.has(month)) return;
    append(lines, workLines(plan.entry, component, context, monthOfYear));
    append(lines, removalLines(plan, layer, component, context));
  };
  const yearLines = (start: number) => {
    const lines: Priced[] = [];
    for (let month = start; month < start + 12; month++) addLines(lines, month);
    return mergeLines(lines);
  };
  const yearsOf = Array.from({ length: months / 12 }, (_, year) => year * 12);
  return {
    cleanedMonths,
    layers,
    followed: {
      years: yearsOf.map(yearLines),
      thickestByYear: yearsOf.map((start) => thickest(layers, start, start + 12)),
    },
  };
}

function append(lines: Priced[], more: readonly Priced[]): void {
  for (const line of more) lines.push(line);
}

function routineName(routine: Exclude<Routine, { by: "trigger" }>): string {
  switch (routine.by) {
    case "nothing":
      return "untouched";
    case "interval":
      return `cleaned every ${routine.months}`;
    case "month-of-year":
      return `cleaned in month ${routine.month}`;
  }
}

function cleaningDates({ routine }: Plan, { component, context }: PartYear) {
  const cleanedMonths = new Set<number>();
  const smallest = context.assumed("cleaning.smallest-layer");
  const isNear = routine.by === "trigger" ? nearLimit(routine, component, context) : () => false;
  const cleanAfter = (month: number, layer: Layer): boolean => {
    const isWorth = cleanedMonths.size > 0 || layer.thickness >= smallest;
    const isCleaned = (isDate(routine, month) && isWorth) || isNear(layer, month % 12);
    if (isCleaned) cleanedMonths.add(month);
    return isCleaned;
  };
  return { cleanedMonths, cleanAfter };
}

/**
 * Adds up lines of the same name, with the assumptions of all of them; the merged unit rate is the mean weighted by
 * quantity.
 */
export function mergeLines(lines: readonly Priced[]): Priced[] {
  const sums = new Map<
    string,
    { line: Priced; ids: readonly AssumptionId[]; quantity: number; cost: number }
  >();
  for (const line of lines) {
    if (line.quantity === 0) continue;
    const cost = line.quantity * line.unitRate;
    const known = sums.get(line.what);
    if (known) {
      known.quantity += line.quantity;
      known.cost += cost;
      known.ids = withIds(known.ids, line.assumptionIds);
    } else {
      sums.set(line.what, { line, ids: line.assumptionIds, quantity: line.quantity, cost });
    }
  }
  return [...sums.values()].map(({ line: { what, type, quantityKind }, ids, quantity, cost }) => ({
    what,
    type,
    quantity,
    quantityKind,
    unitRate: cost / quantity,
    assumptionIds: ids,
  }));
}

/** The same list where it holds all of the others already. */
function withIds(ids: readonly AssumptionId[], others: readonly AssumptionId[]): readonly AssumptionId[] {
  if (ids === others || others.every((id) => ids.includes(id))) return ids;
  return [...new Set([...ids, ...others])];
}
