import { describe, expect, it } from "vitest";
import type { ProgramOption, ProgramSteps } from "../../../src/model/inputs.js";
import { arrivals, setAsideShare } from "../../../src/model/program/arrivals.js";
import { assumedWith } from "../assumptions.js";
import { productiveLake } from "../lakes.js";
import { ownWayAlone, program } from "../study.js";

const trailers = { id: "trailers", name: "Trailers", share: 1, fouled: 0.02 };
const boats = {
  launches: [1000, ...Array<number>(11).fill(0)],
  classes: [trailers],
  otherWays: [],
  comparable: ownWayAlone,
};

const steps: ProgramSteps = {
  coverage: 0.8,
  declaration: 0.5,
  quickCheck: 0.4,
  falseAlarm: 0.05,
  washedAnyway: 0.6,
  inspection: 0.9,
  hotWash: 0.8,
  // A hold of no time kills none, and still holds boats.
  hold: { share: 0.5, days: 0 },
  refusal: 0.25,
  deterrence: 0.1,
  seals: [{ vesselClass: "trailers", share: 0.1 }],
  byClass: [],
};

const optionOf = (changes: Partial<ProgramSteps> = {}): ProgramOption => ({
  ...program,
  steps: { ...steps, ...changes },
});

const passing = (option: ProgramOption) =>
  arrivals(boats, option, productiveLake, assumedWith({ "steps.dependence": 0 }));

describe("a thousand boats through all steps, by hand", () => {
  const { classes, slipThrough, slipThroughRange } = passing(optionOf());

  it("are counted at each step", () => {
    // Fouled 1000 · 0.02 · 0.9 = 18; met 0.9 · 0.8 = 0.72; set aside 18 · 0.72 · (1 − 0.5 · 0.6) = 9.072, refused a
    // quarter, 2.268; by false alarm (1000 − 18) · 0.72 · 0.05 = 35.352.
    const expected = {
      launches: 1000,
      sealed: 100,
      checked: 720,
      fouled: 18,
      setAside: 9.072,
      refused: 2.268,
      setAsideInAll: 9.072 + 35.352,
      washed: 9.072 - 2.268 + 35.352 * 0.6,
      held: (9.072 - 2.268 + 35.352) * 0.5,
    };
    for (const [what, boatsThere] of Object.entries(expected)) {
      expect(classes[0]?.[what as keyof typeof expected], what).toBeCloseTo(boatsThere, 9);
    }
  });

  it("slip through unmet, or set aside and missed by inspection and wash", () => {
    // Missed (1 − 0.9)(1 − 0.8) = 0.02 if independently, else 1 − 0.9 = 0.1; 18 · (1 − 0.504 + 0.504 · 0.75 · missed).
    expect(slipThrough).toBeCloseTo(18 * (0.496 + 0.378 * 0.02), 9);
    expect(classes[0]?.slipThrough).toBeCloseTo(slipThrough, 12);
    expect(slipThroughRange.independent).toBeCloseTo(18 * (0.496 + 0.378 * 0.02), 9);
    expect(slipThroughRange.dependent).toBeCloseTo(18 * (0.496 + 0.378 * 0.1), 9);
  });

  it("all slip through where there are no steps, between bounds that are the same", () => {
    const { steps: _, ...open } = optionOf();
    expect(passing(open)).toMatchObject({
      slipThrough: 20,
      slipThroughRange: { independent: 20, dependent: 20 },
    });
  });
});

describe("a class for which one step works otherwise", () => {
  // Set aside 1 − (1 − d)(1 − q), missed (1 − i)(1 − w); the other numbers as above.
  it.each([
    [{ declaration: 0.2 }, 1 - 0.8 * 0.6, 0.02],
    [{ quickCheck: 0.1 }, 1 - 0.5 * 0.9, 0.02],
    [{ inspection: 0.3 }, 0.7, 0.7 * 0.2],
    [{ hotWash: 0 }, 0.7, 0.1],
  ])("keeps the others: %j", (own, setAside, missed) => {
    const option = optionOf({ byClass: [{ vesselClass: "trailers", ...own }] });
    const share = 0.72 * setAside;
    expect(passing(option).slipThrough).toBeCloseTo(18 * (1 - share + share * 0.75 * missed), 9);
  });

  it("sets aside who declares, and of the others who is found", () => {
    expect(setAsideShare({ ...steps, declaration: 0.2, quickCheck: 0.1 })).toBeCloseTo(1 - 0.8 * 0.9, 14);
  });
});
