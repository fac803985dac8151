import type { Dock, Ramp } from "../structures/inputs.js";
import { type Checked, entryOf } from "./checked.js";
import { type EntryCheck, usual, usuallyAtMost } from "./entry-check.js";
import { usualRanges } from "./usual-ranges.js";
import { fixedDockEntries, rampLevelEntries } from "./water-entries.js";

/** Size, price and depth of a dock. */
export function dockEntries(checked: Checked<Dock>): EntryCheck[] {
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

export function rampEntries(checked: Checked<Ramp>): EntryCheck[] {
  const { structure: ramp, assumed } = checked;
  const slope = entryOf(checked, ["slope"], {
    what: "slope",
    measure: "share",
    found: ramp.slope,
    remedy: "Look again at the slope: rise over run.",
  });
  const width = entryOf(checked, ["width"], {
    what: "width",
    measure: "length",
    found: ramp.width,
    remedy: "Look again at the width and its unit.",
  });
  return [
    usual(slope, usualRanges.rampSlope, assumed),
    usual(width, usualRanges.rampWidth, assumed),
    ...rampLevelEntries(checked),
  ];
}
