import { type Expected, number, perYear, price, share } from "./expected.js";

const finds = number({ from: 0, to: 1000 });
const discountRate = perYear({ from: 0, to: 1 });
const layerMass = { unit: "kg/m2", bounds: { from: 0, to: 1000 } } as const;

/** How mussels arrive and are noticed, what is learnt of boats, and what results are held against. */
export const comparisonAssumptions = {
  "arrival.establishment-per-fouled-launch": share,
  "arrival.shape": number({ above: 0, to: 10 }),
  "steps.dependence": share,
  "detection.per-plankton-tow": finds,
  "detection.per-settlement-plate": finds,
  "detection.per-search": finds,
  "detection.per-edna-sample": finds,
  "detection.first-harm": price("$"),
  "learning.prior-sample": number({ above: 0, to: 1e6 }),
  "money.other-rate.low": discountRate,
  "money.other-rate.high": discountRate,
  "checks.layer-mass-low": layerMass,
  "checks.layer-mass-high": layerMass,
  "checks.plant-cost-low": price("$"),
  "checks.plant-cost-high": price("$"),
  "checks.storage-tolerance": share,
  "checks.traffic-tolerance": share,
} as const satisfies Record<string, Expected>;
