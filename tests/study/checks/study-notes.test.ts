import { describe, expect, it } from "vitest";
import { studyNotes as notesBeside } from "../../../src/study/checks/study-notes.js";
import { movedSections } from "../../../src/study/format/report-schema.js";
import type { StudyDocument } from "../../../src/study/format/schema.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { ninemossText } from "../../editor/ninemoss.js";
import { assumptions } from "../../report/runs.js";
import { editedText } from "../example.js";

const studyNotes = (document: StudyDocument) => notesBeside(document, assumptions);

const leavingOut = (...sections: readonly string[]) =>
  readStudyText(`${ninemossText}\nreport: { leaveOut: [${sections.join(", ")}] }\n`, "lake.yaml");

// Sections that reports had until they went to the method document.
describe("sections that no report has any more", () => {
  it("may stand in a study, and are told to its author at their place", () => {
    expect(movedSections).toEqual(["relations", "worked", "drying"]);
    const notes = studyNotes(leavingOut("odds", ...movedSections));
    expect(notes.map(({ path }) => path)).toEqual([1, 2, 3].map((index) => `report.leaveOut[${index}]`));
    expect(notes.map(({ found }) => found)).toContain('"worked", which is in the method document now');
    expect(notes.every(({ unusual }) => unusual)).toBe(true);
  });

  it("are told of nothing else", () => {
    expect(studyNotes(leavingOut("odds", "hydraulics"))).toEqual([]);
  });
});

describe("a yearly chance of the author's own", () => {
  const own = { chance: "2 %/yr", origin: "judged by the board" };
  const notesOf = (ownRate: object) =>
    studyNotes(
      readStudyText(
        editedText([
          ["study.existingOption", "weekends"],
          ["boats.chance", { ownRate }],
        ]),
        "lake.yaml",
      ),
    );

  it("is told to hold the checks of the program in force, maybe, where it does not say under which it was seen", () => {
    // Sorrel Bend has weekend stations in force.
    expect(notesOf(own)).toMatchObject([
      {
        path: "boats.chance.ownRate.under",
        found: "nothing, while “Weekend stations” is in force",
        unusual: true,
      },
    ]);
    expect(notesOf({ ...own, under: "weekends" })).toEqual([]);
    expect(notesOf({ ...own, under: "none" })).toEqual([]);
  });
});

describe("a price year whose index is not published yet", () => {
  // The table of consumer prices ends with 2025.
  const notesOf = (year: number) =>
    studyNotes(readStudyText(editedText([["money.priceYear", year]]), "a.yaml"));

  it("is told with the year whose index stands for it", () => {
    expect(notesOf(2026)).toMatchObject([
      {
        path: "money.priceYear",
        found: expect.stringContaining("2026"),
        remedy: expect.stringContaining("2025"),
      },
    ]);
    expect(notesOf(2025)).toEqual([]);
  });
});
