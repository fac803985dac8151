import { describe, expect, it } from "vitest";
import { inCounts, likelihoods, likelihoodWord } from "../../../src/report/words/likelihood.js";

describe("likelihood words", () => {
  it.each([
    // By the stated scale, at and beside its limits.
    [0, "exceptionally unlikely"],
    [0.0099, "exceptionally unlikely"],
    [0.01, "very unlikely"],
    [0.1, "unlikely"],
    [0.33, "less likely than not"],
    [0.45, "about as likely as not"],
    [0.55, "more likely than not"],
    [0.67, "likely"],
    [0.9, "very likely"],
    [0.99, "almost certain"],
    [1, "almost certain"],
  ])("of %d is %s", (share, word) => {
    expect(likelihoodWord(share)).toBe(word);
  });

  it("rise, and cover every share", () => {
    const limits = likelihoods.map(({ below }) => below);
    expect(limits).toEqual(limits.toSorted((one, other) => one - other));
    expect(limits.at(-1)).toBeGreaterThan(1);
    expect(new Set(likelihoods.map(({ word }) => word)).size).toBe(likelihoods.length);
  });

  it("stand beside counts that are never none and never all", () => {
    for (let share = 0; share <= 1000; share++) {
      expect(inCounts(share / 1000)).toMatch(/^(about|fewer than|more than) [1-9]\d? in [1-9]\d*$/);
    }
    expect(inCounts(1 / 3)).toBe("about 1 in 3");
  });
});
