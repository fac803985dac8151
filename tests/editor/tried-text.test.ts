import { describe, expect, it } from "vitest";
import { type Edit, edited, rawOf } from "../../src/editor/study-text.js";
import { triedText } from "../../src/editor/tried-text.js";
import { exampleText } from "../study/example.js";

const text = exampleText("sorrel-bend");

describe("a text that is tried", () => {
  const edits: [string, Edit[]][] = [
    ["no change", []],
    ["another value", [{ at: ["boats", "launches", "jul"], value: "12" }]],
    ["a value in groups that are not there", [{ at: ["lake", "made", "up", 0, "here"], value: 1 }]],
    ["a value that goes", [{ at: ["lake", "description"], remove: true }]],
    ["a row that goes", [{ at: ["structures", 1], remove: true }]],
    ["a group in place of a value", [{ at: ["lake", "name", "inside"], value: "x" }]],
  ];

  it.each(edits)("has %s as the saved text has", (_what, each) => {
    expect(JSON.parse(triedText(rawOf(text, "a study"), each))).toEqual(rawOf(edited(text, each), "a study"));
  });

  it("gives each place of an alias its own value", () => {
    const shared = "a: &one { x: 1 }\nb: *one\n";
    expect(JSON.parse(triedText(rawOf(shared, "s"), [{ at: ["b", "x"], value: 2 }]))).toEqual({
      a: { x: 1 },
      b: { x: 2 },
    });
  });

  it("is read as the same document as YAML", () => {
    const document = rawOf(text, "a study");
    expect(rawOf(triedText(document, []), "tried")).toEqual(document);
  });
});
