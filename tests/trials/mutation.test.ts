import fc from "fast-check";
import { describe, expect, it } from "vitest";
import * as declared from "./mutation/collect.js";
import { Sample } from "./mutation/sample.js";
import quick from "./mutation/stand-ins/fast-check.js";
import { filesInOrder, shareLoading } from "./mutation/unmutated-run.js";

describe("tests declared for the mutation runner", () => {
  it("have the names of their groups, a place for each row, and their values", async () => {
    const seen: unknown[] = [];
    declared.takeCollected();
    declared.describe("pipes", () => {
      declared.it.each([
        [1, 2],
        [3, 4],
      ])("of %d", (...row: unknown[]) => seen.push(row));
      declared.it.each([{ bore: 5 }])("of $bore", (row: unknown) => seen.push(row), 60_000);
    });
    declared.test("alone", () => seen.push("alone"));
    const tests = declared.takeCollected();
    expect(tests.map(({ name }) => name)).toEqual([
      "pipes > of %d #1",
      "pipes > of %d #2",
      "pipes > of $bore #1",
      "alone",
    ]);
    for (const { run } of tests) await run();
    expect(seen).toEqual([[1, 2], [3, 4], { bore: 5 }, "alone"]);
    expect(declared.takeCollected()).toEqual([]);
  });

  it("are prepared once, by what stands before all tests of the file and of their group", async () => {
    const order: string[] = [];
    declared.beforeAll(() => order.push("file"));
    declared.describe("group", () => {
      declared.beforeAll(() => order.push("group"));
      declared.it("first", () => order.push("first"));
      declared.it("second", () => order.push("second"));
    });
    for (const { run } of declared.takeCollected()) await run();
    expect(order).toEqual(["file", "group", "first", "second"]);
  });
});

describe("properties for the mutation runner", () => {
  it("are tried a few times, and end at the first failure", () => {
    let runs = 0;
    const counted = (holds: () => boolean) =>
      fc.property(fc.integer(), () => {
        runs++;
        return holds();
      });
    quick.assert(
      counted(() => true),
      { numRuns: 500 },
    );
    expect(runs).toBe(15);
    runs = 0;
    expect(() => quick.assert(counted(() => false))).toThrow("Property failed");
    expect(runs).toBe(1);
  });
});

describe("the run without a mutant", () => {
  it("shares what the loading of a file met among the file's tests", () => {
    const coverage = { static: {}, perTest: { "a.test.ts": { "7": 2 }, "a.test.ts#x": { "7": 1, "8": 4 } } };
    shareLoading(coverage, "a.test.ts", ["a.test.ts#x", "a.test.ts#y"]);
    expect(coverage.perTest).toEqual({ "a.test.ts#x": { "7": 3, "8": 4 }, "a.test.ts#y": { "7": 2 } });
  });

  it("orders files by their time, with patience for that of the module and those of its folder", () => {
    const times = {
      "tests/model/root-search.test.ts#a": 1,
      "tests/model/lake/levels.test.ts#a": 90,
      "tests/model/lake/storage.test.ts#a": 50,
      "tests/model/compare.test.ts#a": 8,
      "tests/model/compare.test.ts#b": 8,
      "tests/model/risk/beta.test.ts#a": 10,
    };
    expect(filesInOrder(new Set(Object.keys(times)), "src/model/lake/levels.ts", times)).toEqual([
      "tests/model/root-search.test.ts",
      "tests/model/lake/levels.test.ts",
      "tests/model/risk/beta.test.ts",
      "tests/model/lake/storage.test.ts",
      "tests/model/compare.test.ts",
    ]);
  });
});

describe("a sample of mutants", () => {
  it("is every nth by its number, from the first on", async () => {
    const mutants = ["0", "14", "15", "16", "30"].map((id) => ({
      id,
      fileName: "src/model/root-search.ts",
      location: { start: { line: 0, column: 0 }, end: { line: 0, column: 1 } },
      mutatorName: "BooleanLiteral",
      replacement: "true",
    }));
    const sample = new Sample({ sample: { oneIn: 15 } });
    expect(await sample.group(mutants)).toEqual([mutants.map(({ id }) => id)]);
    const checked = await sample.check(mutants);
    const through = mutants.filter(({ id }) => checked[id]?.status === "passed");
    expect(through.map(({ id }) => id)).toEqual(["0", "15", "30"]);
  });
});
