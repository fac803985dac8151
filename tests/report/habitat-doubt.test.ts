import { describe, expect, it } from "vitest";
import { draftOf } from "../../src/editor/draft.js";
import { formOf } from "../../src/editor/form.js";
import type { FormNode } from "../../src/editor/form-node.js";
import { fieldsOfPart, studyParts } from "../../src/editor/parts.js";
import { doubtText, habitatNotes } from "../../src/report/rack/habitat-doubt.js";
import { comparedRun } from "../../src/study/compared/compared.js";
import { readStudyText } from "../../src/study/reading/read.js";
import { editedText } from "../study/example.js";
import { assumptions } from "./runs.js";

const textOf = (calcium: string) => editedText([["lake.chemistry", { calcium }]]);
const runOf = (calcium: string) => comparedRun(readStudyText(textOf(calcium), "study.yaml"), assumptions);
const all = (nodes: readonly FormNode[]): FormNode[] =>
  nodes.flatMap((node) => [node, ...all(node.children)]);

describe("what makes habitat less than firm", () => {
  const run = runOf("19 mg/L");

  it("is told in one sentence: what decides alone, and what lies near the edge of a class", () => {
    // By hand: 10 % above 19 mg/L is 20.9, which is moderate, from 20 mg/L (Whittier and others 2008).
    expect(doubtText(run)).toMatch(
      /^Calcium alone decides \(weight [\d.]+ without it\); calcium \(19 mg\/L\) lies within its measuring error \(10%\) of the class “moderate”\.$/,
    );
  });

  it("stands beside the field of the value, and keeps nothing from being computed", () => {
    const notes = habitatNotes(run);
    expect(notes.map(({ at }) => at)).toEqual([
      ["lake", "chemistry", "calcium"],
      ["lake", "chemistry", "calcium"],
    ]);
    expect(notes.every(({ unusual }) => unusual)).toBe(true);
    const draft = { ...draftOf(textOf("19 mg/L"), "study"), problems: notes };
    const shown = studyParts
      .filter(({ section }) => section === "lake")
      .flatMap((part) => all(formOf(fieldsOfPart(part), [part.section], draft)));
    const field = shown.find(({ name }) => name === "lake/chemistry/calcium");
    expect(field?.needed).toContain("the one value that decides habitat");
    expect(field?.needed).toContain("within its measuring error (10%) of the class “moderate”");
    expect(field?.errors).toEqual([]);
  });

  it("is nothing where all variables are far inside the best class", () => {
    expect(doubtText(runOf("60 mg/L"))).toBe("");
    expect(habitatNotes(runOf("60 mg/L"))).toEqual([]);
  });
});
