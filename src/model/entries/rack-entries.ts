import type { Rack, StructureBase } from "../structures/inputs.js";
import { rackVelocity } from "../structures/rack.js";
import { type Checked, entryOf } from "./checked.js";
import { type Entry, type EntryCheck, usual, usuallyAtMost } from "./entry-check.js";
import { usualRanges } from "./usual-ranges.js";

/** The clean trash rack at the largest flow, its bars and its limits. */
export function rackEntries(
  checked: Checked<StructureBase>,
  { rack, flow }: { readonly rack: Rack; readonly flow: number },
): EntryCheck[] {
  const { assumed } = checked;
  const entry = (field: string, what: string, rest: Pick<Entry, "measure" | "found" | "remedy">) =>
    entryOf(checked, field === "" ? ["rack"] : ["rack", field], { what: `trash rack: ${what}`, ...rest });
  const through = rackVelocity(rack, 0, flow);
  const velocity = entry("", "velocity between its clean bars, at the largest flow", {
    measure: "speed",
    found: through,
    remedy: "Look again at its width and height, its bars and the flow, and at their units.",
  });
  const limit = entry("velocityLimit", "velocity permitted through it", {
    measure: "speed",
    found: rack.velocityLimit,
    remedy: "Look again at the limit and its unit.",
  });
  const spacing = entry("clearSpacing", "clear opening between its bars", {
    measure: "smallLength",
    found: rack.clearSpacing,
    remedy: "Look again at the opening and its unit.",
  });
  const headLimit = entry("headLossLimit", "head loss at which it is cleaned", {
    measure: "length",
    found: rack.headLossLimit,
    remedy: "Look again at the limit and its unit.",
  });
  return [
    ...(through > 0 ? [usual(velocity, usualRanges.rackVelocity, assumed)] : []),
    usuallyAtMost(limit, usualRanges.rackVelocity, assumed),
    usual(spacing, usualRanges.rackSpacing, assumed),
    usual(headLimit, usualRanges.rackHeadLimit, assumed),
  ];
}
