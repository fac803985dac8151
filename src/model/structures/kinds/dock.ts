import { counted } from "../../../counted.js";
import { lastMade } from "../../computed-once.js";
import { type Checked, entryOf } from "../../entries/checked.js";
import { type EntryCheck, usual, usuallyAtMost, within } from "../../entries/entry-check.js";
import { usualRanges } from "../../entries/usual-ranges.js";
import { bottomCheck } from "../../entries/water-entries.js";
import { months } from "../../lake/calendar.js";
import type { Place } from "../../mussels/surface.js";
import { cleaningOf } from "../cleaning.js";
import type { Charge, Component, Limit } from "../component.js";
import type { LakeContext } from "../context.js";
import type { StructureBase } from "../inputs.js";
import { noLimit } from "../limits.js";
import { type Lowering, type Reach, type StructureKind, sized } from "../structure-kind.js";

export interface Dock extends StructureBase {
  readonly kind: "dock";
  readonly count: number;
  readonly floating: boolean;
  /** Depth of the wetted surface below the water if floating, else its elevation. */
  readonly depth?: number | undefined;
  readonly elevation?: number | undefined;
  readonly wettedArea: number;
  readonly spareBuoyancy?: number | undefined;
  readonly replacementCost: number;
}

/**
 * Docks, buoys, booms and hulls: wetted area, weight against buoyancy (x = σ M/B), cleaning, and early replacement, in a
 * month W = n w R min(1, M/M0)/12.
 */
export function dockComponents(dock: Dock, context: LakeContext): Component[] {
  const area = dock.wettedArea * dock.count;
  return [
    {
      name: "wetted surface",
      kind: "hull",
      designFlow: 0,
      count: dock.count,
      surface: { place: placeOf(dock), velocity: months.map(() => 0) },
      wettedArea: area,
      cleaning: cleaningOf("hull", area, context),
      losses: wearOf(dock, context),
      limit: weightLimit(dock, context),
    },
  ];
}

function placeOf(dock: Dock): Place {
  return dock.floating
    ? { at: "floating", depth: dock.depth ?? 0 }
    : { at: "elevation", elevation: dock.elevation ?? 0 };
}

/**
 * A month of shorter life: the yearly share of the replacement cost, in proportion to the mass carried. Most months carry
 * all that counts, and share a charge.
 */
function wearOf(dock: Dock, { assumed }: LakeContext): Component["losses"] {
  const assumptionIds = ["dock.extra-wear", "dock.wear-mass"] as const;
  const extraWear = assumed("dock.extra-wear");
  const wearMass = assumed("dock.wear-mass");
  const chargeAt = lastMade(
    (unitRate: number): Charge => ({
      what: "early replacement",
      type: "loss",
      quantityKind: "each",
      unitRate,
      assumptionIds,
    }),
  );
  return (tell, layer) =>
    tell(chargeAt(extraWear * Math.min(1, layer.mass / wearMass) * dock.replacementCost), dock.count / 12);
}

/** Submerged weight of the layer against the buoyancy to spare, both as mass per area. */
function weightLimit(dock: Dock, { assumed }: LakeContext): Component["limit"] {
  const { spareBuoyancy, floating } = dock;
  if (spareBuoyancy === undefined || !floating) return noLimit;
  const submergedShare = assumed(submergedId);
  return (meet, layer) => meet(tooHeavy, layer.mass * submergedShare, spareBuoyancy);
}

const submergedId = "dock.submerged-share";
const tooHeavy: Limit = { broken: "weight above the buoyancy to spare", assumptionIds: [submergedId] };

/** Size, price and depth of a dock. */
function dockEntries(checked: Checked<Dock>): EntryCheck[] {
  const { structure: dock, assumed } = checked;
  const area = entryOf(checked, ["wettedArea"], {
    what: "wetted area of one",
    measure: "area",
    found: dock.wettedArea,
    remedy: "Look again at the area and its unit; it is that of one of them.",
  });
  const price = entryOf(checked, ["replacementCost"], {
    what: "replacement cost of one over its wetted area",
    measure: "moneyPerArea",
    found: dock.replacementCost / dock.wettedArea,
    remedy: "Look again at the area and the cost; both are those of one of them.",
  });
  const depth = entryOf(checked, ["depth"], {
    what: "depth of its wetted surface",
    measure: "length",
    found: dock.depth ?? 0,
    remedy: "Look again at the depth and its unit.",
  });
  return [
    usual(area, usualRanges.dockArea, assumed),
    ...(dock.replacementCost > 0 ? [usual(price, usualRanges.dockPrice, assumed)] : []),
    ...(dock.floating ? [usuallyAtMost(depth, usualRanges.dockDepth, assumed)] : fixedDockEntries(checked)),
  ];
}

/** A fixed surface that is never under water fouls never: as a rule the elevation is that of a deck. */
function fixedDockEntries(checked: Checked<Dock>): EntryCheck[] {
  const { elevation } = checked.structure;
  if (elevation === undefined) return [];
  const entry = entryOf(checked, ["elevation"], {
    what: "water over its wetted surface at the highest level",
    measure: "length",
    found: checked.water.highest - elevation,
    remedy: "Give the elevation of the surface that is under water, not of the deck.",
  });
  return [within(entry, { low: 0 }), bottomCheck(checked, elevation)];
}

function reachOf({ floating, elevation }: Dock): Reach {
  return floating || elevation === undefined
    ? { floats: true }
    : { floats: false, low: elevation, high: elevation };
}

const lowered = (dock: Dock, { fall }: Lowering): Dock =>
  dock.floating
    ? { ...dock, depth: (dock.depth ?? 0) + fall }
    : { ...dock, elevation: (dock.elevation ?? 0) - fall };

export const dock: StructureKind<Dock> = {
  kind: "dock",
  title: "Dock",
  name: "dock",
  commonFields: ["depth", "elevation", "spareBuoyancy"],
  isBuilt: true,
  hasPublishedCosts: false,
  lowestField: "elevation",
  reach: reachOf,
  size: ({ count, wettedArea }) => [
    `${counted(count, "piece")}, `,
    sized(wettedArea, "area"),
    " wetted each",
  ],
  components: dockComponents,
  entries: dockEntries,
  lowered,
};
