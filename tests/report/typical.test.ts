import { describe, expect, it } from "vitest";
import { typicalView } from "../../src/report/document/typical-table.js";
import { readStudyText } from "../../src/study/reading/read.js";
import { exampleText } from "../study/example.js";
import { studyFrom } from "../study/short/facts.js";

describe("the report's list of typical values", () => {
  const { study } = studyFrom({ name: "Blue Lake", units: "si", docks: { slips: 50 } });
  const view = typicalView(study, { netBenefit: 0, tornado: [], ranks: [], typicalShare: 0.625 });
  const textOf = (owner: string) =>
    view?.table.rows.find(({ cells }) => cells[0]?.text === owner)?.cells[1]?.text ?? "";

  it("tells them by what they are of, each as it is written", () => {
    // 50 slips at 8 m² (3 to 18) on two docks: 25 each
    expect(textOf("Docks")).toContain("wetted area 75 to 200 to 450 m2");
    expect(textOf("Docks")).toContain("floating yes");
    expect(textOf("Blue Lake")).toContain("air temperature (12 values)");
    expect(textOf("Blue Lake")).toContain("humidity 45 to 65 to 82 %");
    expect(textOf("Money")).toContain("horizon 30");
  });

  it("says how much of the answer rests on them", () => {
    expect(view?.text).toContain("They account for 63% of what moves the answer.");
    expect(typicalView(study, undefined)?.text).not.toContain("They account for");
  });

  it("is in no report of a study without", () => {
    expect(typicalView(readStudyText(exampleText("ninemoss"), "ninemoss.yaml"), undefined)).toBeUndefined();
  });
});
