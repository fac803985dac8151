import {
  degreesCelsius,
  type Expected,
  innerShare,
  inUnit,
  milligramsPerLitre,
  number,
  share,
} from "./expected.js";

/** In kelvins. */
const kelvins = number({ from: 0, to: 10 });
const dissolved = milligramsPerLitre({ from: 0, to: 10_000 });
const acidity = number({ from: 0, to: 14 });
const oxygen = milligramsPerLitre({ from: 0, to: 100 });
const conductivity = inUnit("uS/cm")({ from: 0, to: 1e6 });
const salinity = inUnit("g/L")({ from: 0, to: 400 });
const warmestMonth = degreesCelsius({ from: 0, to: 60 });

/** Weights of the classes of habitat suitability, and where each class begins or ends. */
export const suitabilityAssumptions = {
  "suitability.leading-part": innerShare,
  "suitability.weight.none": share,
  "suitability.weight.very-low": share,
  "suitability.weight.low": share,
  "suitability.weight.moderate": share,
  "suitability.weight.high": share,
  "suitability.calcium.whittier.low-from": dissolved,
  "suitability.calcium.whittier.moderate-from": dissolved,
  "suitability.calcium.whittier.high-from": dissolved,
  "suitability.calcium.mackie-claudi.low-from": dissolved,
  "suitability.calcium.mackie-claudi.moderate-from": dissolved,
  "suitability.calcium.mackie-claudi.high-from": dissolved,
  "suitability.ph.low-from": acidity,
  "suitability.ph.moderate-from": acidity,
  "suitability.ph.high-from": acidity,
  "suitability.ph.high-to": acidity,
  "suitability.ph.moderate-to": acidity,
  "suitability.ph.low-to": acidity,
  "suitability.alkalinity.low-from": dissolved,
  "suitability.alkalinity.moderate-from": dissolved,
  "suitability.alkalinity.high-from": dissolved,
  "suitability.hardness.low-from": dissolved,
  "suitability.hardness.moderate-from": dissolved,
  "suitability.hardness.high-from": dissolved,
  "suitability.oxygen.low-from": oxygen,
  "suitability.oxygen.moderate-from": oxygen,
  "suitability.oxygen.high-from": oxygen,
  "suitability.conductivity.low-from": conductivity,
  "suitability.conductivity.moderate-from": conductivity,
  "suitability.conductivity.high-from": conductivity,
  "suitability.salinity.high-to": salinity,
  "suitability.salinity.moderate-to": salinity,
  "suitability.salinity.low-to": salinity,
  "suitability.temperature.moderate-from": warmestMonth,
  "suitability.temperature.high-from": warmestMonth,
  "suitability.temperature.high-to": warmestMonth,
  "suitability.temperature.moderate-to": warmestMonth,
  "suitability.temperature.low-to": warmestMonth,
  "suitability.error.calcium": innerShare,
  "suitability.error.ph": number({ from: 0, to: 3 }),
  "suitability.error.alkalinity": innerShare,
  "suitability.error.hardness": innerShare,
  "suitability.error.oxygen": milligramsPerLitre({ from: 0, to: 10 }),
  "suitability.error.conductivity": innerShare,
  "suitability.error.salinity": innerShare,
  "suitability.error.temperature": kelvins,
} as const satisfies Record<string, Expected>;
