import { describe, expect, it } from "vitest";
import { runStudy } from "../../src/study/prepare/compute.js";
import { prepareStudy } from "../../src/study/prepare/prepared.js";
import { readStudyText } from "../../src/study/reading/read.js";
import { realSet } from "../assumptions/real.js";
import { absent, editedText, exampleDocument, modelOf, placeIn, priorSample, problemsIn } from "./example.js";

const infested = "boats.classes[infested-30-days]";
const path = (place: string) => placeIn(exampleDocument(), place).text;
const counts = { found: 25, of: 830, weight: "100 %", origin: "invented" };
const log = (...lines: readonly string[]) => ({
  csv: `${["season,class,screened,setAside,fouled", ...lines].join("\n")}\n`,
  origin: "invented",
});
type Edits = Parameters<typeof editedText>[0];
const read = (edits: Edits) => readStudyText(editedText(edits), "study.yaml");
const chanceOf = (id: string, edits: Edits) =>
  modelOf(read(edits)).boats.classes.find((each) => each.id === id)?.fouled;

describe("a class with counts of a comparable program", () => {
  it("gives the model their mean, and beside it the share alive", () => {
    // By hand: (½ + 25)/(1 + 830).
    const edits = [
      [`${infested}.fouled`, counts],
      [`${infested}.living`, "50 %"],
    ] as const;
    expect(chanceOf("infested-30-days", edits)).toBeCloseTo(25.5 / 831, 14);
    expect(modelOf(read(edits)).boats.classes.find(({ id }) => id === "infested-30-days")?.living).toBe(0.5);
  });

  it("is refused for more found than looked at, and told of both", () => {
    expect(problemsIn(editedText([[`${infested}.fouled`, { ...counts, found: 831 }]]))).toEqual([
      {
        path: `${path(infested)}.fouled.found`,
        found: "found: 831 of: 830",
        allowed: "no more boats found fouled than were looked at",
        remedy: "Correct this value or the other.",
      },
    ]);
  });

  it.each([
    ["of", 0, "at least 1 boat"],
    ["found", 2.5, "a whole number of boats"],
    ["weight", "0 %", "a share above zero"],
    ["origin", undefined, "a text"],
    ["share", "3 %", "only the keys of the study format"],
  ])("is refused for %s = %s", (field, value, allowed) => {
    expect(problemsIn(editedText([[`${infested}.fouled`, { ...counts, [field]: value }]]))).toMatchObject([
      { path: `${path(infested)}.fouled.${field}`, allowed: expect.stringContaining(allowed) },
    ]);
  });

  it("is refused without a chance in either way", () => {
    expect(problemsIn(editedText([[`${infested}.fouled`, absent]]))).toMatchObject([
      { path: `${path(infested)}.fouled`, found: "nothing", remedy: "Add it." },
    ]);
  });
});

describe("a log of own seasons in a study", () => {
  const seasons = log("2025,infested-30-days,100,80,5", "2026,infested-30-days,140,90,4");

  it("updates the classes in it, and no others", () => {
    // By hand: 3 % worth 100 boats, 9 fouled of 240: (3 + 9)/(100 + 240).
    const edits = [["boats.seasons", seasons]] as const;
    expect(chanceOf("infested-30-days", edits)).toBeCloseTo(12 / (priorSample + 240), 14);
    expect(chanceOf("long-moored", edits)).toBe(chanceOf("long-moored", []));
  });

  it("is told of by line: a class that the study lacks, and more fouled than screened", () => {
    const wrong = log("2025,infested-30-days,100,80,5", "2025,kayaks,10,0,0", "2026,long-moored,10,10,11");
    expect(problemsIn(editedText([["boats.seasons", wrong]]))).toMatchObject([
      {
        path: "boats.seasons.csv, line 3",
        found: 'class "kayaks"',
        allowed: expect.stringContaining("never-left"),
      },
      { path: "boats.seasons.csv, line 4", found: "fouled 11 of 10 screened" },
    ]);
  });

  it("may confirm a chance of none, but not show otherwise", () => {
    const none = log("2025,never-left,500,0,0");
    expect(chanceOf("never-left", [["boats.seasons", none]])).toBe(0);
    expect(problemsIn(editedText([["boats.seasons", log("2025,never-left,500,3,1")]]))).toMatchObject([
      {
        path: "boats.seasons.csv, line 2",
        found: 'fouled 1 of 500 screened of "never-left", whose share fouled is 0 %',
        remedy: expect.stringContaining("above 0 %"),
      },
    ]);
  });

  it("uses the assumption of what an entered chance weighs, and says so only then", () => {
    const set = realSet();
    const overrides = [{ id: "learning.prior-sample", value: 50, reason: "for this test" }];
    const { chances } = prepareStudy(
      read([
        ["boats.seasons", seasons],
        ["overrides", overrides],
      ]),
      set,
    );
    // By hand: 3 % worth 50 boats: (1.5 + 9)/(50 + 240).
    expect(chances[2]?.fouled).toBeCloseTo(10.5 / 290, 14);
    expect(prepareStudy(read([["boats.seasons", seasons]]), set).inputAssumptions).toContain(
      "learning.prior-sample",
    );
    expect(prepareStudy(read([]), set).inputAssumptions).not.toContain("learning.prior-sample");
    expect(runStudy(read([["boats.seasons", seasons]]), set).usedAssumptions).toContain(
      "learning.prior-sample",
    );
  });
});

describe("what a class's boats are like", () => {
  it("changes no result", () => {
    const described = [
      [`${infested}.lastWater`, "clean"],
      [`${infested}.moored`, true],
      [`${infested}.residualWater`, "standing"],
    ] as const;
    expect(modelOf(read(described))).toEqual(modelOf(read([])));
  });
});
