import {
  degreesCelsius,
  type Expected,
  hours,
  innerShare,
  inUnit,
  kilogramsPerCubicMetre,
  metres,
  metresPerSecond,
  millimetres,
  number,
  perYear,
  positiveShare,
  share,
  years,
} from "./expected.js";

const yearsToPeak = years({ above: 0, to: 100 });
const water = degreesCelsius({ from: 0, to: 50 });
const depth = metres({ from: 0, to: 2000 });
const speed = metresPerSecond({ from: 0, to: 20 });
const shellLength = millimetres({ above: 0, to: 100 });
const killingTime = hours({ above: 0, to: 10_000 });
const factor = number({ above: 0, to: 100 });

/** Population, settlement, shells, growth of a layer, drying and frost. */
export const musselAssumptions = {
  "population.initial-share": innerShare,
  "population.peak-share": innerShare,
  "population.years-to-peak.zebra": yearsToPeak,
  "population.years-to-peak.quagga-deep": yearsToPeak,
  "population.years-to-peak.quagga-shallow": yearsToPeak,
  "population.later-over-peak": share,
  "population.decline-years": years({ from: 0, to: 100 }),
  "settlement.spawning-temperature.zebra": water,
  "settlement.spawning-temperature.quagga": water,
  "settlement.upper-temperature": water,
  "settlement.full-velocity": speed,
  "settlement.no-velocity": speed,
  "settlement.standing-days": inUnit("d")({ from: 1, to: 365 }),
  "settlement.full-depth.zebra": depth,
  "settlement.no-depth.zebra": depth,
  "settlement.full-depth.quagga": depth,
  "settlement.no-depth.quagga": depth,
  "shell.mass-intercept": number({ from: -20, to: 0 }),
  "shell.mass-exponent": number({ above: 0, to: 6 }),
  "shell.maximum-length": shellLength,
  "shell.settlement-length": shellLength,
  "shell.growth-rate": inUnit("1/degC.d")({ above: 0, to: 1 }),
  "shell.growth-base-temperature": water,
  "shell.shell-share": share,
  "growth.settlers-per-month": inUnit("1/m2")({ from: 0, to: 1e7 }),
  "growth.yearly-mortality": perYear({ from: 0, to: 10 }),
  "growth.mortality-exponent": number({ from: 0, to: 3 }),
  "growth.cover-limit": factor,
  "growth.bulk-density": kilogramsPerCubicMetre({ above: 0, to: 3000 }),
  "drying.reference-hours": killingTime,
  "drying.reference-length": shellLength,
  "drying.reference-temperature": water,
  "drying.reference-humidity": share,
  "drying.steepness": factor,
  "drying.length-exponent": number({ from: 0, to: 10 }),
  "drying.smallest-length": shellLength,
  "drying.base-deficit": inUnit("kPa")({ above: 0, to: 100 }),
  "drying.base-deficit-q10": factor,
  "drying.quagga-factor": number({ above: 0, to: 10 }),
  "drying.frost-hours.minus-0": killingTime,
  "drying.frost-hours.minus-1.5": killingTime,
  "drying.frost-hours.minus-3": killingTime,
  "drying.frost-hours.minus-10": killingTime,
  "drying.cluster-factor": factor,
  "drying.frost-survival": positiveShare,
} as const satisfies Record<string, Expected>;
