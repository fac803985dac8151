import type { NearEdge } from "../../model/lake/habitat-doubt.js";
import type { VariableClass } from "../../model/lake/suitability.js";
import type { StudyRun } from "../../study/prepare/compute.js";
import { type Problem, pathText } from "../../study/reading/problems.js";
import { capitalised, percent, significant } from "../words/format.js";

type Doubted = Pick<StudyRun, "comparison" | "document" | "habitatDoubt">;

/** In one sentence, what makes the class of habitat less than firm; empty where nothing does. */
export function doubtText({ comparison, habitatDoubt }: Doubted): string {
  const { limiting } = comparison.lake.suitability;
  const { weightOtherwise, nearEdges } = habitatDoubt;
  const parts = [
    ...(weightOtherwise === undefined
      ? []
      : [`${limiting.variable} alone decides (weight ${significant(weightOtherwise, 2)} without it)`]),
    ...nearEdges.map((edge) => `${measuredText(edge.variable)} lies ${nearText(edge)}`),
  ];
  const sentence = parts.join("; ");
  return sentence === "" ? "" : `${capitalised(sentence)}.`;
}

/** The same beside the fields, for the study's author; nothing of it changes a figure. */
export function habitatNotes({ comparison, document, habitatDoubt }: Doubted): Problem[] {
  const { limiting } = comparison.lake.suitability;
  const { weightOtherwise, nearEdges } = habitatDoubt;
  const note = (variable: VariableClass, words: Pick<Problem, "found" | "allowed" | "remedy">): Problem => {
    const at = placeOf(variable);
    return { path: pathText(at, document), at, ...words, unusual: true };
  };
  return [
    ...(weightOtherwise === undefined
      ? []
      : [
          note(limiting, {
            found: `the one value that decides habitat, of weight ${significant(limiting.weight, 2)} with it and ${significant(weightOtherwise, 2)} without`,
            allowed: "borne out by a second variable",
            remedy: "Confirm it: every chance and every layer depends on it.",
          }),
        ]),
    ...nearEdges.map((edge) =>
      note(edge.variable, {
        found: nearText(edge),
        allowed: "further from the edge of a class",
        remedy: "Sample it again, or see how the answer changes with a value in the other class.",
      }),
    ),
  ];
}

const placeOf = ({ key }: VariableClass): readonly PropertyKey[] =>
  key === "temperature" ? ["lake", "surfaceTemperature"] : ["lake", "chemistry", key];

const measuredText = ({ variable, value, unit }: VariableClass): string =>
  `${variable} (${`${significant(value, 3)} ${unit}`.trim()})`;

const nearText = ({ variable, other, error, isShare }: NearEdge): string =>
  `within its measuring error (${isShare ? percent(error, 2) : `${significant(error, 2)} ${variable.unit}`.trim()}) of the class “${other.class}”`;
