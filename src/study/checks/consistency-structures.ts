import type { Quantity } from "../../units/quantity.js";
import type { StructureDocument } from "../format/structure-schema.js";
import { type Contradiction, exactlyOne, repeatedIds } from "../reading/contradiction.js";
import { supplyProblems } from "./consistency-pump.js";
import type { SoundParts } from "./sound-parts.js";

type RackDocument = Extract<StructureDocument, { kind: "intake" }>["rack"];

/** Structures against themselves and against the lake. */
export function structureProblems({ structures, lake }: SoundParts): Contradiction[] {
  const ids = repeatedIds(
    structures.map(({ value }) => value),
    ["structures"],
  );
  return [
    ...ids,
    ...structures.flatMap(({ index, value }) =>
      ownProblems(value, lake).map((problem) => ({
        ...problem,
        path: ["structures", index, ...problem.path],
      })),
    ),
  ];
}

function ownProblems(structure: StructureDocument, lake: SoundParts["lake"]): Contradiction[] {
  switch (structure.kind) {
    case "intake":
      return [
        ...aboveLake(structure, lake),
        ...rackProblems(structure.rack, largest(structure.demand)),
        ...pipeProblems(structure.conduit, ["conduit"]),
        ...supplyProblems(structure, lake),
      ];
    case "hydropower":
      return [
        ...aboveLake(structure, lake),
        ...rackProblems(structure.rack, largest(structure.flow)),
        ...pipeProblems(structure.penstock, ["penstock"]),
        ...pipeProblems(structure.coolingWater, ["coolingWater"]),
        ...tailwaterProblems(structure, lake),
        ...turbineProblems(structure),
      ];
    case "service-line":
      return [...aboveLake(structure, lake), ...pipeProblems(structure, [])];
    case "dock":
      return dockProblems(structure);
    case "ramp":
      return rampProblems(structure);
    case "lake-wide":
      return [];
  }
}

function largest(months: Record<string, { value: number }>): number {
  return Math.max(...Object.values(months).map(({ value }) => value));
}

/** Water cannot enter above the highest level of the lake. */
function aboveLake(structure: { readonly elevation: Quantity }, lake: SoundParts["lake"]): Contradiction[] {
  if (!lake || structure.elevation.value <= lake.maximumElevation.value) return [];
  return [
    {
      path: ["elevation"],
      found: structure.elevation.text,
      allowed: `an elevation up to the lake's maximum, ${lake.maximumElevation.text}`,
    },
  ];
}

function pipeProblems(
  pipe: { roughness?: unknown; hazenWilliamsC?: unknown },
  path: readonly string[],
): Contradiction[] {
  return exactlyOne(pipe, "roughness", "hazenWilliamsC").map((problem) => ({
    ...problem,
    path: [...path, ...problem.path],
  }));
}

/** The turbine or its efficiency, and no month beyond its rated flow. */
function turbineProblems(plant: Extract<StructureDocument, { kind: "hydropower" }>): Contradiction[] {
  const { turbine, flow } = plant;
  const problems = exactlyOne(plant, "efficiency", "turbine");
  const [largestFlow] = Object.values(flow).sort((a, b) => b.value - a.value);
  if (turbine && largestFlow && largestFlow.value > turbine.ratedFlow.value) {
    problems.push({
      path: ["turbine", "ratedFlow"],
      found: turbine.ratedFlow.text,
      allowed: `at least the largest flow through one unit, ${largestFlow.text}`,
    });
  }
  return problems;
}

/** Bars thinner than the gaps between them, which formulas of head loss need, and gaps narrower than the rack. */
function barProblems(rack: RackDocument): Contradiction[] {
  const longer = rack.width.value > rack.height.value ? rack.width : rack.height;
  if (rack.clearSpacing.value >= longer.value) {
    return [
      {
        path: ["rack", "clearSpacing"],
        found: rack.clearSpacing.text,
        allowed: `an opening between bars, narrower than the rack, which measures ${longer.text}`,
        remedy: "Correct the opening, the width, the height or the unit of any of them.",
      },
    ];
  }
  if (rack.clearSpacing.value >= rack.barThickness.value) return [];
  return [
    {
      path: ["rack", "clearSpacing"],
      found: rack.clearSpacing.text,
      allowed: `at least the thickness of a bar, ${rack.barThickness.text}`,
    },
  ];
}

/** The clean rack must pass the largest flow within its own velocity limit. */
function rackProblems(rack: RackDocument, flow: number): Contradiction[] {
  const openShare = rack.clearSpacing.value / (rack.clearSpacing.value + rack.barThickness.value);
  const through = flow / (rack.width.value * rack.height.value) / openShare;
  if (through <= rack.velocityLimit.value) return barProblems(rack);
  return [
    ...barProblems(rack),
    {
      path: ["rack", "velocityLimit"],
      found: rack.velocityLimit.text,
      allowed: `at least ${(Math.ceil(through * 100) / 100).toFixed(2)} m/s, which the clean rack has at the largest flow; correct the rack, the flow or the limit`,
    },
  ];
}

function tailwaterProblems(
  plant: Extract<StructureDocument, { kind: "hydropower" }>,
  lake: SoundParts["lake"],
): Contradiction[] {
  if (lake && plant.tailwaterElevation.value >= lake.minimumElevation.value) {
    return [
      {
        path: ["tailwaterElevation"],
        found: plant.tailwaterElevation.text,
        allowed: `an elevation below the lake's minimum, ${lake.minimumElevation.text}`,
      },
    ];
  }
  if (largest(plant.flow) === 0) {
    return [
      { path: ["flow"], found: "no flow in any month", allowed: "a flow above zero in at least one month" },
    ];
  }
  return [];
}

function dockProblems(dock: Extract<StructureDocument, { kind: "dock" }>): Contradiction[] {
  const needed = dock.floating ? "depth" : "elevation";
  const unused = dock.floating ? "elevation" : "depth";
  const problems: Contradiction[] = [];
  if (dock[needed] === undefined) {
    problems.push({
      path: [needed],
      found: "nothing",
      allowed: `a value, since the dock is ${dock.floating ? "floating" : "fixed"}`,
    });
  }
  if (dock[unused] !== undefined) {
    problems.push({
      path: [unused],
      found: dock[unused].text,
      allowed: `no value, since the dock is ${dock.floating ? "floating" : "fixed"}`,
    });
  }
  return problems;
}

function rampProblems(ramp: Extract<StructureDocument, { kind: "ramp" }>): Contradiction[] {
  if (ramp.bottomElevation.value < ramp.topElevation.value) return [];
  return [
    {
      path: ["bottomElevation"],
      found: ramp.bottomElevation.text,
      allowed: `an elevation below the top of the ramp, ${ramp.topElevation.text}`,
    },
  ];
}
