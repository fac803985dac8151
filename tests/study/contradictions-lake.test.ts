import { describe, expect, it } from "vitest";
import { readStudyText } from "../../src/study/reading/read.js";
import { type Contradicting, expectContradiction, typed } from "./contradicting.js";
import { editedText } from "./example.js";

const flat = "100 m";
const tableOf = (...rows: ReadonlyArray<readonly [elevation: string, area: string, storage: string]>) =>
  rows.map(([elevation, area, storage]) => ({ elevation, area, storage }));

const cases: readonly Contradicting[] = [
  {
    why: "a lowest level above the highest",
    edits: [["lake.minimumElevation", "9,000 ft"]],
    allowed: `below the maximum, ${typed("lake.maximumElevation")}`,
  },
  {
    why: "a lowest level equal to the highest",
    edits: [["lake.minimumElevation", typed("lake.maximumElevation")]],
    allowed: "below the maximum",
  },
  {
    why: "a drawdown point below the lowest level",
    edits: [["lake.drawdown[0].elevation", "1 ft"]],
    allowed: `from ${typed("lake.minimumElevation")} to ${typed("lake.maximumElevation")}`,
  },
  {
    why: "a drawdown point above the highest level",
    edits: [["lake.drawdown[1].elevation", "9,000 ft"]],
    allowed: `from ${typed("lake.minimumElevation")} to ${typed("lake.maximumElevation")}`,
  },
  {
    why: "a drawdown on 30 February",
    edits: [["lake.drawdown[0].on", "02-30"]],
    allowed: "a day that the month has",
  },
  {
    why: "a drawdown on 29 February",
    edits: [["lake.drawdown[0].on", "02-29"]],
    allowed: "29 February is left out",
  },
  {
    why: "a drawdown on 31 April",
    edits: [["lake.drawdown[0].on", "04-31"]],
    allowed: "a day that the month has",
  },
  {
    why: "drawdown points that are not in order",
    edits: [["lake.drawdown[1].on", "01-01"]],
    found: '"01-01"',
    allowed: `after that of the point before, "${typed("lake.drawdown[0].on")}"`,
  },
  {
    why: "two drawdown points on one day",
    edits: [["lake.drawdown[1].on", typed("lake.drawdown[0].on")]],
    allowed: "after that of the point before",
  },
  {
    why: "a storage table whose storage falls",
    edits: [["lake.storageTable", tableOf(["640 m", "10 ha", "9000 m3"], ["650 m", "20 ha", "8000 m3"])]],
    at: "lake.storageTable[1].storage",
    found: "8000 m3",
    allowed: "the row before, 9000 m3",
  },
  {
    why: "a storage table whose area falls",
    edits: [["lake.storageTable", tableOf(["640 m", "20 ha", "8000 m3"], ["650 m", "10 ha", "9000 m3"])]],
    at: "lake.storageTable[1].area",
    found: "10 ha",
    allowed: "the row before, 20 ha",
  },
  {
    why: "a storage table with one elevation twice",
    edits: [["lake.storageTable", tableOf([flat, "10 ha", "8000 m3"], [flat, "20 ha", "9000 m3"])]],
    at: "lake.storageTable[1].elevation",
    found: flat,
    allowed: `the row before, ${flat}`,
  },
  {
    why: "an infestation that begins after the start year",
    edits: [["lake.infestedSince", 2090]],
    found: "2090",
    allowed: `up to the start year, ${typed("money.startYear")}`,
  },
];

describe("a lake", () => {
  it.each(cases)("is refused for $why", expectContradiction);

  it("may have an infestation that began in the start year", () => {
    const year = Number(typed("money.startYear"));
    expect(readStudyText(editedText([["lake.infestedSince", year]]), "study.yaml").lake.infestedSince).toBe(
      year,
    );
  });

  it("may have a drawdown point at each of its limits", () => {
    const drawdown = [
      { on: "03-01", elevation: typed("lake.minimumElevation") },
      { on: "10-15", elevation: typed("lake.maximumElevation") },
    ];
    expect(readStudyText(editedText([["lake.drawdown", drawdown]]), "study.yaml").lake.drawdown).toHaveLength(
      2,
    );
  });
});
