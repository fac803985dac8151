import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { draftOf } from "../../src/editor/draft.js";
import { type Field, studyFields } from "../../src/editor/fields.js";
import { problemText } from "../../src/editor/form-node.js";
import { pageWords } from "../../src/editor/page-words.js";
import { editedText } from "../study/example.js";

describe("messages beside fields", () => {
  it.each([
    [
      "an id from money.bearers: town, county",
      "one of those who are named under “Money and who pays”: town, county",
    ],
    ["an id of boats.sites: gate, cove", "one of those under “Sites”: gate, cove"],
    ["an id from lake.otherSchedules: none", "one of those under “Other schedules”: none"],
    ["ids, or ids with shares such as { city: 60 % }", "ids, or several of them with shares"],
    ["the id of an option: none, gate", "an option: none, gate"],
    ["scaled to boats.launches", "scaled to “Launches”"],
    ["neither roughness nor hazenWilliamsC", "neither roughness nor “Hazen–Williams C”"],
    ["true or false", "Yes or No"],
    ["add the missing year to money.indexValues", "add the missing year to “Index values”"],
    // What was typed and units stay.
    ['found "bigPipe", allowed: 58 $/kWh, 20 degC', 'found "bigPipe", allowed: 58 $/kWh, 20 degC'],
  ])("say %s in the words of the page", (text, words) => {
    expect(pageWords(text)).toBe(words);
  });

  it("name no place of the file in a study with one mistake in each of some fields", () => {
    const text = editedText([
      ["structures[irrigation-intake].bearer", "nobody"],
      ["money.programBearer", "nobody"],
      ["structures[hydropower].conduit", 5],
      ["boats.classes[0].share", "5 %"],
    ]);
    const told = draftOf(text, "study.yaml").problems.map(problemText);
    expect(told.length).toBeGreaterThan(2);
    for (const each of told) expect(each).not.toMatch(/money\.|structures\[|boats\.|lake\./);
  });
});

describe("labels and explanations of fields", () => {
  it("say who pays in one way", () => {
    const texts = (field: Field): string[] => {
      switch (field.kind) {
        case "group":
          return field.fields.flatMap((each) => [each.label, each.help, ...texts(each.field)]);
        case "list":
          return texts(field.item);
        case "kinds":
        case "either":
          return field.ways.flatMap((way) => texts(way.field));
        default:
          return [];
      }
    };
    const all = texts(studyFields());
    expect(all).toContain("Who pays for the program");
    expect(all.filter((text) => /bearer/i.test(text))).toEqual([]);
  });
});

describe("what two fields need together", () => {
  const problemsOf = (structure: object) => {
    const document = { ...parse(editedText([])), structures: [structure] };
    return draftOf(JSON.stringify(document), "study.json").problems.filter(
      ({ found }) => found === "nothing",
    );
  };

  it("is told of a structure of which nothing else is entered yet", () => {
    const told = problemsOf({ id: "a", kind: "intake" });
    expect(told).toContainEqual(
      expect.objectContaining({ at: ["structures", 0, "conduit", "roughness"], found: "nothing" }),
    );
  });

  it("is told of a dock as soon as it is said to float", () => {
    const depth = expect.objectContaining({ at: ["structures", 0, "depth"] });
    expect(problemsOf({ id: "a", kind: "dock", floating: true })).toContainEqual(depth);
    expect(problemsOf({ id: "a", kind: "dock" })).not.toContainEqual(depth);
  });

  it("is told once, and no more once one of them is there", () => {
    const conduit = { hazenWilliamsC: 120 };
    const told = problemsOf({ id: "a", kind: "intake", conduit });
    expect(told.filter(({ path }) => path.endsWith("roughness"))).toEqual([]);
    expect(
      problemsOf({ id: "a", kind: "intake" }).filter(({ path }) => path.endsWith("roughness")),
    ).toHaveLength(1);
  });
});
