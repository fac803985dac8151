import { describe, expect, it } from "vitest";
import { draftedLevels } from "../../../src/study/reading/drafted-levels.js";

/** High from 1 January on, low from 1 July on, joined over a day each. */
const drawdown = [
  { on: "01-01", elevation: "100 m" },
  { on: "06-30", elevation: "100 m" },
  { on: "07-01", elevation: "90 m" },
  { on: "12-31", elevation: "90 m" },
];

describe("the levels of an unfinished study", () => {
  it("are those of its schedule, with how long each structure hangs dry", () => {
    const structures = [
      { kind: "intake", name: "High intake", elevation: "95 m" },
      { kind: "ramp", name: "Ramp", bottomElevation: "89 m" },
      { kind: "dock", name: "Dock that has no elevation yet" },
      { elevation: "96 m" },
    ];
    // By hand: below 95 m from 1 July to 31 December, 184 days in a row.
    expect(draftedLevels({ document: { lake: { drawdown }, structures }, levels: undefined })).toMatchObject({
      lowest: 90,
      highest: 100,
      structures: [
        { name: "High intake", elevation: 95, dryDays: 184, longestDryRun: 184 },
        { name: "Ramp, foot", elevation: 89, dryDays: 0, longestDryRun: 0 },
        { name: "Structure without a name", elevation: 96, dryDays: 184, longestDryRun: 184 },
      ],
    });
  });

  it.each([
    undefined,
    {},
    { lake: { drawdown: [] } },
    { lake: { drawdown: [{ on: "01-01", elevation: "high" }] } },
  ])("are nothing where %j gives none that can be read", (document) => {
    expect(draftedLevels({ document, levels: undefined })).toBeUndefined();
  });
});
