import { describe, expect, it, vi } from "vitest";
import { resultsJson } from "../../src/report/results/results.js";
import { comparedRun } from "../../src/study/compared/compared.js";
import { runStudy } from "../../src/study/prepare/compute.js";
import { InputError, type Problem } from "../../src/study/reading/problems.js";
import { readStudyText } from "../../src/study/reading/read.js";
import { assumptions } from "../report/runs.js";
import { editedText } from "../study/example.js";
import { notFinite } from "./fuzz/fault.js";

type Edits = Parameters<typeof editedText>[0];

const computed = (edits: Edits) => runStudy(readStudyText(editedText(edits), "lake.yaml"), assumptions);

function problemsWith(edits: Edits): readonly Problem[] {
  try {
    comparedRun(readStudyText(editedText(edits), "lake.yaml"), assumptions).comparison;
  } catch (error) {
    if (error instanceof InputError) return error.problems;
    throw error;
  }
  return [];
}

/** Each was found by changing the examples at random; the words tell what happened before. */
describe("an input that once went wrong", () => {
  it.each<[string, Edits, Partial<Problem>]>([
    [
      "a yearly cost of a hundred digits, an error of the server's",
      [["options[weekends].yearly[0].unitCost", "$1e150"]],
      { allowed: expect.stringMatching(/of a size that there is; this is too large/) },
    ],
    [
      "a price that many counts carry beyond all amounts, an error of the server's",
      [
        ["options[weekends].yearly[0].unitCost", "$1e10"],
        ["options[weekends].yearly[0].count", 1e8],
      ],
      {
        path: expect.stringMatching(/^options\[\d "weekends"\]$/),
        found: expect.stringMatching(/^1000000000000000000 for/),
      },
    ],
    [
      "a price beyond all amounts while the request is checked, an error of the server's",
      [
        ["options[full-season].yearly[0].unitCost", "$1e10"],
        ["options[full-season].yearly[0].count", 1e8],
      ],
      { path: expect.stringMatching(/^options\[\d "full-season"\]$/) },
    ],
    [
      "a penstock as wide as a planet, an error of the server's",
      [["structures[hydropower].penstock.length", "1e18 ft"]],
      { path: expect.stringMatching(/penstock\.length$/) },
    ],
    [
      "equipment that lasts no time at all, an endless yearly cost",
      [["options[equipment].equipment[0].life", 1.3e-123]],
      { allowed: "a life of at least 0.1 years" },
    ],
    [
      "a pipe shorter than an atom, endless in its summary",
      [["structures[hydropower].coolingWater.length", "4.7e-39 ft"]],
      { allowed: expect.stringMatching(/of 0, or of a size that there is; this is too small/) },
    ],
  ])("is refused with its place: %s", (_what, edits, problem) => {
    expect(problemsWith(edits)).toContainEqual(expect.objectContaining(problem));
  });

  it("a key written as nothing is told with its place, which was empty", () => {
    const read = () => readStudyText(editedText([]).replace(/^study:/m, '"": 1\nstudy:'), "lake.yaml");
    expect(read).toThrow('"": found an unknown key');
  });

  it.each([
    ["a byte order mark", "\uFEFF", '"U+FEFF": found an unknown key'],
    ["a space that does not break", "\u00A0", '"U+00A0": found an unknown key'],
    ["a letter and an end of line", "a\u2028", '"aU+2028": found an unknown key'],
  ])("a key of what no reader sees is told by its code, which was blank: %s", (_what, key, told) => {
    const read = () => readStudyText(JSON.stringify({ [key]: 1 }), "lake.json");
    expect(read).toThrow(told);
  });

  it("a key that is a group is refused without a word in the log, which held its text", () => {
    const warned = vi.spyOn(process, "emitWarning").mockImplementation(() => undefined);
    const read = () => readStudyText(editedText([]).replace(/^study:/m, "{ this }: 1\nstudy:"), "lake.yaml");
    expect(read).toThrow("found an unknown key");
    expect(warned).not.toHaveBeenCalled();
    warned.mockRestore();
  });

  it.each(["0 mg/L", "1e-7 mg/L"])(
    "water of %s oxygen lets nothing live, without an endless mortality",
    (oxygen) => {
      const { comparison } = computed([["lake.chemistry.oxygen", oxygen]]);
      expect(notFinite([comparison.structures, comparison.schedules])).toBeUndefined();
    },
  );

  it("a pipe too short for its friction to show beside its bends has a finite Hazen–Williams C", () => {
    const run = computed([["structures[hydropower].coolingWater.length", "1e-11 m"]]);
    expect(notFinite(resultsJson(run))).toBeUndefined();
    expect(notFinite(run.comparison.structures)).toBeUndefined();
  });
});
