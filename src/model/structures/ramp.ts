import { at } from "../../lists.js";
import { type ByMonth, daysInYear, daysOf, months } from "../lake/calendar.js";
import { killedByYear } from "../mussels/growth.js";
import type { Priced } from "./component.js";
import type { Contexts, LakeContext } from "./context.js";
import { disposalIds } from "./disposal-rate.js";
import { disposal } from "./plan-work.js";

/** Bands of elevation into which a ramp is cut, each with its own water and its own dry run. */
const bands = 5;

/** A launch ramp or beach that is swept. */
export interface SweptRamp {
  readonly width: number;
  readonly topElevation: number;
  readonly bottomElevation: number;
  /** Rise over run. */
  readonly slope: number;
  readonly launchesPerDay: ByMonth;
  readonly launchFee: number;
}

export interface LitterYear {
  /** Mass of dead shell that came to lie on the ramp, kg. */
  readonly mass: number;
  /** Its thickness if spread over the ground exposed, m. */
  readonly thickness: number;
  readonly area: number;
}

/**
 * Dead shell left on a launch ramp or beach by each year's drawdown: what drying and frost kill on the ramp and
 * on the ground that washes onto it, shells only; the mean over the possible operating years.
 */
export function litterByYear(ramp: SweptRamp, contexts: Contexts): LitterYear[] {
  const [first, ...others] = contexts.map((context) => litterIn(ramp, context));
  if (first === undefined || others.length === 0) return first ?? [];
  const meanOf = (year: number, read: (litter: LitterYear) => number) =>
    others.reduce((sum, litter) => sum + read(at(litter, year)), read(at(first, year))) / contexts.length;
  return first.map((_, year) => ({
    mass: meanOf(year, ({ mass }) => mass),
    area: meanOf(year, ({ area }) => area),
    thickness: meanOf(year, ({ thickness }) => thickness),
  }));
}

function litterIn(ramp: SweptRamp, context: LakeContext): LitterYear[] {
  const step = (ramp.topElevation - ramp.bottomElevation) / bands;
  const bandArea = ramp.width * step * Math.sqrt(1 + ramp.slope ** -2);
  const kept = context.assumed("shell.shell-share") * context.assumed("ramp.gathering");
  const kills = Array.from({ length: bands }, (_, band) =>
    bandKill(ramp.bottomElevation + step * (band + 1 / 2), context),
  );
  const shellDensity = context.assumed("ramp.shell-density");
  const litter: LitterYear[] = [];
  for (let year = 0; year < context.density.length / 12; year++) {
    const before = litter[year - 1];
    let mass = 0;
    let killing = 0;
    for (const band of kills) {
      const kill = at(band, year);
      if (kill > 0) killing += 1;
      mass += kill * bandArea * kept;
    }
    const area = killing * bandArea;
    const isRepeated = before !== undefined && before.mass === mass && before.area === area;
    litter.push(isRepeated ? before : { mass, area, thickness: area > 0 ? mass / area / shellDensity : 0 });
  }
  return litter;
}

function bandKill(elevation: number, context: LakeContext): number[] {
  const surface = context.growing({
    place: { at: "elevation", elevation },
    velocity: months.map(() => 0),
  });
  const { density, settledMonth: settled } = context;
  return killedByYear({ surface, density, settled }, context.growth);
}

const litterIds = [
  "shell.shell-share",
  "ramp.gathering",
  "ramp.shell-density",
  "ramp.litter-tolerance",
] as const;

/**
 * Sweeping as often as the litter reaches the tolerated thickness, with disposal and closure. Years that repeat are the
 * same list.
 */
export function rampYears(
  ramp: SweptRamp,
  litter: readonly LitterYear[],
  context: LakeContext,
): readonly (readonly Priced[])[] {
  const known = new Map<LitterYear, readonly Priced[]>();
  return litter.map((year) => {
    const lines = known.get(year) ?? sweepLines(ramp, year, context);
    known.set(year, lines);
    return lines;
  });
}

function sweepLines(ramp: SweptRamp, { mass, area, thickness }: LitterYear, context: LakeContext): Priced[] {
  const sweeps = Math.floor(thickness / context.assumed("ramp.litter-tolerance"));
  if (sweeps === 0) return [];
  const sweeping: Priced = {
    what: "sweeping",
    type: "work",
    quantity: area * sweeps,
    quantityKind: "area",
    unitRate: context.assumed("ramp.sweeping-rate"),
    assumptionIds: [...litterIds, "ramp.sweeping-rate"],
  };
  return [
    sweeping,
    disposal(mass, context, [...litterIds, ...disposalIds]),
    closure(ramp, sweeps, context),
  ].filter((line) => line.quantity > 0 && line.unitRate > 0);
}

function closure(ramp: SweptRamp, sweeps: number, context: LakeContext): Priced {
  const launches =
    months.reduce((sum, month) => sum + at(ramp.launchesPerDay, month) * daysOf(month), 0) / daysInYear;
  return {
    what: "launch fees lost while closed",
    type: "loss",
    quantity: sweeps * context.assumed("ramp.closure-days"),
    quantityKind: "days",
    unitRate: launches * ramp.launchFee,
    assumptionIds: [...litterIds, "ramp.closure-days"],
  };
}
