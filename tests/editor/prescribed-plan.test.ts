import { expect, it } from "vitest";
import { prescribedPlan, withPrescribedPlan } from "../../src/editor/prescribed-plan.js";
import { rawOf } from "../../src/editor/study-text.js";

const text = "structures: # all\n  - id: intake\n    name: Intake\n";
const file = (written: string) => ({ text: written, fileName: "study.yaml" });
const rack = { structure: "intake", part: "trash rack" };
const read = (written: string) => prescribedPlan(rawOf(written, "study.yaml"), rack);

it("prescribes a plan, replaces it and takes it back, and leaves the rest of the text", () => {
  const once = withPrescribedPlan(file(text), rack, { plan: "divers-12", reason: "crew" });
  expect(read(once)).toEqual({ plan: "divers-12", reason: "crew" });
  expect(once).toContain("structures: # all\n  - id: intake\n    name: Intake\n");
  const other = withPrescribedPlan(
    file(once),
    { ...rack, part: "conduit" },
    { plan: "leave", reason: "spare" },
  );
  const twice = withPrescribedPlan(file(other), rack, { plan: "divers-24", reason: "budget" });
  expect(read(twice)).toEqual({ plan: "divers-24", reason: "budget" });
  const back = withPrescribedPlan(file(twice), rack, undefined);
  expect(read(back)).toBeUndefined();
  expect(rawOf(back, "study.yaml")).toMatchObject({ structures: [{ pinned: [{ part: "conduit" }] }] });
  const none = withPrescribedPlan(file(back), { ...rack, part: "conduit" }, undefined);
  expect(rawOf(none, "study.yaml")).toEqual({ structures: [{ id: "intake", name: "Intake" }] });
});

it("leaves a study without such a structure as it is", () => {
  const gone = { structure: "mill", part: "trash rack" };
  expect(withPrescribedPlan(file(text), gone, { plan: "leave", reason: "x" })).toBe(text);
  expect(withPrescribedPlan(file(text), rack, undefined)).toBe(text);
});
