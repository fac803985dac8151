import { describe, expect, it } from "vitest";
import { at } from "../../../src/lists.js";
import type { StudyDocument } from "../../../src/study/format/schema.js";
import { fewest } from "../../report/drawn-odds.js";
import { exampleDocument } from "../../report/runs.js";
import { exampleNames } from "../example.js";
import { shortExample, studyFrom } from "./facts.js";

/**
 * The requested option's net benefit; of an infested lake, which no program keeps clean, the cost of the option in
 * force. Its mean, and its P10 and P90 over the futures.
 */
function answerOf(document: StudyDocument) {
  const { options, requested } = fewest(document).summary;
  const { against, cost, meanCost } = at(
    options.filter(({ id }) => id === requested),
    0,
  );
  const isInfested = document.lake.infestedSince !== undefined;
  const quantiles = isInfested ? cost : at([against?.netBenefits ?? []], 0);
  const quantile = (share: number) => quantiles.find((each) => each.share === share)?.value ?? Number.NaN;
  const mean = isInfested ? meanCost.value : (against?.netBenefit.value ?? Number.NaN);
  return { mean, low: quantile(0.1), high: quantile(0.9) };
}

describe("the first estimate from an example's short facts alone", () => {
  it.each(exampleNames)("of %s holds the full study's answer between its P10 and its P90", (name) => {
    const full = answerOf(exampleDocument(name));
    const first = answerOf(studyFrom(shortExample(name)).study);
    expect(first.low).toBeLessThanOrEqual(full.mean);
    expect(first.high).toBeGreaterThanOrEqual(full.mean);
    expect(first.high - first.low).toBeLessThanOrEqual(4 * (full.high - full.low));
  });
});
