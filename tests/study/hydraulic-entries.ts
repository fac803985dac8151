import { typed } from "./contradicting.js";

export const intake = "structures[intake]";
export const plant = "structures[hydropower]";
const months = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const everyMonth = (value: string) => Object.fromEntries(months.map((month) => [month, value]));

export const pump = {
  by: "pump",
  efficiency: "75 %",
  energyPrice: "$0.08/kWh",
  curve: [{ flow: "2 m3/s", head: "200 m" }],
  deliveryElevation: typed("lake.maximumElevation"),
  control: "on-off",
};
/** A demand that is pumped, by a pump with some of its values replaced. */
export const withPump = (changes: object) =>
  [
    [`${intake}.demand`, everyMonth("0.5 m3/s")],
    [`${intake}.supply`, { ...pump, ...changes }],
  ] as const;

export const turbine = { type: "francis", ratedFlow: "900 m3/s", generatorEfficiency: "96 %" };

export const line = {
  kind: "service-line",
  id: "fire-line",
  name: "Fire line",
  bearer: typed("structures[0].bearer"),
  elevation: typed(`${intake}.elevation`),
  count: 2,
  length: "200 ft",
  diameter: "6 in",
  roughness: "0.2 mm",
  minorLoss: 5,
  requiredFlow: "200 gpm",
  availableHead: "20 ft",
  shortageCostPerDay: "$900/d",
};
