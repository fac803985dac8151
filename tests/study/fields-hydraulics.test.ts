import { describe, expect, it } from "vitest";
import { readStudyText } from "../../src/study/reading/read.js";
import { type Contradicting, expectContradiction } from "./contradicting.js";
import { absent, editedText, modelOf } from "./example.js";
import { intake, line, plant, pump, turbine, withPump } from "./hydraulic-entries.js";

const outOfRange: readonly Contradicting[] = [
  {
    why: "an efficiency of a plant above 1",
    edits: [[`${plant}.efficiency`, "104 %"]],
    found: "104 %",
    allowed: "at most 100 %",
  },
  {
    why: "an efficiency of a pump above 1",
    edits: [[`${intake}.supply`, { ...pump, efficiency: "104 %" }]],
    at: `${intake}.supply.efficiency`,
    found: "104 %",
    allowed: "at most 100 %",
  },
  {
    why: "an efficiency of a generator above 1",
    edits: [[`${plant}.turbine`, { ...turbine, generatorEfficiency: 1.2 }]],
    at: `${plant}.turbine.generatorEfficiency`,
    found: "1.2",
    allowed: "at most 100 %",
  },
  {
    why: "a rated flow of zero",
    edits: [[`${plant}.turbine`, { ...turbine, ratedFlow: "0 m3/s" }]],
    at: `${plant}.turbine.ratedFlow`,
    found: "0 m3/s",
    allowed: "a flow above zero",
  },
  {
    why: "a turbine of no known type",
    edits: [[`${plant}.turbine`, { ...turbine, type: "wheel" }]],
    at: `${plant}.turbine.type`,
    found: "wheel",
    allowed: "one of francis, kaplan, propeller, crossflow, pelton",
  },
  {
    why: "a pump curve without a point",
    edits: [[`${intake}.supply`, { ...pump, curve: [] }]],
    at: `${intake}.supply.curve`,
    found: "nothing",
    allowed: "at least one point of flow and head",
  },
  {
    why: "a C below those of known walls",
    edits: [[`${intake}.conduit.hazenWilliamsC`, 30]],
    found: "30",
    allowed: "a Hazen–Williams C of at least 40",
  },
  {
    why: "a C above those of known walls",
    edits: [[`${intake}.conduit.hazenWilliamsC`, 161]],
    found: "161",
    allowed: "a Hazen–Williams C of at most 160",
  },
  {
    why: "a rack formula that is not known",
    edits: [[`${intake}.rack.formula`, "manning"]],
    found: "manning",
    allowed: "one of meusburger, reclamation, clark, kirschmer",
  },
  {
    why: "a control that is not known",
    edits: [[`${intake}.supply`, { ...pump, control: "steam" }]],
    at: `${intake}.supply.control`,
    found: "steam",
    allowed: "one of on-off, variable-speed",
  },
  {
    why: "a heat transfer coefficient without its kelvin",
    edits: [
      [
        `${plant}.coolingWater.exchanger`,
        { area: "10 m2", cleanCoefficient: "1500 W/m2", hotCapacityRate: "40 kW/K" },
      ],
    ],
    at: `${plant}.coolingWater.exchanger.cleanCoefficient`,
    found: "1500 W/m2",
    allowed: 'a heat transfer coefficient such as "1500 W/m2K"',
  },
];

describe("a field that is out of range by itself", () => {
  it.each(outOfRange)("is refused: $why", expectContradiction);
});

describe("a study with every new field", () => {
  it("is read, and reaches the model in coherent units", () => {
    const text = editedText([
      ...withPump({ control: "variable-speed" }),
      [`${intake}.conduit.roughness`, absent],
      [`${intake}.conduit.hazenWilliamsC`, 125],
      [`${intake}.rack.formula`, "clark"],
      [`${plant}.efficiency`, absent],
      [`${plant}.turbine`, turbine],
      [
        `${plant}.coolingWater.exchanger`,
        { area: "10 m2", cleanCoefficient: "1500 W/m2K", hotCapacityRate: "40 kW/K" },
      ],
      [`structures[dock]`, { ...line, exchanger: undefined }],
    ]);
    const { structures } = modelOf(readStudyText(text, "study.yaml"));
    const read = structures.find(({ kind }) => kind === "intake");
    expect(read).toMatchObject({
      supply: { control: "variable-speed", curve: [{ flow: 2, head: 200 }] },
      conduit: { hazenWilliamsC: 125 },
      rack: { formula: "clark" },
    });
    expect(structures.find(({ kind }) => kind === "hydropower")).toMatchObject({
      turbine: { type: "francis", ratedFlow: 900 },
      coolingWater: {
        oxidantAllowed: false,
        exchanger: { area: 10, cleanCoefficient: 1500, hotCapacityRate: 40 },
      },
    });
    expect(structures.find(({ kind }) => kind === "service-line")).toMatchObject({
      count: 2,
      oxidantAllowed: false,
      shortageCostPerDay: 900,
      diameter: expect.closeTo(0.1524, 12),
    });
  });
});
