import { describe, expect, it } from "vitest";
import { confidenceText } from "../../../src/report/board/confidence-words.js";
import type { Confidence } from "../../../src/study/traced/confidence.js";

const low = (reversing: readonly string[]): Confidence => ({
  ...{ level: "low", evidence: "low", agreement: "low", isFirm: false },
  ...{ reversing, disagreeing: [], judgedShare: 0.9 },
});

describe("what a confidence rests on", () => {
  it.each([
    [["calcium"], "low confidence: the answer rests on one number, “calcium”"],
    [
      ["growth of the population, together"],
      "low confidence: the answer rests on one group of numbers, “growth of the population”",
    ],
    [["calcium", "wages"], "low confidence: any one of 2 inputs could reverse the answer"],
    [[], "low confidence: 90% of what decides it is judged or from memory"],
  ])("is told of %s", (reversing, text) => {
    expect(confidenceText(low(reversing))).toBe(text);
  });
});
