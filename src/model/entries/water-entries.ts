import { months } from "../lake/calendar.js";
import { at } from "../lists.js";
import type { Dock, Hydropower, Intake, Ramp, ServiceLine } from "../structures/inputs.js";
import { type Checked, entryOf } from "./checked.js";
import { type EntryCheck, within } from "./entry-check.js";

/** Kinds that take water in at an elevation. */
export type Inlet = Intake | Hydropower | ServiceLine;

/** Flow of each month; a line needs its water in all of them. */
const flowIn = (inlet: Inlet, month: number): number => {
  if (inlet.kind === "service-line") return inlet.requiredFlow;
  return at(inlet.kind === "intake" ? inlet.demand : inlet.flow, month);
};

/** How deep an inlet stands under the lowest water of the months in which it takes any, and over the lake's bottom. */
export function inletEntries(checked: Checked<Inlet>): EntryCheck[] {
  const { structure: inlet, water } = checked;
  const depths = months
    .filter((month) => flowIn(inlet, month) > 0)
    .map((month) => at(water.lowestByMonth, month) - inlet.elevation);
  const entry = entryOf(checked, ["elevation"], {
    what: "water over it on the lowest day of a month with flow",
    measure: "length",
    found: Math.min(...depths),
    remedy: "Look again at its elevation and the lake's levels, and at their units.",
  });
  return [...(depths.length > 0 ? [within(entry, { low: 0 })] : []), bottomCheck(checked)];
}

/** Nothing takes water in below the lowest row of the storage table, as a rule the bottom. */
function bottomCheck(checked: Checked<Inlet | (Dock & { readonly elevation: number })>): EntryCheck {
  const { structure, contexts } = checked;
  const rows = contexts[0].lake.storageTable.map(({ elevation }) => elevation);
  const entry = entryOf(checked, ["elevation"], {
    what: "height over the lowest row of the storage table",
    measure: "length",
    found: structure.elevation - Math.min(...rows),
    remedy: "Look again at its elevation and its unit, or begin the table at the bottom of the lake.",
  });
  return within(entry, { low: 0 });
}

/** A fixed surface that is never under water fouls never: as a rule the elevation is that of a deck. */
export function fixedDockEntries(checked: Checked<Dock>): EntryCheck[] {
  const { elevation } = checked.structure;
  if (elevation === undefined) return [];
  const entry = entryOf(checked, ["elevation"], {
    what: "water over its wetted surface at the highest level",
    measure: "length",
    found: checked.water.highest - elevation,
    remedy: "Give the elevation of the surface that is under water, not of the deck.",
  });
  return [
    within(entry, { low: 0 }),
    bottomCheck({ ...checked, structure: { ...checked.structure, elevation } }),
  ];
}

/** Boats are launched where the water's edge lies on the ramp. */
export function rampLevelEntries(checked: Checked<Ramp>): EntryCheck[] {
  const { bottomElevation, topElevation } = checked.structure;
  const { highest, lowestByMonth } = checked.water;
  const bottom = entryOf(checked, ["bottomElevation"], {
    what: "water over its bottom at the highest level",
    measure: "length",
    found: highest - bottomElevation,
    remedy: "Look again at its elevations and the lake's levels, and at their units.",
  });
  const top = entryOf(checked, ["topElevation"], {
    what: "height of its top over the lowest level",
    measure: "length",
    found: topElevation - Math.min(...lowestByMonth),
    remedy: "Look again at its elevations and the lake's levels, and at their units.",
  });
  return [within(bottom, { low: 0 }), within(top, { low: 0 })];
}
