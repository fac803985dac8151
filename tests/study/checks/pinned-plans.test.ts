import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { loadAssumptions } from "../../../src/assumptions/load.js";
import { comparedRun } from "../../../src/study/compared/compared.js";
import { prepareStudy } from "../../../src/study/prepare/prepared.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { editedText, inputErrorOf } from "../example.js";

const set = loadAssumptions(fileURLToPath(new URL("../../../assumptions", import.meta.url)));
const reason = "contract in force";

const withPinned = (structure: string, pinned: unknown) =>
  readStudyText(editedText([[`structures[${structure}].pinned`, pinned]]), "study.yaml");

describe("a plan that a study prescribes", () => {
  it("is the one that the comparison keeps the part in service by", () => {
    const pinned = [{ part: "trash rack", plan: "divers-6", reason }];
    const { structures } = comparedRun(withPinned("intake", pinned), set).comparison;
    const rack = structures
      .find(({ structure }) => structure.kind === "intake")
      ?.components.find(({ name }) => name === "trash rack");
    expect(rack?.chosen.plan.id).toBe("divers-6");
    expect(rack?.pinned?.reason).toBe(reason);
  });

  it.each([
    [
      "a part that the structure does not have",
      "intake",
      { part: "roof", plan: "leave" },
      "part",
      '"roof"',
      "trash rack, conduit",
    ],
    [
      "a plan that is not in the catalogue",
      "intake",
      { part: "conduit", plan: "prayer" },
      "plan",
      '"prayer"',
      "divers-12",
    ],
    [
      "an interval that the catalogue does not offer",
      "intake",
      { part: "conduit", plan: "divers-5" },
      "plan",
      '"divers-5"',
      "divers-6",
    ],
    [
      "a plan that is not possible there",
      "dock",
      { part: "wetted surface", plan: "dry" },
      "plan",
      '"dry"',
      "floats",
    ],
    [
      "a plan for a structure that is swept",
      "ramp",
      { part: "trash rack", plan: "leave" },
      "part",
      '"trash rack"',
      "nothing here is kept by plans",
    ],
  ])("is refused if it names %s", (_, structure, pinned, field, found, allowed) => {
    const document = withPinned(structure, [{ ...pinned, reason }]);
    const { problems } = inputErrorOf(() => prepareStudy(document, set));
    expect(problems).toHaveLength(1);
    expect(problems[0]?.path).toMatch(
      new RegExp(`^structures\\[\\d+ "[^"]+"\\]\\.pinned\\[0\\]\\.${field}$`),
    );
    expect(problems[0]?.found).toBe(found);
    expect(problems[0]?.allowed).toContain(allowed);
  });

  it("needs a reason", () => {
    expect(() => withPinned("dock", [{ part: "wetted surface", plan: "leave" }])).toThrow(/reason/);
  });
});
