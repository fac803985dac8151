import { describe, expect, it } from "vitest";
import { rawOf } from "../../../src/editor/study-text.js";
import { nameInText } from "../../../src/study/reading/name-in-text.js";
import { deepestGroups, lineNestedTooDeep, mostAliases } from "../../../src/study/reading/nesting.js";

/** Ways to nest so many groups. */
const nested: Readonly<Record<string, (depth: number) => string>> = {
  brackets: (depth) => `a: ${"[".repeat(depth - 1)}${"]".repeat(depth - 1)}`,
  "braces with keys": (depth) => `a: ${"{a: ".repeat(depth - 1)}1${"}".repeat(depth - 1)}`,
  "brackets on lines": (depth) => `a: ${"[\n ".repeat(depth - 1)}${"]".repeat(depth - 1)}`,
  "lists on one line": (depth) => `${"- ".repeat(depth - 1)}x`,
  "keys on one line": (depth) => "a: ".repeat(depth),
  indentation: (depth) => Array.from({ length: depth }, (_, level) => `${" ".repeat(level)}a:`).join("\n"),
  "indentation with blank lines": (depth) =>
    Array.from({ length: depth }, (_, level) => `${" ".repeat(level)}a:\n \n`).join(""),
};

describe("groups nested in one another", () => {
  it.each(Object.entries(nested))("are told before the parser sees them: %s", (_name, text) => {
    expect(lineNestedTooDeep(text(deepestGroups + 2))).toBeDefined();
    expect(lineNestedTooDeep(text(deepestGroups - 2))).toBeUndefined();
  });

  // Without that, 8,000 brackets end the process where the parser's stack ends amid a pattern.
  it.each(Object.entries(nested))("do no harm where a text is kept whatever it holds: %s", (_name, text) => {
    expect(nameInText(text(1500))).toBeUndefined();
    expect(() => rawOf(text(1500), "lake.yaml")).toThrow("nested too deep");
  });

  it("are not counted within texts, and groups that are closed are not around those after them", () => {
    const lines = Array.from(
      { length: 500 },
      (_, index) => `- [{a: ${index}}, "[[[{{{"]\n- |\n     [[ - - -\n`,
    );
    expect(lineNestedTooDeep(lines.join(""))).toBeUndefined();
  });
});

describe("values repeated by their names", () => {
  const repeated = (count: number) => `- &a x\n${"- &b y\n".repeat(count - 3)}- *a\n- *b\n`;

  it("are read where they are few", () => {
    expect(rawOf(repeated(mostAliases), "lake.yaml")).toHaveLength(mostAliases);
  });

  it("are refused where looking them up would take the square of their number", () => {
    expect(() => rawOf(repeated(mostAliases + 1), "lake.yaml")).toThrow(
      "at most 1000. Write the values out.",
    );
  });
});
