import { months } from "../lake/calendar.js";
import type { Place } from "../mussels/surface.js";
import { cleaningOf } from "./cleaning.js";
import type { Component } from "./component.js";
import type { LakeContext } from "./context.js";
import type { Dock } from "./inputs.js";

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
      losses: wearOf(dock, context),
      brokenLimit: weightLimit(dock, context),
    },
  ];
}

function placeOf(dock: Dock): Place {
  return dock.floating
    ? { at: "floating", depth: dock.depth ?? 0 }
    : { at: "elevation", elevation: dock.elevation ?? 0 };
}

/** A month of shorter life: the yearly share of the replacement cost, in proportion to the mass carried. */
function wearOf(dock: Dock, { assumed }: LakeContext): Component["losses"] {
  const assumptionIds = ["dock.extra-wear", "dock.wear-mass"] as const;
  const extraWear = assumed("dock.extra-wear");
  const wearMass = assumed("dock.wear-mass");
  return (layer) => [
    {
      what: "early replacement",
      type: "loss",
      quantity: dock.count / 12,
      quantityKind: "each",
      unitRate: extraWear * Math.min(1, layer.mass / wearMass) * dock.replacementCost,
      assumptionIds,
    },
  ];
}

/** Submerged weight of the layer against the buoyancy to spare, both as mass per area. */
function weightLimit(dock: Dock, { assumed }: LakeContext): Component["brokenLimit"] {
  const { spareBuoyancy, floating } = dock;
  if (spareBuoyancy === undefined || !floating) return () => undefined;
  const submergedShare = assumed("dock.submerged-share");
  return (layer) =>
    layer.mass * submergedShare > spareBuoyancy ? "weight above the buoyancy to spare" : undefined;
}
