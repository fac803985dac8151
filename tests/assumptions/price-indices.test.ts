import { cpSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { Source } from "../../src/assumptions/entry.js";
import { AssumptionError, loadAssumptions } from "../../src/assumptions/load.js";
import { readPriceIndices } from "../../src/assumptions/price-indices.js";
import { assumptionsFolder, realSet } from "./real.js";

const sources = new Map<string, Source>([["bureau", { citation: "A bureau", read: "text" }]]);

const part = { basis: "published", source: "bureau", note: "", values: { 2001: 100, 2002: 103 } };
const later = { ...part, values: { 2003: 104 } };
const table = { id: "prices", name: "Prices", parts: [part, later] };

function problemsOf(content: unknown): string[] {
  const problems: string[] = [];
  readPriceIndices(content, sources, problems);
  return problems;
}

describe("a table of a price index", () => {
  it("is one run of values, with where each was read", () => {
    const problems: string[] = [];
    const [index] = readPriceIndices([table], sources, problems);
    expect(problems).toEqual([]);
    expect([...(index?.values ?? [])]).toEqual([
      [2001, 100],
      [2002, 103],
      [2003, 104],
    ]);
    expect(index?.parts.map(({ source }) => source)).toEqual(["bureau", "bureau"]);
  });

  it.each([
    ["a source that is not cited", [{ ...table, parts: [{ ...part, source: "a-friend" }] }], '"a-friend"'],
    ["a year in two parts", [{ ...table, parts: [part, part] }], "2001 in two parts"],
    ["two tables of one name", [table, table], "prices stands here a second time"],
    ["an unknown key", [{ ...table, colour: "red" }], "colour"],
    ["an id in capitals", [{ ...table, id: "CPI U" }], "lower-case words"],
    ["an unknown basis", [{ ...table, parts: [{ ...part, basis: "guessed" }] }], "parts, 1, basis"],
    [
      "a value of nothing",
      [{ ...table, parts: [{ ...part, values: { 2001: 0 } }] }],
      "an index value above 0",
    ],
    ["a value as text", [{ ...table, parts: [{ ...part, values: { 2001: "100" } }] }], "2001"],
    [
      "a month for a year",
      [{ ...table, parts: [{ ...part, values: { "2001-05": 100 } }] }],
      "a year such as",
    ],
    ["a part without years", [{ ...table, parts: [{ ...part, values: {} }] }], "at least one year"],
    ["no parts", [{ ...table, parts: [] }], "at least one part"],
    ["no tables", [], "at least one index"],
    ["no list", {}, "the whole file"],
  ])("is refused for %s, by file, place and remedy", (_mistake, content, words) => {
    const [problem = "", ...more] = problemsOf(content);
    expect(problem.startsWith("price-index.yaml: ")).toBe(true);
    expect(problem).toContain(words);
    expect(problem).toMatch(/(Correct|Keep|Add) .*\.$/);
    if (_mistake !== "a year in two parts") expect(more).toEqual([]);
  });
});

describe("the folder of assumptions", () => {
  it("cites every part of every index, and claims nothing published that is from memory", () => {
    const set = realSet();
    const parts = set.priceIndices.flatMap((index) => index.parts);
    expect(parts.length).toBeGreaterThan(0);
    for (const { source, basis } of parts) {
      const read = set.sources.get(source)?.read;
      expect(read, source).toBeDefined();
      expect(basis === "published" && read === "not read", source).toBe(false);
    }
  });

  it.each([
    ["- id: [", "price-index.yaml: "],
    [
      "- { id: prices, name: Prices, parts: [{ basis: published, source: none, note: '', values: { 2001: 1, 2001: 2 } }] }",
      "unique",
    ],
  ])("is refused at start with a broken table: %s", (content, words) => {
    const folder = mkdtempSync(join(tmpdir(), "assumptions-"));
    try {
      cpSync(assumptionsFolder, folder, { recursive: true });
      writeFileSync(join(folder, "price-index.yaml"), content);
      expect(() => loadAssumptions(folder)).toThrow(AssumptionError);
      expect(() => loadAssumptions(folder)).toThrow(words);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});
