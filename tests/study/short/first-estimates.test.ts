import { describe, expect, it } from "vitest";
import type { StudyDocument } from "../../../src/study/format/schema.js";
import { oddsSettings } from "../../../src/study/format/uncertainty-schema.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { realSet } from "../../assumptions/real.js";
import { exampleText } from "../example.js";
import { studyOdds } from "../odds/study-odds.js";
import { shortExample, studyFrom } from "./facts.js";

const set = realSet();

/** Mean of the requested option's net benefit, and its P10 and P90 over the futures. */
function answerOf(document: StudyDocument) {
  const settings = { ...oddsSettings(document.study.uncertainty), mostFutures: 4096 };
  const { options, requested } = studyOdds(document, set, settings);
  const against = options.find(({ id }) => id === requested)?.against;
  const quantile = (share: number) =>
    against?.netBenefits.find((each) => each.share === share)?.value ?? Number.NaN;
  return { mean: against?.netBenefit.value ?? Number.NaN, low: quantile(0.1), high: quantile(0.9) };
}

describe("the first estimate from an example's short facts alone", () => {
  it.each(["sorrel-bend", "ninemoss"] as const)(
    "holds the full study's answer in its 80 %% interval: %s",
    (name) => {
      const full = answerOf(readStudyText(exampleText(name), `${name}.yaml`));
      const first = answerOf(studyFrom(shortExample(name)).study);
      expect(first.low).toBeLessThanOrEqual(full.mean);
      expect(first.high).toBeGreaterThanOrEqual(full.mean);
      const width = first.high - first.low;
      // At Ninemoss mussels hardly can live, and next to nothing but the program's cost is at stake. The full study gives that
      // cost line by line and exactly, so that its own interval is next to nothing; four times that is no measure.
      if (name === "ninemoss") expect(width).toBeLessThanOrEqual(Math.abs(full.mean) / 4);
      else expect(width).toBeLessThanOrEqual(4 * (full.high - full.low));
    },
  );
});
