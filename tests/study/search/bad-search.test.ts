import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { InputError } from "../../../src/study/reading/problems.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { searchPlan } from "../../../src/study/search/plan.js";
import { assumptions } from "../../report/runs.js";

const folder = new URL("../../bad/search/", import.meta.url);
const study = readFileSync(new URL("../../../src/examples/sorrel-bend.yaml", import.meta.url), "utf8");

/** Place, and words of what is found or allowed, for each file. */
const expected: Readonly<Record<string, readonly [string, RegExp]>> = {
  "budget-with-a-range.yaml": ["search.budget", /without a range/],
  "chance-of-nothing.yaml": ["search.chance", /above zero/],
  "day-that-no-month-has.yaml": ["search.levels.from[0]", /a day that the month has/],
  "drawdowns-beyond-number.yaml": ["search.levels.lowest", /343 drawdowns.*at most 300/],
  "fall-at-no-rate.yaml": ["search.levels.fastestFall", /above zero/],
  "fee-above-what-was-stated.yaml": ["search.fees[0]", /up to 40/],
  "hours-beyond-the-day.yaml": ["search.latest", /up to 24/],
  "hours-beyond-what-is-open.yaml": ["search.mostHours", /at most 8 hours/],
  "hours-in-no-order.yaml": ["search.latest", /no hour/],
  "kept-above-the-present.yaml": ["search.levels.notBelow[0].elevation", /at most 2,100 ft/],
  "lowest-below-the-pool.yaml": ["search.levels.lowest[1]", /minimum pool, 2,090 ft/],
  "minimum-pool-above-the-present.yaml": ["search.levels.minimumPool", /at most 2,100 ft/],
  "no-levels-to-try.yaml": ["search.levels.lowest", /at least one elevation/],
  "nothing-known-to-vary.yaml": ["search.vary[0]", /hours/],
  "refilled-before-drawn-down.yaml": ["search.levels.refilledBy", /still held: from 12-01 for 60 days/],
  "unknown-day-type.yaml": ["search.dayTypes[0]", /summer-weekend/],
  "unknown-option.yaml": ["search.from", /weekends, full-season/],
  "unknown-site.yaml": ["search.sites[0]", /gate, cove/],
};

describe("a search that cannot be", () => {
  it("has a wait that no number of inspectors keeps: place, found, allowed and remedy", () => {
    const few = study.replace("mostInspectors: 6", "mostInspectors: 1");
    const document = readStudyText(
      `${few}\nsearch: { vary: [hours], sites: [gate], dayTypes: [summer-weekend], earliest: 8, latest: 18, longestWait: "0.0001 min" }\n`,
      "study.yaml",
    );
    expect(() => searchPlan(document, assumptions)).toThrow(
      /search\.longestWait: found 0\.0001 min; allowed: a wait that some station keeps with at most 1 inspector.*Lengthen it/,
    );
  });

  it("is one of programs in a lake that is infested", () => {
    const infested = study.replace(/^lake:$/m, "lake:\n  infestedSince: 2026");
    const read = () => readStudyText(`${infested}\nsearch: { vary: [hours] }\n`, "study.yaml");
    expect(read).toThrow(/search\.vary: found hours, in a lake that is infested; allowed: levels/);
  });

  it("has one file for each mistake", () => {
    expect(readdirSync(folder).sort()).toEqual(Object.keys(expected).sort());
  });

  it.each(Object.entries(expected))(
    "%s is refused with its place, what is allowed and what to do",
    (name, [place, words]) => {
      const text = `${study}\n${readFileSync(new URL(name, folder), "utf8")}`;
      try {
        readStudyText(text, name);
        expect.fail("was read");
      } catch (error) {
        if (!(error instanceof InputError)) throw error;
        expect(error.problems.map(({ path }) => path)).toEqual([place]);
        expect(error.problems.map(({ found, allowed }) => `${found} ${allowed}`).join()).toMatch(words);
        for (const { remedy } of error.problems) expect(remedy).not.toBe("");
      }
    },
  );
});
