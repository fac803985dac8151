import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { readStudyText } from "../../../src/study/reading/read.js";
import { editedText, problemsIn, wordsOfTheProgram } from "../example.js";

const folder = fileURLToPath(new URL("../../bad/chance", import.meta.url));

/** Each file of places of the example and what is put there, with the place that is told, what was found and is allowed. */
const badFiles = [
  [
    "source-by-year-and-by-chance",
    "boats.otherWays[0].becomesInfested",
    "5 %/yr beside infestedFrom: 2030",
    "not both",
  ],
  ["source-beyond-the-horizon", "boats.otherWays[1].infestedFrom", "2190", "the last of the horizon"],
  ["ways-of-one-name", "boats.otherWays[1].name", '"Gear and aircraft" a second time', "a name used once"],
  [
    "own-rate-below-other-ways",
    "boats.chance.ownRate.chance",
    "0.1 %/yr, no more than the other ways",
    "all ways in",
  ],
  ["way-without-origin", "boats.otherWays[0].origin", "nothing", "a text"],
  ["way-of-unknown-kind", "boats.otherWays[0].kind", '"birds"', "one of upstream-water, water-transfer"],
  ["way-more-than-certain", "boats.otherWays[0].chance", '"120 %/yr"', "at most 100 %"],
  ["period-backwards", "boats.cleanPeriods[0].to", "2019", "a year from 2024 on, its first"],
  ["period-in-the-study", "boats.cleanPeriods[0].to", "2040", "a year before"],
  [
    "periods-that-overlap",
    "boats.cleanPeriods[1].from",
    "2019 to 2022, which overlaps 2015 to 2019",
    "each year in one period",
  ],
  [
    "period-of-an-infested-lake",
    "boats.cleanPeriods",
    "clean years of a lake that is infested",
    "none where lake.infestedSince is set",
  ],
  [
    "period-under-an-unknown-option",
    "boats.cleanPeriods[0].under",
    '"patrols"',
    "the id of an option: none, weekends",
  ],
  [
    "own-rate-under-an-unknown-option",
    "boats.chance.ownRate.under",
    '"patrols"',
    "the id of an option: none, weekends",
  ],
  ["own-rate-without-origin", "boats.chance.ownRate.origin", "nothing", "a text"],
  ["unknown-lakes", "boats.chance.lakes", '"quiet"', "one of open, busy, inspected, unknown"],
  ["unknown-driver", "boats.chance.drivenBy", '"boats"', "one of both, launches, lakes"],
  [
    "lakes-alone-without-fouled-boats",
    "boats.chance.drivenBy",
    "lakes, while no class has fouled boats",
    "lakes, where some class has fouled boats",
  ],
] as const;

const textOf = (name: string) => {
  const places: unknown = parse(readFileSync(join(folder, `${name}.yaml`), "utf8"));
  return editedText(Object.entries(Object(places)));
};

describe("ways to the yearly chance that cannot be true", () => {
  it.each(badFiles)("%s is told by place, found, allowed and remedy", (name, path, found, allowed) => {
    const problems = problemsIn(textOf(name));
    expect(problems).toEqual([
      {
        path,
        found: expect.stringContaining(found),
        allowed: expect.stringContaining(allowed),
        remedy: expect.stringMatching(/^[A-Z].*\.$/),
      },
    ]);
    for (const part of Object.values(problems[0] ?? {})) expect(wordsOfTheProgram(part)).toBeUndefined();
  });

  it("each have a file", () => {
    expect(readdirSync(folder).sort()).toEqual(badFiles.map(([name]) => `${name}.yaml`).sort());
  });
});

describe("ways to the yearly chance that go together", () => {
  const origin = "invented";

  it.each([
    ["no other way in at all", [["boats.otherWays", []]]],
    [
      "a source that is infested in the last year of the horizon",
      [
        ["money.startYear", 2027],
        ["money.horizon", 20],
        ["boats.otherWays", [{ name: "Canal", chance: "1 %/yr", infestedFrom: 2046, origin }]],
      ],
    ],
    [
      "periods that follow each other up to the year before the study",
      [
        ["money.startYear", 2027],
        [
          "boats.cleanPeriods",
          [
            { from: 2020, to: 2026, under: "weekends", origin },
            { from: 2015, to: 2019, launches: "80 %", origin },
          ],
        ],
      ],
    ],
    ["comparable lakes alone, with fouled boats", [["boats.chance", { drivenBy: "lakes" }]]],
  ] as const)("are read: %s", (_name, edits) => {
    expect(() => readStudyText(editedText(edits), "study.yaml")).not.toThrow();
  });
});
