import { describe, expect, it } from "vitest";
import { printSettings } from "../../../src/report/print/paper.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { editedText } from "../../study/example.js";

const paperOf = (units: string, paper?: string) => {
  const text = editedText([
    ["study.units", units],
    ...(paper === undefined ? [] : ([["report.paper", paper]] as const)),
  ]);
  return printSettings(readStudyText(text, "a study")).paper;
};

describe("the paper of a report", () => {
  it("goes by the study's units until the study states it", () => {
    expect([paperOf("us"), paperOf("si")]).toEqual(["letter", "a4"]);
    expect([paperOf("us", "a4"), paperOf("si", "letter")]).toEqual(["a4", "letter"]);
  });
});
