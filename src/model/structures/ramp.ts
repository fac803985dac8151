import type { Ramp } from "../inputs.js";
import { at, daysInYear, daysOf, months } from "../lake/calendar.js";
import { growingSurface, growLayers, type Layer } from "../mussels/layer.js";
import type { Priced } from "./component.js";
import type { LakeContext } from "./context.js";
import { disposal } from "./upkeep.js";

/** Bands of elevation into which a ramp is cut, each with its own water and its own dry run. */
const bands = 5;

export interface LitterYear {
  /** Mass of dead shell that came to lie on the ramp, kg. */
  readonly mass: number;
  /** Its thickness if spread over the ground laid bare, m. */
  readonly thickness: number;
  readonly area: number;
}

/**
 * Dead shell left on a launch ramp or beach by each year's drawdown: what drying and frost kill on the ramp and
 * on the ground that washes onto it, shells only.
 */
export function litterByYear(ramp: Ramp, context: LakeContext): LitterYear[] {
  const step = (ramp.topElevation - ramp.bottomElevation) / bands;
  const bandArea = ramp.width * step * Math.sqrt(1 + ramp.slope ** -2);
  const kept = context.assumed("shell.shell-share") * context.assumed("ramp.gathering");
  const layers = Array.from({ length: bands }, (_, band) =>
    bandLayers(ramp.bottomElevation + step * (band + 1 / 2), context),
  );
  return Array.from({ length: context.density.length / 12 }, (_, year) => {
    const killed = layers.map((band) => yearlyKill(band, year)).filter((kill) => kill > 0);
    const mass = killed.reduce((sum, kill) => sum + kill * bandArea * kept, 0);
    const area = killed.length * bandArea;
    return { mass, area, thickness: area > 0 ? mass / area / context.assumed("ramp.shell-density") : 0 };
  });
}

function bandLayers(elevation: number, context: LakeContext): Layer[] {
  const surface = context.months({
    place: { at: "elevation", elevation },
    velocity: months.map(() => 0),
    settlementFactor: 1,
  });
  return growLayers(
    { surface: growingSurface(surface, context.growth), density: context.density, cleanAfter: () => false },
    context.growth,
  );
}

function yearlyKill(layers: readonly Layer[], year: number): number {
  return layers.slice(year * 12, year * 12 + 12).reduce((sum, layer) => sum + layer.killed, 0);
}

const litterIds = ["shell.shell-share", "ramp.gathering", "ramp.shell-density", "ramp.litter-tolerance"];

/** Sweeping as often as the litter reaches the tolerated thickness, with disposal and closure. */
export function rampYears(ramp: Ramp, litter: readonly LitterYear[], context: LakeContext): Priced[][] {
  return litter.map(({ mass, area, thickness }) => {
    const sweeps = Math.floor(thickness / context.assumed("ramp.litter-tolerance"));
    if (sweeps === 0) return [];
    return [
      {
        what: "sweeping",
        type: "work",
        quantity: area * sweeps,
        quantityKind: "area",
        unitRate: context.assumed("ramp.sweeping-rate"),
        assumptionIds: [...litterIds, "ramp.sweeping-rate"],
      },
      disposal(mass, context),
      closure(ramp, sweeps, context),
    ].filter((line): line is Priced => line.quantity > 0 && line.unitRate > 0);
  });
}

function closure(ramp: Ramp, sweeps: number, context: LakeContext): Priced {
  const launches =
    months.reduce((sum, month) => sum + at(ramp.launchesPerDay, month) * daysOf(month), 0) / daysInYear;
  return {
    what: "launch fees lost while closed",
    type: "loss",
    quantity: sweeps * context.assumed("ramp.closure-days"),
    quantityKind: "days",
    unitRate: launches * ramp.launchFee,
    assumptionIds: ["ramp.closure-days", "ramp.litter-tolerance"],
  };
}
