import { at } from "../../lists.js";
import { months } from "../lake/calendar.js";
import type { StructureBase } from "../structures/inputs.js";
import type { Inlet } from "../structures/structure-kind.js";
import { type Checked, entryOf } from "./checked.js";
import { type EntryCheck, within } from "./entry-check.js";

/** How deep an inlet stands under the lowest water of the months in which it takes any, and over the lake's bottom. */
export function inletEntries(checked: Checked<StructureBase>, inlet: Inlet): EntryCheck[] {
  const { water } = checked;
  const depths = months
    .filter((month) => at(inlet.flow, month) > 0)
    .map((month) => at(water.lowestByMonth, month) - inlet.elevation);
  const entry = entryOf(checked, ["elevation"], {
    what: "water over it on the lowest day of a month with flow",
    measure: "length",
    found: Math.min(...depths),
    remedy:
      "Above the water it takes none: look again at its elevation, at the lake's levels and at their units, or enter no flow for the months in which it rests.",
  });
  return [...(depths.length > 0 ? [within(entry, { low: 0 })] : []), bottomCheck(checked, inlet.elevation)];
}

/** Nothing takes water in below the lowest row of the storage table, as a rule the bottom. */
export function bottomCheck(checked: Checked<StructureBase>, elevation: number): EntryCheck {
  const { contexts } = checked;
  const rows = contexts[0].lake.storageTable.map((row) => row.elevation);
  const entry = entryOf(checked, ["elevation"], {
    what: "height over the lowest row of the storage table",
    measure: "length",
    found: elevation - Math.min(...rows),
    remedy: "Look again at its elevation and its unit, or begin the table at the bottom of the lake.",
  });
  return within(entry, { low: 0 });
}
