import { describe, expect, it } from "vitest";
import { draftOf } from "../../src/editor/draft.js";
import { groupFieldsAt } from "../../src/editor/field-at.js";
import { formOf } from "../../src/editor/form.js";
import type { FormNode } from "../../src/editor/form-node.js";
import { fieldsOfPart, studyParts } from "../../src/editor/parts.js";
import { readStudyText } from "../../src/study/reading/read.js";
import { assumptions } from "../report/runs.js";
import { editedText } from "../study/example.js";

const all = (nodes: readonly FormNode[]): FormNode[] =>
  nodes.flatMap((node) => [node, ...all(node.children)]);

function takenOf(edits: Parameters<typeof editedText>[0], at: readonly (string | number)[], key: string) {
  const draft = draftOf(editedText(edits), "study.yaml");
  const parts = studyParts.filter(({ section, keys }) => section === at[0] && keys.length > 0);
  const fields =
    at.length === 1 ? parts.flatMap(fieldsOfPart) : (groupFieldsAt([...at], draft.document) ?? []);
  const nodes = all(formOf(fields, [...at], { ...draft, entries: assumptions.entries }));
  return nodes.find(({ name }) => name.endsWith(`/${key}`));
}

/** Of the option whose deterrence is looked at. */
const place = readStudyText(editedText([]), "study.yaml").options.findIndex(({ id }) => id === "full-season");

describe("beside a field", () => {
  it("stands between which values a number is taken to lie that is typed alone", () => {
    const share = takenOf([], ["options", place], "deterrence");
    // By hand: 30 % are odds of 3/7; over and times e: 13.6 and 53.8 %.
    expect(share?.taken).toBe("Taken as 14 to 54 % unless you say otherwise.");
    expect(share?.describedBy).toContain("-help");
    expect(takenOf([], ["boats"], "launches")?.taken).toBe("Taken as ± 20 % unless you say otherwise.");
    const temperature = (edits: Parameters<typeof editedText>[0]) =>
      takenOf(edits, ["lake"], "surfaceTemperature")?.taken;
    // A degree Celsius is 1.8 degrees Fahrenheit.
    expect(temperature([])).toBe("Taken as ± 1.8 °F unless you say otherwise.");
    expect(temperature([["study.units", "si"]])).toBe("Taken as ± 1 °C unless you say otherwise.");
  });

  it("stands nothing where the author gives a range or says that it is exact, or nothing is varied", () => {
    expect(
      takenOf(
        [["options[full-season].steps.deterrence", "10 to 30 to 40 %"]],
        ["options", place],
        "deterrence",
      )?.taken,
    ).toBe("");
    expect(takenOf([["lake.thermoclineDepth", "40 ft exact"]], ["lake"], "thermoclineDepth")?.taken).toBe("");
    expect(takenOf([], ["lake"], "maximumElevation")?.taken).toBe("");
  });
});
