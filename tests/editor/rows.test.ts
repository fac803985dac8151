import { describe, expect, it } from "vitest";
import { fieldAt } from "../../src/editor/field-at.js";
import { rowTitle } from "../../src/editor/rows.js";
import type { Place } from "../../src/editor/study-text.js";

const document = {
  money: { startYear: 2027 },
  boats: { classes: [{ id: "trailered", name: "Trailered boats" }] },
};

function titles(at: Place, rows: readonly object[], study: unknown = document): string[] {
  const field = fieldAt(at, study);
  if (field?.kind !== "list") throw new Error(`no list at ${at.join("/")}`);
  return rows.map((row, index) => rowTitle(field, row, index, study));
}

// The words of the study's own schema; years count from money.startYear, as the report's table of growth prints them.
describe("a row of a list", () => {
  it("is called by its name, or its id", () => {
    expect(titles(["money", "bearers"], [{ id: "city", name: "The city" }, { id: "marina" }])).toEqual([
      "The city",
      "marina",
    ]);
  });

  it("is called by the year that it stands for", () => {
    const rows = [{ reach: "60 %", cost: "85 %" }, {}];
    expect(titles(["options", 0, "rampUp"], rows)).toEqual(["2027", "2028"]);
    expect(titles(["options", 0, "rampUp"], rows, { money: {} })).toEqual(["Year 1", "Year 2"]);
  });

  it("is called by its first value in words, and counted while it is empty", () => {
    const groups = [{ group: "water", rate: "1 %/yr" }, {}];
    expect(titles(["money", "escalation"], groups)).toEqual(["Water", "Row 2"]);
    expect(titles(["lake", "drawdown"], [{ on: "mar 1", elevation: "12 m" }])).toEqual(["mar 1"]);
    expect(titles(["report", "texts"], [{ section: "bearers", text: "Agreed." }])).toEqual(["Who pays"]);
    const seals = [{ vesselClass: "trailered" }, { vesselClass: "gone" }];
    expect(titles(["options", 0, "steps", "seals"], seals)).toEqual(["Trailered boats", "gone"]);
    const hours = [{ dayTypes: ["summer-weekend", "fridays"], from: "06:00" }, { from: "07:00" }];
    expect(titles(["options", 0, "open"], hours)).toEqual(["Summer weekend, Fridays", "07:00"]);
  });
});
