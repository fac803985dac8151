import type { RegisteredId } from "../register/register.js";

/** Ids of the ends of each range that entries are held against; a range without a low end is one of too much alone. */
export const usualRanges = {
  conduitVelocity: { low: "checks.usual.conduit-velocity-low", high: "checks.usual.conduit-velocity-high" },
  penstockVelocity: {
    low: "checks.usual.penstock-velocity-low",
    high: "checks.usual.penstock-velocity-high",
  },
  lineVelocity: { low: "checks.usual.line-velocity-low", high: "checks.usual.line-velocity-high" },
  roughness: { low: "checks.usual.roughness-low", high: "checks.usual.roughness-high" },
  headRatio: { high: "checks.usual.head-ratio-high" },
  conduitLoss: { high: "checks.usual.conduit-loss-high" },
  spareHead: { high: "checks.usual.spare-head-high" },
  penstockLoss: { high: "checks.usual.penstock-loss-high" },
  francisHead: { low: "checks.usual.francis-head-low", high: "checks.usual.francis-head-high" },
  kaplanHead: { low: "checks.usual.kaplan-head-low", high: "checks.usual.kaplan-head-high" },
  propellerHead: { low: "checks.usual.propeller-head-low", high: "checks.usual.propeller-head-high" },
  crossflowHead: { low: "checks.usual.crossflow-head-low", high: "checks.usual.crossflow-head-high" },
  peltonHead: { low: "checks.usual.pelton-head-low", high: "checks.usual.pelton-head-high" },
  rackVelocity: { low: "checks.usual.rack-velocity-low", high: "checks.usual.rack-velocity-high" },
  rackSpacing: { low: "checks.usual.rack-spacing-low", high: "checks.usual.rack-spacing-high" },
  rackHeadLimit: { low: "checks.usual.rack-head-limit-low", high: "checks.usual.rack-head-limit-high" },
  rampSlope: { low: "checks.usual.ramp-slope-low", high: "checks.usual.ramp-slope-high" },
  rampWidth: { low: "checks.usual.ramp-width-low", high: "checks.usual.ramp-width-high" },
  dockArea: { low: "checks.usual.dock-area-low", high: "checks.usual.dock-area-high" },
  dockPrice: { low: "checks.usual.dock-price-low", high: "checks.usual.dock-price-high" },
  dockDepth: { high: "checks.usual.dock-depth-high" },
  energyPrice: { low: "checks.usual.energy-price-low", high: "checks.usual.energy-price-high" },
  waterPrice: { low: "checks.usual.water-price-low", high: "checks.usual.water-price-high" },
  irrigationDepth: { low: "checks.usual.irrigation-depth-low", high: "checks.usual.irrigation-depth-high" },
  discountRate: { low: "checks.usual.discount-rate-low", high: "checks.usual.discount-rate-high" },
  launchRatio: { high: "checks.usual.launch-ratio-high" },
} as const satisfies Record<string, { readonly low?: RegisteredId; readonly high: RegisteredId }>;
