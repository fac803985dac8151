import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { absent, editedText, problemsIn, wordsOfTheProgram } from "../example.js";

const folder = fileURLToPath(new URL("../../bad/plant", import.meta.url));

/** Each file of places of the example and what is put there, with the place that is told, what was found and is allowed. */
const badFiles = [
  ["more-hours-than-the-month", "running.hours.feb", "700 h", "at most the hours of feb, 672 h"],
  ["hours-beyond-the-shortest-month", "running.hours", "700 h", "at most the hours of every month, 672 h"],
  ["more-units-than-the-plant-has", "running.units", "2.5", "at most the plant's units, 2"],
  [
    "rated-flow-below-running-flow",
    "turbine.ratedFlow",
    "900 cfs",
    "the largest flow through one unit, 1170 cfs",
  ],
  ["mean-flow-and-running", "flow", "both flow and running", "exactly one of flow and running"],
  ["hours-and-units", "running.hours", "both hours and units", "exactly one of hours and units"],
  ["negative-hours", "running.hours", "-5 h", "at least 0"],
  [
    "tubes-wider-than-their-line",
    "coolingWater.coolers[0].bore",
    "7 in",
    "a tube narrower than its line, 6 in",
  ],
  [
    "orifice-wider-than-its-line",
    "coolingWater.orifices[0].bore",
    "6 in",
    "an orifice narrower than its line, 6 in",
  ],
  ["mesh-of-zero", "coolingWater.strainer.mesh", "0 mm", "above zero"],
  ["screen-of-zero", "coolingWater.strainer.screenArea", "0 ft2", "above zero"],
  ["half-a-tube", "coolingWater.coolers[0].tubes", "12.5", "a whole number of tubes"],
  [
    "strainer-of-unknown-type",
    "coolingWater.strainer.type",
    "triplex",
    "one of simplex, duplex, self-cleaning",
  ],
  [
    "unknown-upstream-structure",
    "coolingWater.upstream",
    '"old-penstock"',
    "the id of another intake, power plant or service line: city-intake, irrigation-intake",
  ],
  ["upstream-of-itself", "coolingWater.upstream", "the structure itself", "the id of another intake"],
  ["upstream-a-dock", "coolingWater.upstream", '"marina"', "the id of another intake"],
] as const;

const textOf = (name: string) => {
  const places: unknown = parse(readFileSync(join(folder, `${name}.yaml`), "utf8"));
  const edits = Object.entries(Object(places)).map(
    ([place, value]) => [place, value === "absent" ? absent : value] as const,
  );
  return editedText(edits);
};

describe("a plant that cannot be as it is entered", () => {
  it.each(badFiles)("%s is told by place, found, allowed and remedy", (name, path, found, allowed) => {
    const problems = problemsIn(textOf(name));
    expect(problems).toEqual([
      {
        path: `structures[2 "powerhouse"].${path}`,
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
