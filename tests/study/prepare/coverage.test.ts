import { describe, expect, it } from "vitest";
import { coverageRuns } from "../../../src/study/prepare/traffic.js";
import { study } from "../counted-traffic.js";
import { absent, type editedText, modelOf } from "../example.js";

const open = "options[full-season].open";
const allHours = { from: "00:00", to: "24:00" };
const coverages = (edits: Parameters<typeof editedText>[0]) =>
  coverageRuns(study(edits)).map(({ coverage }) => coverage);

describe("the coverage of an option with open hours", () => {
  it("reaches the model", () => {
    const { options } = modelOf(study([]));
    const runs = coverageRuns(study([]));
    expect(runs).toHaveLength(2);
    for (const { optionId, coverage } of runs) {
      expect(options.find(({ id }) => id === optionId)?.steps?.coverage).toBe(coverage);
    }
  });

  it("is 1 where it is always open everywhere", () => {
    expect(coverages([[open, [allHours]]])[1]).toBeCloseTo(1, 12);
  });

  it("is the share of a site where only that is always open", () => {
    expect(coverages([[open, [{ ...allHours, sites: ["dam"] }]]])[1]).toBeCloseTo(0.3, 12);
  });

  it("is that of the example's hours by hand", () => {
    // Fri–Sun in summer, 40 days: 267 launches a day, 250 from 7 to 20. Mon–Thu, 52: 122, 114. Fri–Sun in spring and
    // September, 39: 131, 126 from 7 to 18. Mon–Thu, 52: 54, 51. March and October, 62: 19, 18 from 7 to 16.
    const all = 40 * 267 + 52 * 122 + 39 * 131 + 52 * 54 + 62 * 19;
    const met = 40 * 250 + 52 * 114 + 39 * 126 + 52 * 51 + 62 * 18;
    const [weekends, fullSeason] = coverages([]);
    expect(fullSeason).toBeCloseTo(met / all, 10);
    expect(weekends).toBeCloseTo(((40 * 250 + 39 * 126) * 0.83) / all, 10);
  });

  it("needs no sites", () => {
    const edits = [
      ["boats.sites", absent],
      ["options[weekends].open", [allHours]],
    ] as const;
    const run = coverageRuns(study(edits));
    expect(run[0]?.coverage).toBeCloseTo(1, 12);
    expect(run[0]?.rows.map(({ site }) => site)).toEqual(Array(5).fill("lake"));
  });

  it("leaves an option with a coverage of its own as it is", () => {
    const edits = [
      ["options[weekends].open", absent],
      ["options[weekends].steps.coverage", "55 %"],
    ] as const;
    expect(modelOf(study(edits)).options.find(({ id }) => id === "weekends")?.steps?.coverage).toBe(0.55);
  });

  it("brings all launches of the year to its rows", () => {
    const launches = [60, 420, 1500, 3900, 5400, 6200, 5500, 2700, 800, 120].reduce(
      (sum, each) => sum + each,
      0,
    );
    for (const { rows } of coverageRuns(study([]))) {
      expect(rows.reduce((sum, each) => sum + each.launches, 0)).toBeCloseTo(launches, 6);
    }
  });
});
