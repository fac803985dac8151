import { parse, stringify } from "yaml";
import { runStudy } from "../../../src/study/prepare/compute.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import type { UnitCost } from "../../../src/study/traced/unit-costs.js";
import { assumptions } from "../../report/runs.js";
import { exampleText } from "../example.js";

/** Structures on the lake of the example Sorrel Bend, at their usual bearers; sizes stated before the first run. */
const rack = (side: string) => ({
  width: side,
  height: side,
  barThickness: "0.375 in",
  clearSpacing: "2 in",
  barDepth: "3 in",
  barShape: "rectangular",
  angle: "80 deg",
  headLossLimit: "0.5 ft",
  velocityLimit: "2 ft/s",
});

const stated = { bearer: "irrigation-district", elevation: "2,086 ft" };

/** 2,000 acres with 2.5 ft of water a year, from May to September. */
const irrigated = {
  ...stated,
  kind: "pumping-plant",
  delivered: monthsOf("0 acre-ft", {
    may: "500 acre-ft",
    jun: "1,100 acre-ft",
    jul: "1,500 acre-ft",
    aug: "1,300 acre-ft",
    sep: "600 acre-ft",
  }),
  area: "2,000 acre",
  rack: rack("8 ft"),
  pump: { energyPrice: "$0.07/kWh" },
  main: { length: "4,000 ft", diameter: "42 in", roughness: "0.006 in", minorLoss: 3 },
  lostDeliveries: "$60/acre-ft",
};

/** Forty laterals of 50 acres each, with sprinklers. */
export const piped = {
  ...irrigated,
  id: "piped",
  name: "Piped land",
  method: "sprinklers",
  laterals: {
    count: 40,
    length: "1,300 ft",
    diameter: "8 in",
    roughness: "0.006 in",
    minorLoss: 2,
    availableHead: "10 ft",
  },
};

/** Three miles of lined canal, and water from its turnouts. */
export const canalled = {
  ...irrigated,
  id: "canalled",
  name: "Land on a canal",
  method: "surface",
  canal: { length: "3 mi", bottomWidth: "4 ft", depth: "3 ft" },
};

/** Water works of a mean flow, whose intake runs at about 2 ft/s. */
export const waterworks = (flow: string, diameter: string, face: string) => [
  {
    kind: "intake",
    id: "works-intake",
    name: "Works intake",
    bearer: "city",
    elevation: "2,086 ft",
    demand: monthsOf(flow, {}),
    rack: rack(face),
    conduit: { length: "3,000 ft", diameter, roughness: "0.006 in", minorLoss: 3 },
    supply: { by: "pump", efficiency: "75 %", energyPrice: "$0.08/kWh", marginHead: "10 ft" },
    alternativeWater: "$300/acre-ft",
    oxidantAllowed: true,
  },
  {
    kind: "treatment-plant",
    id: "works",
    name: "Works",
    bearer: "city",
    treated: flow,
    intake: "works-intake",
    tasteAndOdour: { origin: "a lake poor in phosphorus", totalPhosphorus: "0.01 mg/L" },
  },
];

function monthsOf(usual: string, others: Readonly<Record<string, string>>) {
  const names = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
  return Object.fromEntries(names.map((name) => [name, others[name] ?? usual]));
}

/** What a mature infestation costs the last of these structures, by what it gives. */
export function unitCostsOf(structures: readonly object[]): readonly UnitCost[] {
  const document: object = parse(exampleText("sorrel-bend"));
  const study = readStudyText(stringify({ ...document, structures, report: {} }), "study.yaml");
  return runStudy(study, assumptions).traced().structures.at(-1)?.unitCosts ?? [];
}
