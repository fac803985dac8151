import { describe, expect, it } from "vitest";
import { comparedRun } from "../../../src/study/compared/compared.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { assumptions } from "../../report/runs.js";
import { judgeHere } from "../../web/judging.js";
import { editedText } from "../example.js";

type Edits = Parameters<typeof editedText>[0];

const study = (edits: Edits = []) => readStudyText(editedText(edits, "ninemoss"), "study.yaml");
const dependence = "steps.dependence";

/** All but two are taken as certain, so that few lakes are worked out. */
const few = {
  ...assumptions,
  entries: new Map(
    [...assumptions.entries].map(([id, entry]) =>
      id !== dependence && id !== "detection.first-harm"
        ? ([id, { ...entry, low: entry.value, high: entry.value }] as const)
        : ([id, { ...entry, basis: "published" as const }] as const),
    ),
  ),
};

function netBenefitWith(value: number): number {
  const document = study([["overrides", [{ id: dependence, value, reason: "tried" }]]]);
  const { options } = comparedRun(document, few).comparison;
  const found = options.find(({ result }) => result.option.id === document.study.requestedOption);
  return found?.netBenefit.toNumber() ?? Number.NaN;
}

describe("swings of assumptions, whatever their basis", () => {
  it("are the net benefit at P10 and P90 by the whole model; what the study does not use has none", async () => {
    const swings = await judgeHere(few)(study());
    expect(swings.map(({ id }) => id)).toEqual([dependence]);
    const [swing] = swings;
    // Beta-PERT from 0 over 0.5 to 1 is symmetric about 0.5, so the ends are equally far from it.
    const [atLeast, atMost] = [netBenefitWith(0), netBenefitWith(1)];
    expect(swing?.low).toBeGreaterThan(Math.min(atLeast, atMost));
    expect(swing?.high).toBeLessThan(Math.max(atLeast, atMost));
    expect(swing?.ends?.low).toBeCloseTo(Math.min(atLeast, atMost), 2);
    expect(swing?.ends?.high).toBeCloseTo(Math.max(atLeast, atMost), 2);
    expect(swing?.width).toBeCloseTo((swing?.high ?? 0) - (swing?.low ?? 0), 6);
  });

  it("leave out a value that the study replaced by its own", async () => {
    const document = study([["overrides", [{ id: dependence, value: 0.4, reason: "counted" }]]]);
    expect(await judgeHere(few)(document)).toEqual([]);
  });
});
