import { describe, expect, it } from "vitest";
import { comparedRun } from "../../../src/study/compared/compared.js";
import { swingsOf } from "../../../src/study/odds/judged-swings.js";
import { readStudyText } from "../../../src/study/reading/read.js";
import { assumptions } from "../../report/runs.js";
import { judgeHere } from "../../web/judging.js";
import { editedText } from "../example.js";

type Edits = Parameters<typeof editedText>[0];

const study = (edits: Edits = []) => readStudyText(editedText(edits, "ninemoss"), "study.yaml");
const dependence = "steps.dependence";

/** Judged values but two are left out, so that few lakes are worked out. */
const few = {
  ...assumptions,
  entries: new Map(
    [...assumptions.entries].map(([id, entry]) =>
      entry.basis === "judged" && id !== dependence && id !== "detection.first-harm"
        ? ([id, { ...entry, basis: "common practice" as const }] as const)
        : ([id, entry] as const),
    ),
  ),
};

function netBenefitWith(value: number): number {
  const document = study([["overrides", [{ id: dependence, value, reason: "tried" }]]]);
  const { options } = comparedRun(document, few).comparison;
  const found = options.find(({ result }) => result.option.id === document.study.requestedOption);
  return found?.netBenefit.toNumber() ?? Number.NaN;
}

describe("swings of judged values", () => {
  it("are the net benefit at P10 and P90 by the whole model; what the study does not use has none", async () => {
    const swings = await judgeHere(few)(study());
    expect(swings.map(({ id }) => id)).toEqual([dependence]);
    const [swing] = swings;
    // Beta-PERT from 0 over 0.5 to 1 is symmetric about 0.5, so the ends are equally far from it.
    const [atLeast, atMost] = [netBenefitWith(0), netBenefitWith(1)];
    expect(swing?.low).toBeGreaterThan(Math.min(atLeast, atMost));
    expect(swing?.high).toBeLessThan(Math.max(atLeast, atMost));
    expect(swing?.width).toBeCloseTo((swing?.high ?? 0) - (swing?.low ?? 0), 6);
  });

  it("leave out a value that the study replaced by its own", async () => {
    const document = study([["overrides", [{ id: dependence, value: 0.4, reason: "counted" }]]]);
    expect(await judgeHere(few)(document)).toEqual([]);
  });

  it("come from bars that are known: the value as it is counts where both ends lie on one side of it", () => {
    const bars = [
      { id: "a", name: "a", low: { input: 0, netBenefit: 5 }, high: { input: 1, netBenefit: 8 } },
      { id: "b", name: "b", low: { input: 0, netBenefit: 9 }, high: { input: 1, netBenefit: -1 } },
    ];
    expect(swingsOf(bars, 3, () => true)).toEqual([
      { id: "a", width: 5, low: 5, high: 8 },
      { id: "b", width: 10, low: -1, high: 9 },
    ]);
    expect(swingsOf(bars, 3, (id) => id === "b")).toHaveLength(1);
  });
});
