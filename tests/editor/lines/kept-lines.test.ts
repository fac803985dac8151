import { check, constantFrom, property } from "fast-check";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { type Edit, edited } from "../../../src/editor/study-text.js";
import { exampleText } from "../../study/example.js";

const text = exampleText("sorrel-bend");

/** Lines of one text that the other has not, as often as it has not. */
function linesGone(before: string, after: string): string[] {
  const left = after.split("\n");
  return before.split("\n").filter((line) => {
    const place = left.indexOf(line);
    if (place < 0) return true;
    left.splice(place, 1);
    return false;
  });
}

const tenEdits: Edit[] = [
  { at: ["study", "name"], value: "Another name" },
  { at: ["lake", "chemistry", "calcium"], value: "21 mg/L" },
  { at: ["lake", "surfaceTemperature", "jul"], value: "71 degF" },
  { at: ["lake", "drawdown", 0, "elevation"], value: "1835 ft" },
  { at: ["money", "priceYear"], value: 2024 },
  { at: ["money", "horizon"], value: 40 },
  { at: ["structures", 0, "name"], value: "City intake, north" },
  { at: ["boats", "classes", 0, "share"], value: "60 %" },
  { at: ["options", 1, "name"], value: "Weekends" },
  { at: ["study", "board"], value: "The board" },
];

describe("a text that is edited", () => {
  it("keeps all lines but those of ten edits", () => {
    const changed = edited(text, tenEdits);
    const expected = parse(text);
    for (const edit of tenEdits) {
      const holder = edit.at.slice(0, -1).reduce((found, key) => found[key], expected);
      if ("value" in edit) holder[edit.at.at(-1) ?? ""] = edit.value;
    }
    expect(parse(changed)).toEqual(expected);
    expect(linesGone(text, changed)).toHaveLength(tenEdits.length);
    expect(linesGone(changed, text)).toHaveLength(tenEdits.length);
  });

  it.each<[string, string, Edit[], string]>([
    [
      "a value within braces",
      "a: {  b: 1,   c: x } # why\n",
      [{ at: ["a", "c"], value: "y" }],
      "a: {  b: 1,   c: y } # why\n",
    ],
    [
      "quotes",
      "a: \"x\"\nb: 'y'\n",
      [
        { at: ["a"], value: "z" },
        { at: ["b"], value: "it's" },
      ],
      "a: \"z\"\nb: 'it''s'\n",
    ],
    [
      "a text that needs quotes in braces",
      "a: { b: 1 }\n",
      [{ at: ["a", "b"], value: "1, 2" }],
      'a: { b: "1, 2" }\n',
    ],
    [
      "a key added",
      "a:\n    b: 1 # one\nc: 2\n",
      [{ at: ["a", "d"], value: "x" }],
      "a:\n    b: 1 # one\n    d: x\nc: 2\n",
    ],
    [
      "a key taken away",
      "a:\n  b: 1\n  # of d\n  d: 2\nc: 3\n",
      [{ at: ["a", "b"], remove: true }],
      "a:\n  # of d\n  d: 2\nc: 3\n",
    ],
    [
      "a row added",
      "a:\n- { b: 1 }\n# end\n",
      [{ at: ["a", 1], value: { b: 2 } }],
      "a:\n- { b: 1 }\n- { b: 2 }\n# end\n",
    ],
    [
      "a row taken away",
      "a:\n  - b: 1\n    c: 2\n  - b: 3 # three\n",
      [{ at: ["a", 0], remove: true }],
      "a:\n  - b: 3 # three\n",
    ],
    [
      "rows moved",
      "a:\n  - b: 1 # one\n  - b: 3 # three\n",
      [{ at: ["a", 1], moveTo: 0 }],
      "a:\n  - b: 3 # three\n  - b: 1 # one\n",
    ],
    [
      "a long text",
      "a:\n  csv: |\n    1,2\n  b: 1\n",
      [{ at: ["a", "csv"], value: "3,4\n5,6\n" }],
      "a:\n  csv: |\n    3,4\n    5,6\n  b: 1\n",
    ],
    ["an empty place filled", "a:\nb: 1 # one\n", [{ at: ["a", "c"], value: 2 }], "a:\n  c: 2\nb: 1 # one\n"],
    [
      "lines that end as others do",
      "a: 1\r\nb: 2\r\n",
      [{ at: ["c"], value: 3 }],
      "a: 1\r\nb: 2\r\nc: 3\r\n",
    ],
    ["no line at the end", "a: 1", [{ at: ["b"], value: 2 }], "a: 1\nb: 2"],
  ])("keeps %s", (_what, before, edits, after) => {
    expect(edited(before, edits)).toBe(after);
  });

  it("writes a text with aliases anew, and says the same", () => {
    const aliased = "a: &x { b: 1 }\nc: *x\n";
    expect(parse(edited(aliased, [{ at: ["c", "b"], value: 2 }]))).toEqual({ a: { b: 1 }, c: { b: 2 } });
  });

  /** Every place of the example, a value put there or taken away: the content is right, and at most its own lines go. */
  it("says what it should for any edit of an example", () => {
    const content = parse(text);
    const places = placesIn(content);
    const anywhere = constantFrom(...places);
    const kinds = constantFrom("put", "remove", "group");
    const result = check(
      property(anywhere, kinds, (at, kind) => {
        const edit: Edit =
          kind === "remove" ? { at, remove: true } : { at, value: kind === "put" ? "1, # x" : { y: "z: 1" } };
        const changed = edited(text, [edit]);
        const expected = structuredClone(content);
        const holder = at.slice(0, -1).reduce((found, key) => found[key], expected);
        const key = at.at(-1) ?? "";
        if ("value" in edit) holder[key] = edit.value;
        else if (Array.isArray(holder)) holder.splice(Number(key), 1);
        else delete holder[key];
        expect(parse(changed)).toEqual(expected);
        const own = JSON.stringify(at.reduce((found, each) => found[each], content)).length;
        expect(linesGone(text, changed).length).toBeLessThanOrEqual(2 + own);
      }),
      { numRuns: 60, seed: 7 },
    );
    expect(result.counterexample).toBeNull();
  });
});

type Place = Edit["at"];

function placesIn(value: unknown, at: Place = []): Place[] {
  if (typeof value !== "object" || value === null) return at.length > 1 ? [at] : [];
  const inner = Object.entries(value).flatMap(([key, each]) =>
    placesIn(each, [...at, Array.isArray(value) ? Number(key) : key]),
  );
  return at.length > 1 ? [at, ...inner] : inner;
}
