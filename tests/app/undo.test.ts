import { describe, expect, it } from "vitest";
import { studiesOf } from "../../src/app/studies.js";
import { storeConnection } from "../../src/store/connection.js";
import { studyStore } from "../../src/store/studies.js";
import { assumptions } from "../report/runs.js";

/** A study with an editor who steps back and forth: texts are letters. */
function editor() {
  const studies = studiesOf(
    studyStore(storeConnection(":memory:")),
    () => assumptions,
    () => new Date(0),
  );
  const writer = { author: "Ada", note: "edited", origin: "form" } as const;
  const { id } = studies.create("a", writer);
  const latest = () => {
    const entry = studies.find(id);
    if (!entry) throw new Error("gone");
    return entry;
  };
  return {
    edit: (text: string) => studies.save(id, latest().revision, text, writer).text,
    undo: () => studies.step(id, "undo", latest().revision, "Ada").text,
    redo: () => studies.step(id, "redo", latest().revision, "Ada").text,
    restore: (revision: number) => studies.restore(id, revision, latest().revision, "Ada").text,
    count: () => studies.revisions(id).length,
  };
}

describe("steps back and forth", () => {
  it("take back one edit after another, to the first, and do them again", () => {
    const { edit, undo, redo, count } = editor();
    edit("b");
    edit("c");
    expect([undo(), undo(), undo()]).toEqual(["b", "a", "a"]);
    expect([redo(), redo(), redo()]).toEqual(["b", "c", "c"]);
    // Three texts, and a revision for each step that led anywhere.
    expect(count()).toBe(7);
  });

  it("after an edit lead along what it rests on, and what was undone before it is not done again", () => {
    const { edit, undo, redo } = editor();
    edit("b");
    undo();
    edit("c");
    expect(redo()).toBe("c");
    expect([undo(), undo()]).toEqual(["a", "a"]);
    expect(redo()).toBe("c");
  });

  it("take back a revision that was restored, as any other edit", () => {
    const { edit, undo, redo, restore } = editor();
    edit("b");
    edit("c");
    restore(1);
    expect([undo(), redo()]).toEqual(["c", "a"]);
  });
});
