import { at, sumOf } from "../../lists.js";
import { type ByMonth, daysInYear, daysOf, months } from "../lake/calendar.js";
import type { Priced } from "./component.js";
import type { Contexts, LakeContext } from "./context.js";
import { disposalIds } from "./disposal-rate.js";
import { disposal } from "./plan-work.js";

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
 * on the ground that washes onto it, shells only, M = K b √(1 + m^(−2)) σ g; the mean over the possible operating years.
 * Spread over the ground on which anything was killed it is t = M/(F ρ) thick.
 */
export function litterByYear(ramp: SweptRamp, contexts: Contexts): LitterYear[] {
  const byContext = contexts.map((context) => litterIn(ramp, context));
  const first = at(byContext, 0);
  if (contexts.length === 1) return first;
  const meanOf = (year: number, read: (litter: LitterYear) => number) =>
    sumOf(byContext.map((litter) => read(at(litter, year)))) / contexts.length;
  return first.map((_, year) => ({
    mass: meanOf(year, ({ mass }) => mass),
    area: meanOf(year, ({ area }) => area),
    thickness: meanOf(year, ({ thickness }) => thickness),
  }));
}

function litterIn(ramp: SweptRamp, context: LakeContext): LitterYear[] {
  const groundPerHeight = ramp.width * Math.sqrt(1 + ramp.slope ** -2);
  const kept = context.assumed("shell.shell-share") * context.assumed("ramp.gathering");
  const shellDensity = context.assumed("ramp.shell-density");
  const { killed, height } = context.killedBetween({ from: ramp.bottomElevation, to: ramp.topElevation });
  const litter: LitterYear[] = [];
  for (let year = 0; year < killed.length; year++) {
    const before = litter[year - 1];
    const mass = at(killed, year) * groundPerHeight * kept;
    const area = at(height, year) * groundPerHeight;
    const isRepeated = before !== undefined && before.mass === mass && before.area === area;
    litter.push(isRepeated ? before : { mass, area, thickness: area > 0 ? mass / area / shellDensity : 0 });
  }
  return litter;
}

const litterIds = [
  "shell.shell-share",
  "ramp.gathering",
  "ramp.shell-density",
  "ramp.litter-tolerance",
] as const;
const sweepingIds = [...litterIds, "ramp.sweeping-rate"] as const;
const disposedIds = [...litterIds, ...disposalIds];
const closureIds = [...litterIds, "ramp.closure-days"] as const;

/**
 * Sweeping each time that what lies on the ramp has reached the tolerated thickness, with disposal and closure:
 * s = ⌊(ℓ + t)/t0⌋, at C = s (F r + F ρ t0 (c + p) + d f N). What then still lies there, ℓ + t − s t0, is carried over to
 * the next year.
 */
export function rampYears(
  ramp: SweptRamp,
  litter: readonly LitterYear[],
  context: LakeContext,
): readonly (readonly Priced[])[] {
  const tolerated = context.assumed("ramp.litter-tolerance");
  const known: { year: LitterYear; sweeps: number; lines: readonly Priced[] }[] = [];
  let left = 0;
  return litter.map((year) => {
    const lying = left + year.thickness;
    const sweeps = Math.floor(lying / tolerated);
    left = lying - sweeps * tolerated;
    const same = known.find((each) => each.year === year && each.sweeps === sweeps);
    if (same) return same.lines;
    const lines = sweepLines(ramp, year, sweeps, context);
    known.push({ year, sweeps, lines });
    return lines;
  });
}

function sweepLines(
  ramp: SweptRamp,
  { mass, area, thickness }: LitterYear,
  sweeps: number,
  context: LakeContext,
): Priced[] {
  if (sweeps === 0) return [];
  const sweeping: Priced = {
    what: "sweeping",
    type: "work",
    quantity: area * sweeps,
    quantityKind: "area",
    unitRate: context.assumed("ramp.sweeping-rate"),
    assumptionIds: sweepingIds,
  };
  const swept = (mass / thickness) * sweeps * context.assumed("ramp.litter-tolerance");
  return [sweeping, disposal(swept, context, disposedIds), closure(ramp, sweeps, context)].filter(
    (line) => line.quantity > 0 && line.unitRate > 0,
  );
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
    assumptionIds: closureIds,
  };
}
