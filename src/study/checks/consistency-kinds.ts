import type { StructureDocument } from "../format/structure-schema.js";
import { type Contradiction, exactlyOne } from "../reading/contradiction.js";
import { distributionProblems, hatcheryProblems, treatmentProblems } from "./consistency-deliveries.js";
import { plantPumpProblems, supplyProblems } from "./consistency-pump.js";
import type { SoundParts } from "./sound-parts.js";

type DocumentOf<Kind extends StructureDocument["kind"]> = Extract<StructureDocument, { kind: Kind }>;
type OwnProblems<Document> = (document: Document, lake: SoundParts["lake"]) => Contradiction[];

/** Contradictions specific to one kind of structure. */
const byKind: { readonly [Kind in StructureDocument["kind"]]?: OwnProblems<DocumentOf<Kind>> } = {
  intake: supplyProblems,
  hydropower: (plant, lake) => [...tailwaterProblems(plant, lake), ...turbineProblems(plant)],
  "pumping-plant": (plant, lake) => [...plantPumpProblems(plant, lake), ...distributionProblems(plant)],
  "treatment-plant": treatmentProblems,
  hatchery: hatcheryProblems,
  dock: dockProblems,
  ramp: rampProblems,
};

export const ownProblems: OwnProblems<StructureDocument> = (document, lake) =>
  problemsFor(document)?.(document, lake) ?? [];

function problemsFor<Document extends StructureDocument>(
  document: Document,
): OwnProblems<Document> | undefined;
function problemsFor({ kind }: StructureDocument): unknown {
  return byKind[kind];
}

/** Either a turbine or an efficiency, and no month above the rated flow. */
function turbineProblems(plant: DocumentOf<"hydropower">): Contradiction[] {
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

function tailwaterProblems(plant: DocumentOf<"hydropower">, lake: SoundParts["lake"]): Contradiction[] {
  if (lake && plant.tailwaterElevation.value >= lake.minimumElevation.value) {
    return [
      {
        path: ["tailwaterElevation"],
        found: plant.tailwaterElevation.text,
        allowed: `an elevation below the lake's minimum, ${lake.minimumElevation.text}`,
      },
    ];
  }
  if (Object.values(plant.flow).every(({ value }) => value === 0)) {
    return [
      { path: ["flow"], found: "no flow in any month", allowed: "a flow above zero in at least one month" },
    ];
  }
  return [];
}

function dockProblems(dock: DocumentOf<"dock">): Contradiction[] {
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

function rampProblems(ramp: DocumentOf<"ramp">): Contradiction[] {
  if (ramp.bottomElevation.value < ramp.topElevation.value) return [];
  return [
    {
      path: ["bottomElevation"],
      found: ramp.bottomElevation.text,
      allowed: `an elevation below the top of the ramp, ${ramp.topElevation.text}`,
    },
  ];
}
