import type { StudyDifferences } from "../../study/compared/compared.js";
import type { ExplainedCents, Explanation } from "../../study/compared/explain.js";
import { figures } from "../../study/compared/figures.js";

/** Two studies beside each other as JSON: values as typed, figures unrounded, explained parts in whole cents. */
export function differencesJson(found: StudyDifferences, explanation: Explanation | undefined): object {
  return {
    limits: found.limits,
    inputs: found.inputs.map(({ left, right, ...input }) => ({
      ...input,
      left: left ?? null,
      right: right ?? null,
    })),
    parts: found.parts,
    results: found.results.map(({ left, right, difference, ...result }) => ({
      ...result,
      kind: figures[result.figure].kind,
      left: left ?? null,
      right: right ?? null,
      difference: difference ?? null,
    })),
    plans: found.plans.map(({ leftPlanAtRight, ...plan }) => ({
      ...plan,
      leftPlanAtRight: leftPlanAtRight ?? null,
    })),
    explanation: explanation ? explanationJson(explanation) : null,
  };
}

function explanationJson({ left, right, parts }: Explanation): object {
  return {
    left: centsJson(left),
    right: centsJson(right),
    parts: parts.map(({ groups, ...cents }) => ({
      inputs: groups.flatMap(({ inputs }) => inputs.map(({ place }) => place)),
      ...centsJson(cents),
    })),
  };
}

const centsJson = ({ netBenefit, infestation }: ExplainedCents) => ({
  netBenefitInCents: netBenefit ?? null,
  infestationInCents: infestation,
});
