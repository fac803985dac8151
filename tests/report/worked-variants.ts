import { runStudy, type StudyRun } from "../../src/study/prepare/compute.js";
import { parseQuantity } from "../../src/units/quantity.js";
import { alone, assumptions, exampleDocument } from "./runs.js";

const example = exampleDocument("sorrel-bend");
/** Gravity may drive as little as it does in some variants: the limit of what a study may enter is an assumption. */
const short = {
  id: "checks.impossible-delivered",
  value: "1 %",
  reason: "to try conduits that fall far short",
};
/**
 * What is worked is of the part that was left to foul to the end: a few years and two options, whose stations are not
 * staffed, show it as well as all.
 */
const document: typeof example = {
  ...example,
  options: example.options
    .filter(({ id }) => ["none", example.study.requestedOption].includes(id))
    .map((option) => ({ ...option, station: undefined })),
  study: { ...example.study, existingOption: undefined },
  money: { ...example.money, horizon: 6 },
  overrides: [...example.overrides, short],
};
const flow = (text: string) => parseQuantity(text, "flow");
const length = (text: string) => parseQuantity(text, "length");
const elevation = (text: string) => parseQuantity(text, "elevation");
const share = (text: string) => parseQuantity(text, "share");

type Intake = Parameters<Parameters<typeof alone<"intake">>[3]>[0];
type Plant = Parameters<Parameters<typeof alone<"hydropower">>[3]>[0];

/** The intake of the example by another description of the same kind of thing; every figure here is invented. */
const cityIntake = (alter: (intake: Intake) => Partial<Intake>): StudyRun =>
  runStudy(
    alone(document, "city-intake", "intake", (intake) => ({ ...intake, ...alter(intake) })),
    assumptions,
  );
/** Slow enough for mussels to settle in the penstock. */
const slow = { hours: { all: parseQuantity("672 h", "hours") }, flow: { all: flow("18 m3/s") } };
const powerhouse = (alter: (plant: Plant) => Partial<Plant>): StudyRun =>
  runStudy(
    alone(document, "powerhouse", "hydropower", (plant) => ({ ...plant, running: slow, ...alter(plant) })),
    assumptions,
  );

const points = (...curve: ReadonlyArray<readonly [flow: string, head: string]>) =>
  curve.map(([flowText, head]) => ({ flow: flow(flowText), head: length(head) }));

const pumped = (control: "on-off" | "variable-speed", curve: ReturnType<typeof points>) =>
  cityIntake(({ supply }) => {
    if (supply.by !== "pump") throw new Error("not a pump");
    const { efficiency, energyPrice } = supply;
    const deliveryElevation = elevation("700 m");
    return { supply: { by: "pump", efficiency, energyPrice, curve, control, deliveryElevation } };
  });

const withoutRoughness = <T extends { roughness?: unknown }>({ roughness: _, ...rest }: T) => rest;
const byC = (hazenWilliamsC: number, availableHead: string) =>
  cityIntake(({ conduit }) => ({
    conduit: { ...withoutRoughness(conduit), hazenWilliamsC },
    supply: { by: "gravity", availableHead: length(availableHead) },
  }));

const byMargin = (marginHead: string) =>
  cityIntake(({ supply }) => {
    if (supply.by !== "pump") throw new Error("not a pump");
    const { efficiency, energyPrice } = supply;
    return { supply: { by: "pump", efficiency, energyPrice, marginHead: length(marginHead) } };
  });

const rackBy = (formula: "meusburger" | "kirschmer" | "reclamation" | "clark") =>
  cityIntake(({ rack }) => ({ rack: { ...rack, formula } }));

const turbine = (ratedFlow: string, type: "francis" | "kaplan" | "crossflow" = "francis") =>
  powerhouse(() => ({
    efficiency: undefined,
    turbine: { type, ratedFlow: flow(ratedFlow), generatorEfficiency: share("96 %") },
  }));

const threePoints = points(["0 m3/s", "80 m"], ["2 m3/s", "66 m"], ["3 m3/s", "45 m"]);
/** Enough for the clean conduit, too little for the fouled one. */
const weakPoints = points(["0 m3/s", "56 m"], ["2 m3/s", "52.4 m"], ["3 m3/s", "45 m"]);

const inLakeOfRecord = runStudy(
  alone(exampleDocument("ninemoss"), "village-intake", "intake", (intake) => {
    if (intake.supply.by !== "pump") throw new Error("not a pump");
    const { efficiency, energyPrice } = intake.supply;
    const curve = points(["0.035 m3/s", "60 m"]);
    const deliveryElevation = elevation("460 m");
    return {
      ...intake,
      supply: { by: "pump", efficiency, energyPrice, curve, control: "on-off", deliveryElevation },
    };
  }),
  assumptions,
);

export const variants = {
  "pump by its margin, with head to spare": byMargin("6 m"),
  "pump by its margin, too weak when fouled": byMargin("2 m"),
  "pump by one point": pumped("on-off", points(["2.2 m3/s", "62 m"])),
  "pump by three points": pumped("on-off", threePoints),
  "pump by straight lines": pumped(
    "on-off",
    points(["0 m3/s", "80 m"], ["1 m3/s", "76 m"], ["2 m3/s", "66 m"], ["3 m3/s", "45 m"]),
  ),
  "pump of variable speed with speed to spare": pumped(
    "variable-speed",
    points(["0 m3/s", "150 m"], ["2 m3/s", "130 m"], ["3 m3/s", "90 m"]),
  ),
  "pump of variable speed, fouled at full speed": pumped("variable-speed", weakPoints),
  "pump by one point in a lake known by a record": inLakeOfRecord,
  "gravity from the lake's level": cityIntake(() => ({
    supply: { by: "gravity", outletElevation: elevation("640 m") },
  })),
  "gravity from a lake below the outlet": cityIntake(() => ({
    supply: { by: "gravity", outletElevation: elevation("652 m") },
  })),
  "wall by C": byC(130, "20 m"),
  "wall by a C that is rougher than shells": byC(45, "20 m"),
  "wall by C at a flow that loses more when clean": byC(45, "0.1 m"),
  "rack by Kirschmer": rackBy("kirschmer"),
  "rack by Reclamation": rackBy("reclamation"),
  "rack by Clark": rackBy("clark"),
  "Francis turbine at part load": turbine("25 m3/s"),
  "Kaplan turbine below a fifth of its flow": turbine("100 m3/s", "kaplan"),
  "Francis turbine below its smallest flow": turbine("50 m3/s"),
  "cooling water through an exchanger": powerhouse(({ coolingWater }) => ({
    coolingWater: {
      ...coolingWater,
      exchanger: {
        area: parseQuantity("60 m2", "area"),
        cleanCoefficient: parseQuantity("1200 W/(m2 K)", "heatTransfer"),
        hotCapacityRate: parseQuantity("100 kW/K", "capacityRate"),
      },
    },
  })),
  "penstock by C": powerhouse(({ penstock }) => ({
    penstock: { ...withoutRoughness(penstock), hazenWilliamsC: 120 },
  })),
} satisfies Record<string, StudyRun>;
