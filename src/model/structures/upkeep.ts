import { at } from "../lake/calendar.js";
import {
  bareSurface,
  type GrowingSurface,
  growingSurface,
  growLayers,
  type Layer,
} from "../mussels/layer.js";
import type { Component, ComponentResult, Priced, TriedPlan } from "./component.js";
import type { LakeContext } from "./context.js";
import { candidatePlans, type Plan } from "./plan.js";

/**
 * A surface that nobody touches swings for years between crowding and new settlement before it settles: it is
 * costed, and held to its limits, over seven years after a run-up of three.
 */
const untouched = { runUpMonths: 36, cycleMonths: 84 };

/**
 * Chooses the cheapest plan that keeps the component's limits in a mature infestation, then works out its lines
 * for every year since establishment. If no plan keeps the limits, the one that cleans most often is taken and
 * its broken limit is kept for the reader.
 */
export function keepInService(component: Component, context: LakeContext): ComponentResult {
  const months = surfacesOf(component, context);
  const tried = candidatePlans(component, context).map((plan) => tryPlan(plan, component, context, months));
  const chosen = cheapest(tried);
  const { layers, years } = runPlan(chosen.plan, component, context, {
    months,
    density: context.density,
    inRoutine: false,
    countedFrom: 0,
  });
  return {
    name: component.name,
    chosen,
    tried,
    thickestLayer: thickest(layers),
    untouchedLayer: tried.find(({ plan }) => plan.method === "leave")?.thickestLayer ?? bareSurface,
    years: years.map(mergeLines),
    thicknessByYear: years.map((_, year) => thickest(layers.slice(year * 12, year * 12 + 12)).thickness),
  };
}

function surfacesOf({ surface, oxidant }: Component, context: LakeContext): SurfacePair {
  const growing = (settlementFactor: number) =>
    growingSurface(context.months({ ...surface, settlementFactor }), context.growth);
  const plain = growing(surface.settlementFactor);
  return { plain, treated: oxidant ? growing(surface.settlementFactor * oxidant.settlementFactor) : plain };
}

/** The least yearly cost among plans that keep the limits; the first listed wins a tie. Else the busiest plan. */
export function cheapest(tried: readonly TriedPlan[]): TriedPlan {
  const keeping = tried.filter((each) => each.brokenLimit === undefined);
  if (keeping.length === 0) return at(tried, tried.length - 1);
  return keeping.reduce((best, each) => (each.yearlyCost < best.yearlyCost ? each : best));
}

interface SurfacePair {
  readonly plain: GrowingSurface;
  readonly treated: GrowingSurface;
}

/** Cost of a plan in a mature infestation: one cycle of it after the run-up that makes it repeat. */
function tryPlan(plan: Plan, component: Component, context: LakeContext, months: SurfacePair): TriedPlan {
  const { runUpMonths, cycleMonths } = cycleOf(plan);
  const density = Array<number>(runUpMonths + cycleMonths).fill(context.matureDensity);
  const run = runPlan(plan, component, context, {
    months,
    density,
    inRoutine: true,
    countedFrom: runUpMonths,
  });
  const costOf = (lines: readonly Priced[]) =>
    lines.reduce((sum, line) => sum + line.quantity * line.unitRate, 0);
  const cost = run.years.reduce((sum, lines) => sum + costOf(lines), 0);
  return {
    plan,
    yearlyCost: (cost / cycleMonths) * 12,
    brokenLimit: run.brokenLimits.at(-1),
    thickestLayer: thickest(run.layers.slice(runUpMonths)),
  };
}

function cycleOf(plan: Plan): { runUpMonths: number; cycleMonths: number } {
  if (plan.method === "leave") return untouched;
  const cycleMonths = Math.max(12, plan.intervalMonths ?? 12);
  return { runUpMonths: plan.method === "dry" ? 12 : 0, cycleMonths };
}

interface PlanRun {
  readonly layers: readonly Layer[];
  readonly years: readonly (readonly Priced[])[];
  readonly brokenLimits: readonly string[];
}

/**
 * Follows a plan month by month.
 * @param input.inRoutine true if cleaning is a routine from the first date on
 * @param input.countedFrom first month whose lines and limits count
 */
function runPlan(
  plan: Plan,
  component: Component,
  context: LakeContext,
  input: { months: SurfacePair; density: readonly number[]; inRoutine: boolean; countedFrom: number },
): PlanRun {
  const surface = plan.method === "oxidant" ? input.months.treated : input.months.plain;
  const routine = cleaningRoutine(plan, context.assumed("cleaning.smallest-layer"), input.inRoutine);
  const layers = growLayers(
    { surface, density: input.density, cleanAfter: routine.isCleaned },
    context.growth,
  );
  const years: Priced[][] = [];
  const brokenLimits: string[] = [];
  for (let month = input.countedFrom; month < layers.length; month++) {
    const layer = at(layers, month);
    const cleaned = routine.cleanedMonths.has(month);
    const density = at(input.density, month);
    const lines = monthLines(plan, component, context, { layer, month, density, cleaned });
    const known = years[Math.floor((month - input.countedFrom) / 12)];
    if (known) known.push(...lines);
    else years.push(lines);
    const broken = layer.mass > 0 ? component.brokenLimit(layer, month % 12) : undefined;
    if (broken !== undefined) brokenLimits.push(broken);
  }
  return { layers, years, brokenLimits };
}

/**
 * Cleaning starts on the first date at which there is a layer worth a visit; from then on every date is kept,
 * as a routine.
 */
function cleaningRoutine(plan: Plan, smallestLayer: number, inRoutine: boolean) {
  const cleanedMonths = new Set<number>();
  const isCleaned = (month: number, layer: Layer) => {
    const started = inRoutine || cleanedMonths.size > 0 || layer.thickness >= smallestLayer;
    const cleaned = plan.isCleaningDate(month) && started;
    if (cleaned) cleanedMonths.add(month);
    return cleaned;
  };
  return { isCleaned, cleanedMonths };
}

function monthLines(
  plan: Plan,
  component: Component,
  context: LakeContext,
  state: { layer: Layer; month: number; density: number; cleaned: boolean },
): Priced[] {
  const monthOfYear = state.month % 12;
  const lines = state.layer.mass > 0 ? [...component.losses(state.layer, monthOfYear)] : [];
  if (plan.method === "oxidant" && component.oxidant && isDosed(context, state.month, state.density)) {
    lines.push(component.oxidant.monthly(monthOfYear));
  }
  if (state.cleaned && plan.method !== "oxidant") {
    lines.push(...component.cleaning.work(plan.method, monthOfYear));
    lines.push(disposal(state.layer.mass * component.wettedArea, context));
  }
  if (state.layer.killed > 0) {
    const shells = state.layer.killed * context.assumed("shell.shell-share");
    lines.push(disposal(shells * component.wettedArea, context));
  }
  return lines;
}

/** Oxidant is dosed in months in which larvae settle, once there are mussels enough in the lake to be found. */
function isDosed(context: LakeContext, month: number, density: number): boolean {
  const spawning = context.assumed(`settlement.spawning-temperature.${context.lake.species}`);
  const warm = at(context.lake.surfaceTemperature, month % 12) >= spawning;
  return warm && density >= context.assumed("oxidant.start-density");
}

/** Removing and dumping what was scraped off. */
export function disposal(mass: number, context: LakeContext): Priced {
  const ids = ["disposal.tipping-fee", "disposal.haulage"];
  return {
    what: "disposal of shells and mussels",
    type: "work",
    quantity: mass,
    quantityKind: "mass",
    unitRate: ids.reduce((sum, id) => sum + context.assumed(id), 0),
    assumptionIds: ids,
  };
}

/** Adds up lines of the same name; the merged unit rate is the mean weighted by quantity. */
export function mergeLines(lines: readonly Priced[]): Priced[] {
  const sums = new Map<string, { line: Priced; quantity: number; cost: number }>();
  for (const line of lines) {
    if (line.quantity === 0) continue;
    const cost = line.quantity * line.unitRate;
    const known = sums.get(line.what);
    if (known) {
      known.quantity += line.quantity;
      known.cost += cost;
    } else {
      sums.set(line.what, { line, quantity: line.quantity, cost });
    }
  }
  return [...sums.values()].map(({ line, quantity, cost }) => ({
    ...line,
    quantity,
    unitRate: cost / quantity,
  }));
}

function thickest(layers: readonly Layer[]): Layer {
  return layers.reduce((best, layer) => (layer.thickness > best.thickness ? layer : best), bareSurface);
}
