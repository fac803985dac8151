import { describe, expect, it } from "vitest";
import { factNotes } from "../../../src/study/short/fact-notes.js";
import { readFacts } from "../../../src/study/short/read-facts.js";
import { entries, shortExample } from "./facts.js";

function notesOf(typed: unknown) {
  const { facts, problems } = readFacts(typed, entries);
  if (!facts) throw new Error(JSON.stringify(problems));
  return factNotes(facts, entries).map(({ at, text }) => [at.join("/"), text]);
}

describe("a short fact that may be a slip", () => {
  it("is a winter level above that of the summer", () => {
    const [note, ...others] = notesOf({ summerLevel: "1,000 ft", winterLevel: "1,010 ft" });
    expect(others).toEqual([]);
    expect(note).toEqual(["winterLevel", expect.stringContaining("Above the level in summer, 1,000 ft")]);
    expect(notesOf({ summerLevel: "1,000 ft", winterLevel: "1,000 ft" })).toEqual([]);
  });

  it("is a lake with nothing to foul, once every count says so", () => {
    const [note] = notesOf({ ramps: "0", docks: { slips: "0" } });
    expect(note).toEqual(["ramps", expect.stringContaining("nothing for mussels to foul")]);
    for (const something of [{ ramps: "1" }, { docks: { slips: "4" } }, { intakes: [{ use: "town" }] }]) {
      expect(notesOf({ ramps: "0", docks: { slips: "0" }, ...something })).toEqual([]);
    }
    expect(notesOf({ ramps: "0" })).toEqual([]);
  });

  it("is more launches than the lanes of the ramps take: 73,000 a year at one ramp are 200 a day, in July more", () => {
    const [note, ...others] = notesOf({ ramps: "1", launches: "73,000" });
    expect(others).toEqual([]);
    const [, atRamp = "", atLane = ""] =
      /^([\d,]+) launches a day .* ([\d,]+) at each lane/.exec(note?.[1] ?? "") ?? [];
    expect(note?.[0]).toBe("launches");
    expect(Number(atRamp)).toBeGreaterThan(73_000 / 365);
    // A typical ramp is 10 m wide, which is 2.5 lanes of 4 m.
    expect(Number(atLane)).toBeCloseTo(Number(atRamp) / 2.5, -1);
    expect(notesOf({ ramps: "3", launches: "26,600" })).toEqual([]);
    expect(notesOf({ launches: "26,600" })).toEqual([]);
  });

  it.each([
    [
      "a level in metres beside one in feet",
      { summerLevel: "2136 m", winterLevel: "2100 ft" },
      "winterLevel",
    ],
    ["24 meant in degrees Celsius", { warmestMonth: "24" }, "warmestMonth"],
    ["calcium in grams", { calcium: "38 g/L" }, "calcium"],
    ["an intake of a kitchen tap", { intakes: [{ use: "town", flow: "2 gpm" }] }, "intakes/0/flow"],
    ["square feet that were meant as acres", { area: "5000 ft2" }, "area"],
  ])("is %s", (_, typed, place) => {
    const notes = notesOf({ ramps: "2", ...typed });
    expect(notes.map(([at]) => at)).toEqual([place]);
    expect(notes[0]?.[1]).toContain("Look again at the number and its unit");
  });

  it("is not a large or a small thing of its kind, nor a lake south of the equator", () => {
    const typed = { place: "-35", area: "160,000 acre", depth: "500 ft", launches: "150000", ramps: "12" };
    expect(notesOf({ ...typed, intakes: [{ flow: "100 gpm" }], docks: { slips: "0" } })).toEqual([]);
  });

  it.each(["copperhithe", "ninemoss", "sorrel-bend", "thistledown"])("is none of those of %s", (name) => {
    expect(notesOf(shortExample(name))).toEqual([]);
  });
});
