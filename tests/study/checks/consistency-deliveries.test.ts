import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { readStudyText } from "../../../src/study/reading/read.js";
import { editedText, exampleDocument, problemsIn, valueAt, wordsOfTheProgram } from "../example.js";

const folder = fileURLToPath(new URL("../../bad/structures", import.meta.url));
const others: readonly unknown[] = Object(valueAt(exampleDocument(), "structures"));

/** Each file of one structure, with the place below it that is told, what was found and what is allowed. */
const badFiles = [
  ["plant-without-water", "delivered", "no water in any month", "water above zero"],
  // By hand: 200,000 m³ in the 31 days of July are 0.0747 m³/s.
  ["canal-below-its-delivery", "canal.capacity", "50 l/s", "at least the mean flow"],
  ["sprinklers-on-surface-irrigation", "sprinklerCount", "400", "no value"],
  ["nozzle-as-wide-as-its-lateral", "nozzleBore", "100 mm", "below that of the pipe"],
  ["pump-with-margin-and-curve", "pump.marginHead", "both marginHead and curve", "exactly one"],
  ["pump-too-weak-for-its-lift", "pump.curve", "ft at the demand of ", "the lift and the loss"],
  ["pump-with-a-level-and-no-curve", "pump.deliveryElevation", "670 m", "no value"],
  ["laterals-without-roughness", "laterals.roughness", "neither", "exactly one"],
  ["land-of-no-area", "area", "0 ha", "above zero"],
  ["hatchery-without-flow", "requiredFlow", "no flow in any month", "flow above zero"],
  ["aeration-above-its-head", "aerationHead", "5 m", "less than the head available"],
  ["duty-without-origin", "duties[0].origin", "nothing", "a text"],
  ["works-without-water", "treated", "no flow in any month", "flow above zero"],
  ["works-without-effect", "tasteAndOdour", "neither tasteAndOdour nor byProducts", "at least one"],
  ["works-on-an-unknown-intake", "intake", '"north-intake"', "city-intake, irrigation-intake"],
  ["taste-without-origin", "tasteAndOdour.origin", "nothing", "a text"],
] as const;

const read = (name: string): Record<string, unknown> =>
  Object(parse(readFileSync(join(folder, `${name}.yaml`), "utf8")));

const textWith = (structure: object) => editedText([["structures", [...others, structure]]]);

describe("a structure that serves land, fish or water works", () => {
  it.each(badFiles)("is refused for its one mistake: %s", (name, place, found, allowed) => {
    const structure = read(name);
    const problems = problemsIn(textWith(structure));
    expect(problems).toEqual([
      {
        path: `structures[${others.length} "${structure.id}"].${place}`,
        found: expect.stringContaining(found),
        allowed: expect.stringContaining(allowed),
        remedy: expect.stringMatching(/^[A-Z].*\.$/),
      },
    ]);
    for (const part of Object.values(problems[0] ?? {})) expect(wordsOfTheProgram(part)).toBeUndefined();
  });

  it("is tested with every file of the folder", () => {
    const names = readdirSync(folder).map((file) => file.replace(/\.yaml$/, ""));
    expect([...names].sort()).toEqual(badFiles.map(([name]) => name).sort());
  });

  it.each([
    ["nozzle-as-wide-as-its-lateral", { nozzleBore: "4 mm" }],
    ["canal-below-its-delivery", { canal: { length: "900 m", bottomWidth: "0.6 m", depth: "0.5 m" } }],
    ["aeration-above-its-head", { aerationHead: "1 m" }],
    ["works-on-an-unknown-intake", { intake: "city-intake" }],
  ])("is read once the mistake is mended: %s", (name, mended) => {
    const { structures } = readStudyText(textWith({ ...read(name), ...mended }), "study.yaml");
    expect(structures.at(-1)?.id).toBe(read(name).id);
  });
});
