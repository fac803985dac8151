import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import type { Source } from "../../src/assumptions/entry.js";
import { habitatFile, readHabitatLakes } from "../../src/assumptions/habitat/read-lakes.js";
import { realSet } from "./real.js";

const sources = new Map<string, Source>([["survey", { citation: "Survey", read: "text" }]]);
const lake = {
  name: "Made-up Lake",
  region: "nowhere",
  species: "zebra",
  water: { calcium: 30 },
  waterSource: "survey",
  infestedSource: "survey",
};

function read(...lakes: readonly object[]) {
  const problems: string[] = [];
  const files = new Map([[habitatFile, stringify({ lakes, leftOut: ["Other Lake"] })]]);
  return { found: readHabitatLakes(files, sources, undefined, problems), problems };
}

describe("the infested lakes against which classes of habitat are held", () => {
  const { habitatLakes, sources: shippedSources } = realSet();

  it("name sources that are cited, of their water and of their mussels", () => {
    for (const { waterSource, infestedSource } of habitatLakes.lakes) {
      expect(shippedSources.get(waterSource)?.citation).toMatch(/\w/);
      expect(shippedSources.get(infestedSource)?.citation).toMatch(/\w/);
    }
  });

  it("are those of this version for files of an earlier one, which had none", () => {
    expect(readHabitatLakes(new Map(), sources, habitatLakes, [])).toBe(habitatLakes);
  });

  it("are read as they are written", () => {
    expect(read(lake)).toEqual({ found: { lakes: [lake], leftOut: ["Other Lake"] }, problems: [] });
  });

  it.each([
    ["no water", [{ ...lake, water: {} }], "Made-up Lake, water"],
    ["no calcium in its calcium", [{ ...lake, water: { calcium: 0 } }], "Made-up Lake, water, calcium is 0"],
    ["a mussel of another kind", [{ ...lake, species: "golden" }], 'Made-up Lake, species is "golden"'],
    ["an unknown key", [{ ...lake, depth: 4 }], 'Made-up Lake has an unknown key "depth"'],
    ["an unknown source", [{ ...lake, waterSource: "a-friend" }], 'names the source "a-friend"'],
    ["a lake given twice", [lake, lake], "Made-up Lake stands here a second time"],
    ["a lake that is left out as well", [lake, { ...lake, name: "Other Lake" }], "Other Lake stands here"],
  ])("are refused with %s, by file, place and remedy", (_mistake, lakes, words) => {
    const { problems } = read(...lakes);
    expect(problems).toEqual([expect.stringContaining(words)]);
    expect(problems[0]).toMatch(/^habitat-lakes\.yaml: .*(Correct|Add|Keep) .*\.$/);
  });
});
