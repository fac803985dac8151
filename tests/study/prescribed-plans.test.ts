import { expect, it } from "vitest";
import { comparedRun } from "../../src/study/compared/compared.js";
import type { StudyDocument } from "../../src/study/format/schema.js";
import { readStudyText } from "../../src/study/reading/read.js";
import { assumptions } from "../report/runs.js";
import { exampleText } from "./example.js";

const document = readStudyText(exampleText("thistledown"), "thistledown.yaml");
const known = comparedRun(document, assumptions);

const prescribing = (structure: string, part: string, plan: string): StudyDocument => ({
  ...document,
  structures: document.structures.map((each) =>
    each.id === structure ? { ...each, pinned: [{ part, plan, reason: "a test" }] } : each,
  ),
});

const damage = ({ comparison }: typeof known) => comparison.baseline.presentValue.infestation.toNumber();

/** A limit that is passed is priced: nobody makes an infestation cheaper by prescribing what breaks one. */
it("no prescribed plan makes an infestation cheaper than the plan that is chosen, least of all one that breaks a limit", () => {
  let broken = 0;
  for (const { structure, components } of known.comparison.structures) {
    for (const { name, everyPlan } of components) {
      for (const { plan, brokenLimit } of everyPlan()) {
        if (brokenLimit === undefined && !/^(leave|divers-24)$/.test(plan.id)) continue;
        const added =
          damage(comparedRun(prescribing(structure.id, name, plan.id), assumptions)) - damage(known);
        expect(added, `${structure.id} ${name} ${plan.id}`).toBeGreaterThanOrEqual(-0.005);
        if (brokenLimit !== undefined) {
          expect(added, `${structure.id} ${name} ${plan.id}`).toBeGreaterThan(0);
          broken += 1;
        }
      }
    }
  }
  expect(broken).toBeGreaterThan(10);
});
