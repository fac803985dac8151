import {
  daysOfYear,
  degreesCelsius,
  type Expected,
  flow,
  hours,
  inUnit,
  kilogramsPerCubicMetre,
  kilogramsPerSquareMetre,
  metres,
  number,
  perYear,
  price,
  share,
} from "./expected.js";

const treatedFlow = flow({ above: 0, to: 10_000 });
/** A price that a power law is drawn through: not nothing. */
const oxidantCost = inUnit("$/m3")({ above: 0, to: 1e6 });
const killTemperature = degreesCelsius({ from: 0, to: 50 });
const killHours = hours({ above: 0, to: 10_000 });
const layer = metres({ above: 0, to: 1 });

/** Work and its prices, limits of structures, ramps, docks, oxidants and what all protections share. */
export const upkeepAssumptions = {
  "cleaning.smallest-layer": layer,
  "cleaning.dry-days-needed": inUnit("d")({ above: 0, to: 365 }),
  "cleaning.dry-share": share,
  "cleaning.rack.rate": price("$/m2"),
  "cleaning.rack.visit": price("$"),
  "cleaning.conduit.rate": price("$/m2"),
  "cleaning.conduit.visit": price("$"),
  "cleaning.service-line.rate": price("$/m2"),
  "cleaning.service-line.visit": price("$"),
  "cleaning.hull.rate": price("$/m2"),
  "cleaning.hull.visit": price("$"),
  "disposal.tipping-fee": price("$/kg"),
  "disposal.haulage": price("$/kg"),
  "labour.maintenance-rate": price("$/h"),
  "oxidant.settlement-factor": share,
  "oxidant.small-plant-cost": oxidantCost,
  "oxidant.small-plant-flow": treatedFlow,
  "oxidant.large-plant-cost": oxidantCost,
  "oxidant.large-plant-flow": treatedFlow,
  "oxidant.kill-temperature.cold": killTemperature,
  "oxidant.kill-hours.cold": killHours,
  "oxidant.kill-temperature.warm": killTemperature,
  "oxidant.kill-hours.warm": killHours,
  "oxidant.quagga-kill-factor": number({ above: 0, to: 10 }),
  "protection.start-density": share,
  "water.heat-capacity": inUnit("kWh/m3.K")({ above: 0, to: 10 }),
  "hydropower.outage-days": daysOfYear,
  "hydropower.outage-lost-share": share,
  "hydropower.derating-limit": share,
  "dock.extra-wear": perYear({ from: 0, to: 1 }),
  "dock.wear-mass": kilogramsPerSquareMetre({ above: 0, to: 1000 }),
  "dock.submerged-share": share,
  "ramp.shell-density": kilogramsPerCubicMetre({ above: 0, to: 3000 }),
  "ramp.gathering": number({ from: 0, to: 1000 }),
  "ramp.litter-tolerance": layer,
  "ramp.sweeping-rate": price("$/m2"),
  "ramp.closure-days": daysOfYear,
  "rack.gap-closed-limit": share,
  "conduit.largest-layer": layer,
  "service-line.shortage-limit": share,
  "limit.first-share": share,
  "limit.certain-share": number({ above: 1, to: 20 }),
  "limit.forced-factor": number({ from: 1, to: 20 }),
} as const satisfies Record<string, Expected>;
