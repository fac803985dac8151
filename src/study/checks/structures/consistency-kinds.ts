import type { StructureDocument } from "../../format/structure-schema.js";
import type { Contradiction } from "../../reading/contradiction.js";
import type { SoundParts } from "../sound-parts.js";
import { distributionProblems, hatcheryProblems, treatmentProblems } from "./consistency-deliveries.js";
import { plantProblems } from "./consistency-plant.js";
import { plantPumpProblems, supplyProblems } from "./consistency-pump.js";

type DocumentOf<Kind extends StructureDocument["kind"]> = Extract<StructureDocument, { kind: Kind }>;
type OwnProblems<Document> = (
  document: Document,
  lake: SoundParts["lake"],
  system: "us" | "si",
) => Contradiction[];

/** Contradictions specific to one kind of structure. */
const byKind: { readonly [Kind in StructureDocument["kind"]]?: OwnProblems<DocumentOf<Kind>> } = {
  intake: supplyProblems,
  hydropower: (plant, lake) => [...tailwaterProblems(plant, lake), ...plantProblems(plant)],
  "pumping-plant": (plant, lake, system) => [
    ...plantPumpProblems(plant, lake, system),
    ...distributionProblems(plant),
  ],
  "treatment-plant": treatmentProblems,
  hatchery: hatcheryProblems,
  dock: dockProblems,
  ramp: rampProblems,
};

export const ownProblems: OwnProblems<StructureDocument> = (document, lake, system) =>
  problemsFor(document)?.(document, lake, system) ?? [];

function problemsFor<Document extends StructureDocument>(
  document: Document,
): OwnProblems<Document> | undefined;
function problemsFor({ kind }: StructureDocument): unknown {
  return byKind[kind];
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
