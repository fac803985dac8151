import { type Expected, hours, inUnit, number, perYear, positiveShare, price, share } from "./expected.js";

const positiveDays = inUnit("d")({ above: 0, to: 3650 });
const finds = number({ from: 0, to: 1000 });
/** A yearly rate of one lake: above 10 a year it would be infested within weeks. */
const lakeRate = perYear({ above: 0, to: 10 });
const discountRate = perYear({ from: 0, to: 1 });
/** A price that a power law is drawn through: not nothing. */
const waterCost = inUnit("$/m3")({ above: 0, to: 1e6 });
const layerMass = { unit: "kg/m2", bounds: { from: 0, to: 1000 } } as const;

/** What a request counts, how mussels arrive and are noticed, what is learnt of boats, and what results are held against. */
export const comparisonAssumptions = {
  "response.treatment-price": price("$/m3"),
  "request.full-time-hours": hours({ above: 0, to: 8784 }),
  "arrival.founding-unknown": positiveShare,
  "arrival.founding-near": positiveShare,
  "arrival.founding-far": positiveShare,
  "arrival.near-days": positiveDays,
  "arrival.far-days": positiveDays,
  "arrival.living-share-near": positiveShare,
  "arrival.living-share-far": positiveShare,
  "arrival.living-share-unknown": positiveShare,
  "arrival.base-rate-open": lakeRate,
  "arrival.busy-factor": number({ above: 0, to: 100 }),
  "arrival.base-rate-inspected": lakeRate,
  "arrival.inspected-through": positiveShare,
  "arrival.kind-unknown": share,
  "arrival.fouled-count-spread": number({ above: 0, to: 10 }),
  "arrival.own-rate-spread": number({ above: 0, to: 10 }),
  "arrival.other-share": inUnit("share")({ from: 0, below: 1 }),
  "arrival.shape": number({ above: 0, to: 10 }),
  "arrival.reference-launches": number({ above: 0, to: 1e6 }),
  "steps.dependence": share,
  "detection.per-plankton-tow": finds,
  "detection.per-settlement-plate": finds,
  "detection.per-search": finds,
  "detection.per-edna-sample": finds,
  "detection.within-1-year": share,
  "detection.within-2-years": share,
  "detection.within-3-years": share,
  "detection.within-4-years": share,
  "detection.usual-tows": number({ above: 0, to: 10_000 }),
  "detection.first-harm": price("$"),
  "learning.prior-sample": number({ above: 0, to: 1e6 }),
  "money.other-rate.low": discountRate,
  "money.other-rate.high": discountRate,
  "checks.layer-mass-low": layerMass,
  "checks.layer-mass-high": layerMass,
  "checks.plant-cost-high": price("$"),
  "checks.water-cost.small-low": waterCost,
  "checks.water-cost.small-high": waterCost,
  "checks.water-cost.large-low": waterCost,
  "checks.water-cost.large-high": waterCost,
  "checks.energy-lost-high": positiveShare,
  "checks.storage-tolerance": share,
  "checks.traffic-tolerance": share,
} as const satisfies Record<string, Expected>;
