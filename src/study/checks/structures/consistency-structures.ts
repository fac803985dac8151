import type { Rack } from "../../../model/structures/inputs.js";
import { kindOf, type Structure } from "../../../model/structures/kinds.js";
import type { StructureDocument } from "../../format/structure-schema.js";
import { plainOnce } from "../../prepare/to-model.js";
import { type Contradiction, exactlyOne, repeatedIds } from "../../reading/contradiction.js";
import { typedText } from "../../reading/problems.js";
import { oncePer } from "../once-per.js";
import type { SoundParts } from "../sound-parts.js";
import { ownProblems } from "./consistency-kinds.js";

/** The text typed at a place in the structure. */
type Typed = (...at: readonly PropertyKey[]) => string;

/** Contradictions within structures, and between them and the lake. */
export function structureProblems(parts: SoundParts): Contradiction[] {
  const { structures } = parts;
  const ids = repeatedIds(
    structures.map(({ value }) => value),
    ["structures"],
  );
  return [
    ...ids,
    ...intakeProblems(structures),
    ...structures.flatMap(({ index, value }) =>
      problemsIn(value, parts).map((problem) => ({
        ...problem,
        path: ["structures", index, ...problem.path],
      })),
    ),
  ];
}

/** A treatment plant names a structure of the study that takes water in, or none. */
function intakeProblems(structures: SoundParts["structures"]): Contradiction[] {
  const known = structures.flatMap(({ value }) =>
    kindOf(plainOnce(value)).inlet === undefined ? [] : [value.id],
  );
  return structures.flatMap(({ index, value }) =>
    !("intake" in value) || value.intake === undefined || known.includes(value.intake)
      ? []
      : [
          {
            path: ["structures", index, "intake"],
            found: `"${value.intake}"`,
            allowed: `the id of a structure of the study that takes water in: ${known.join(", ") || "there is none yet"}`,
          },
        ],
  );
}

type Judging = Pick<SoundParts, "lake" | "study">;

const problemsIn = (document: StructureDocument, { lake, study }: Judging): readonly Contradiction[] =>
  lake && study ? knownProblems(lake)(study)(document) : problemsOf(document, { lake, study });

/** The ends of every range are tried in the whole study, most of whose structures stay what they are. */
const knownProblems = oncePer((lake: NonNullable<Judging["lake"]>) =>
  oncePer((study: NonNullable<Judging["study"]>) =>
    oncePer((document: StructureDocument) => problemsOf(document, { lake, study })),
  ),
);

/** Checks of every inlet, rack and pipe, plus those of the structure's own kind. */
function problemsOf(document: StructureDocument, { lake, study }: Judging): Contradiction[] {
  const structure: Structure = plainOnce(document);
  const kind = kindOf(structure);
  const typed: Typed = (...at) => typedText(document, at);
  const inlet = kind.inlet?.(structure);
  const racked = kind.rack?.(structure);
  return [
    ...(inlet ? aboveLake(inlet.elevation, lake, typed) : []),
    ...(racked ? rackProblems(racked.rack, racked.flow, typed) : []),
    ...(kind.pipes?.(structure) ?? []).flatMap(({ pipe, at }) =>
      exactlyOne(pipe, "roughness", "hazenWilliamsC").map((problem) => ({
        ...problem,
        path: [...at, ...problem.path],
      })),
    ),
    ...ownProblems(document, lake, study?.units ?? "si"),
  ];
}

/** Water cannot enter above the highest level of the lake. */
function aboveLake(elevation: number, lake: SoundParts["lake"], typed: Typed): Contradiction[] {
  if (!lake || elevation <= lake.maximumElevation.value) return [];
  return [
    {
      path: ["elevation"],
      found: typed("elevation"),
      allowed: `an elevation up to the lake's maximum, ${lake.maximumElevation.text}`,
    },
  ];
}

/** Bars must be thinner than their gaps, as head-loss formulas require, and gaps narrower than the rack. */
function barProblems(rack: Rack, typed: Typed): Contradiction[] {
  const longer = rack.width > rack.height ? "width" : "height";
  if (rack.clearSpacing >= rack[longer]) {
    return [
      {
        path: ["rack", "clearSpacing"],
        found: typed("rack", "clearSpacing"),
        allowed: `an opening between bars, narrower than the rack, which measures ${typed("rack", longer)}`,
        remedy: "Correct the opening, the width, the height, or the unit of one of them.",
      },
    ];
  }
  if (rack.clearSpacing >= rack.barThickness) return [];
  return [
    {
      path: ["rack", "clearSpacing"],
      found: typed("rack", "clearSpacing"),
      allowed: `at least the thickness of a bar, ${typed("rack", "barThickness")}`,
    },
  ];
}

/** A clean rack must pass the largest flow within its velocity limit. */
function rackProblems(rack: Rack, flow: number, typed: Typed): Contradiction[] {
  const openShare = rack.clearSpacing / (rack.clearSpacing + rack.barThickness);
  const through = flow / (rack.width * rack.height) / openShare;
  if (through <= rack.velocityLimit) return barProblems(rack, typed);
  return [
    ...barProblems(rack, typed),
    {
      path: ["rack", "velocityLimit"],
      found: typed("rack", "velocityLimit"),
      allowed: `at least ${(Math.ceil(through * 100) / 100).toFixed(2)} m/s, which the clean rack has at the largest flow; correct the rack, the flow or the limit`,
    },
  ];
}
