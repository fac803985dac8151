import { describe, expect, it } from "vitest";
import { reportContext } from "../../src/report/document/context.js";
import { growthTable } from "../../src/report/ramp/growth-table.js";
import { runStudy } from "../../src/study/prepare/compute.js";
import { readStudyText } from "../../src/study/reading/read.js";
import { assumptionSet } from "../model/assumptions.js";
import { editedText } from "../study/example.js";

const tableOf = (...edits: ReadonlyArray<readonly [string, unknown]>) =>
  growthTable(reportContext(runStudy(readStudyText(editedText(edits), "lake.yaml"), assumptionSet)));

describe("the table of a program's growth", () => {
  it("tells each year in which it is not yet in full", () => {
    const rows = tableOf([
      "options[full-season].rampUp",
      [
        { reach: "50 %", cost: "70 %" },
        { reach: "80 %", cost: "100 %" },
      ],
    ])?.rows.map(({ cells }) => cells.slice(0, 4).map(({ text }) => text));
    expect(rows).toEqual([
      ["Full-season stations", "2027", "50%", "70%"],
      ["Full-season stations", "2028", "80%", "100%"],
    ]);
  });

  it("is absent where all options run in full from the start", () => {
    expect(tableOf()).toBeUndefined();
  });
});
