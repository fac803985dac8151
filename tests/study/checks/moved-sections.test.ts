import { describe, expect, it } from "vitest";
import { movedSectionNotes } from "../../../src/study/checks/moved-sections.js";
import { movedSections } from "../../../src/study/format/report-schema.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { ninemossText } from "../../editor/ninemoss.js";

const leavingOut = (...sections: readonly string[]) =>
  readStudyText(`${ninemossText}\nreport: { leaveOut: [${sections.join(", ")}] }\n`, "lake.yaml");

// Sections that reports had until they went to the method document.
describe("sections that no report has any more", () => {
  it("may stand in a study, and are told to its author at their place", () => {
    expect(movedSections).toEqual(["relations", "worked", "drying"]);
    const notes = movedSectionNotes(leavingOut("odds", ...movedSections));
    expect(notes.map(({ path }) => path)).toEqual([1, 2, 3].map((index) => `report.leaveOut[${index}]`));
    expect(notes.map(({ found }) => found)).toContain('"worked", which is in the method document now');
    expect(notes.every(({ unusual }) => unusual)).toBe(true);
  });

  it("are told of nothing else", () => {
    expect(movedSectionNotes(leavingOut("odds", "hydraulics"))).toEqual([]);
  });
});
