import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { draftOf } from "../../src/editor/draft.js";
import { formOf } from "../../src/editor/form.js";
import { editsOf } from "../../src/editor/form-edits.js";
import type { FormNode } from "../../src/editor/form-node.js";
import { fieldsOfPart, partOf } from "../../src/editor/parts.js";
import { edited } from "../../src/editor/study-text.js";
import { ninemossText } from "./ninemoss.js";
import { postedOf } from "./posted.js";

const printed = partOf("printed");
if (!printed) throw new Error("no page of what is printed");
const fields = fieldsOfPart(printed);

const textWith = (report: string) => `${ninemossText}\nreport:\n${report}`;
const formFor = (text: string) => formOf(fields, ["report"], draftOf(text, "own.yaml"));
const leaveOut = (nodes: readonly FormNode[]) => nodes.find(({ name }) => name === "report/leaveOut");

/** The text once boxes are ticked ("yes") or cleared (""). */
function boxed(text: string, boxes: Readonly<Record<string, string>>): string {
  const { document, writing } = draftOf(text, "own.yaml");
  const names = Object.entries(boxes).map(([value, sent]) => [`report/leaveOut#${value}`, sent]);
  const posted = { ...postedOf(formFor(text)), ...Object.fromEntries(names) };
  const value = (document as { report?: unknown }).report;
  return edited(text, editsOf(fields, ["report"], value, { posted, writing }));
}

// What is expected follows from the study's schema and from what stands in each text.
describe("check boxes for a list of chosen values", () => {
  const text = textWith("  leaveOut:\n    - plans # too long\n    - money # for the annex\n");

  it("stand for every value that may be chosen, by its title, ticked where the study has it", () => {
    const boxes = leaveOut(formFor(text))?.choices ?? [];
    expect(boxes).toHaveLength(25);
    expect(boxes[0]).toEqual({ value: "lake", label: "The lake and what is at risk", chosen: false });
    expect(boxes.filter(({ chosen }) => chosen).map(({ label }) => label)).toEqual([
      "Appendix F. Keeping each part in service",
      "Appendix G. How money is counted",
    ]);
  });

  it("keep the items that stay, their order and their comments", () => {
    const changed = boxed(text, { lake: "yes", plans: "" });
    expect(changed).toContain("- money # for the annex\n    - lake\n");
    expect(changed).not.toContain("plans");
    expect(parse(boxed(text, { money: "" })).report).toEqual({ leaveOut: ["plans"] });
  });

  it("leave the list out when none is ticked, and make one of nothing", () => {
    expect(parse(boxed(text, { plans: "", money: "" })).report ?? {}).toEqual({});
    expect(parse(boxed(ninemossText, { odds: "yes" })).report).toEqual({ leaveOut: ["odds"] });
  });

  it("show a value by a name that every object has as it was written", () => {
    const node = leaveOut(formFor(textWith("  leaveOut: [constructor]\n")));
    expect(node?.choices.at(-1)?.label).toBe("constructor (not in the list)");
  });

  it("show a value that is refused with what is wrong, and keep it until its box is cleared", () => {
    const odd = textWith("  leaveOut: [lakes, odds]\n");
    const node = leaveOut(formFor(odd));
    expect(node?.choices.at(-1)).toEqual({ value: "lakes", label: "lakes (not in the list)", chosen: true });
    expect(node?.errors.join(" ")).toContain('Found "lakes"');
    expect(parse(boxed(odd, { plans: "yes" })).report.leaveOut).toEqual(["lakes", "odds", "plans"]);
    expect(parse(boxed(odd, { lakes: "" })).report.leaveOut).toEqual(["odds"]);
  });

  it("offer no section that went to the method document, and keep one that a study has until its box is cleared", () => {
    const old = textWith("  leaveOut: [worked, odds]\n");
    const node = leaveOut(formFor(old));
    expect(node?.choices.at(-1)).toEqual({
      value: "worked",
      label: "Worked by hand (in the method document now)",
      chosen: true,
    });
    expect(node?.errors).toEqual([]);
    expect(leaveOut(formFor(ninemossText))?.choices.map(({ value }) => value)).not.toContain("worked");
    expect(parse(boxed(old, { lake: "yes" })).report.leaveOut).toEqual(["worked", "odds", "lake"]);
    expect(parse(boxed(old, { worked: "" })).report.leaveOut).toEqual(["odds"]);
  });

  it("show a bare value with what is wrong, and make a list of it", () => {
    const bare = textWith("  leaveOut: lake\n");
    const node = leaveOut(formFor(bare));
    expect(node?.choices.filter(({ chosen }) => chosen).map(({ value }) => value)).toEqual(["lake"]);
    expect(node?.errors).toHaveLength(1);
    expect(parse(boxed(bare, { odds: "yes" })).report.leaveOut).toEqual(["lake", "odds"]);
  });
});
