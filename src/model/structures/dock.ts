import type { Dock } from "../inputs.js";
import { months } from "../lake/calendar.js";
import type { Layer } from "../mussels/layer.js";
import type { Place } from "../mussels/surface.js";
import { cleaningOf } from "./cleaning.js";
import type { Component, Priced } from "./component.js";
import type { LakeContext } from "./context.js";

/** Docks, buoys, booms and hulls: wetted area, weight against buoyancy, cleaning, early replacement. */
export function dockComponents(dock: Dock, context: LakeContext): Component[] {
  const area = dock.wettedArea * dock.count;
  return [
    {
      name: "wetted hull",
      kind: "hull",
      designFlow: 0,
      count: dock.count,
      surface: { place: placeOf(dock), velocity: months.map(() => 0) },
      wettedArea: area,
      cleaning: cleaningOf("hull", area, context),
      losses: (layer) => [wear(dock, layer, context)],
      brokenLimit: (layer) => tooHeavy(dock, layer, context),
    },
  ];
}

function placeOf(dock: Dock): Place {
  return dock.floating
    ? { at: "floating", depth: dock.depth ?? 0 }
    : { at: "elevation", elevation: dock.elevation ?? 0 };
}

/** A month of shorter life: the yearly share of the replacement cost, in proportion to the mass carried. */
function wear(dock: Dock, layer: Layer, context: LakeContext): Priced {
  const ids = ["dock.extra-wear", "dock.wear-mass"];
  const yearly =
    context.assumed("dock.extra-wear") * Math.min(1, layer.mass / context.assumed("dock.wear-mass"));
  return {
    what: "early replacement",
    type: "loss",
    quantity: dock.count / 12,
    quantityKind: "each",
    unitRate: yearly * dock.replacementCost,
    assumptionIds: ids,
  };
}

/** Submerged weight of the layer against the buoyancy to spare, both as mass per area. */
function tooHeavy(dock: Dock, layer: Layer, context: LakeContext): string | undefined {
  if (dock.spareBuoyancy === undefined || !dock.floating) return undefined;
  const submerged = layer.mass * context.assumed("dock.submerged-share");
  return submerged > dock.spareBuoyancy ? "weight above the buoyancy to spare" : undefined;
}
