import {
  degreesCelsius,
  type Expected,
  hours,
  metres,
  milligramsPerLitre,
  number,
  positiveShare,
  price,
  share,
  squareMetres,
} from "./expected.js";

const warmth = degreesCelsius({ from: 0, to: 40 });
const phosphorus = milligramsPerLitre({ above: 0, to: 10 });

/** Irrigation, hatcheries and treatment of drinking water: what stands behind an intake. */
export const deliveryAssumptions = {
  "cleaning.canal.rate": price("$/m2"),
  "cleaning.canal.visit": price("$"),
  "cleaning.lateral.rate": price("$/m2"),
  "cleaning.lateral.visit": price("$"),
  "irrigation.pump-efficiency": positiveShare,
  "irrigation.pump-margin": metres({ from: 0, to: 1000 }),
  "irrigation.canal-spare": number({ from: 0, to: 10 }),
  "irrigation.canal-roughness": metres({ above: 0, to: 1 }),
  "irrigation.canal-side-slope": number({ from: 0, to: 10 }),
  "irrigation.area-per-sprinkler": squareMetres({ above: 0, to: 1e6 }),
  "irrigation.nozzle-bore": metres({ above: 0, to: 1 }),
  "irrigation.plugged-share": share,
  "irrigation.nozzle-time": hours({ from: 0, to: 100 }),
  "hatchery.filter-cleanings": number({ from: 0, to: 1000 }),
  "hatchery.filter-time": hours({ from: 0, to: 1000 }),
  "taste-odour.dose": milligramsPerLitre({ from: 0, to: 1000 }),
  "taste-odour.carbon-price": price("$/kg"),
  "taste-odour.from-temperature": warmth,
  "taste-odour.full-temperature": warmth,
  "taste-odour.phosphorus-full": phosphorus,
  "taste-odour.phosphorus-none": phosphorus,
} as const satisfies Record<string, Expected>;
