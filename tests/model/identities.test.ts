import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compare } from "../../src/model/compare.js";
import type { Boats, ProgramOption, StudyInput } from "../../src/model/inputs.js";
import { assumedWith } from "./assumptions.js";
import { productiveLake } from "./lakes.js";
import { anySteps, share } from "./steps.js";
import { boats, duties, noProgram, program, studyOf, wholeStudy } from "./study.js";

/** What must hold of any study, whatever its numbers: from no source, it is what the words mean. */
const classes = fc
  .array(
    fc.record({ weight: share, fouled: share, living: share, daysSince: fc.integer({ min: 0, max: 60 }) }),
    {
      minLength: 1,
      maxLength: 4,
    },
  )
  .map((drawn): Boats["classes"] => {
    const whole = drawn.reduce((sum, { weight }) => sum + weight, 0) || 1;
    return drawn.map(({ weight, fouled, living, daysSince }, index) => ({
      id: `class-${index}`,
      name: `Class ${index}`,
      share: weight / whole,
      fouled: fouled / 10,
      daysSince,
      living,
    }));
  });

const anyWater = fc.record({
  launches: fc.array(fc.integer({ min: 0, max: 20_000 }), { minLength: 12, maxLength: 12 }),
  classes,
  other: fc.double({ min: 0, max: 0.2, noNaN: true }),
  checked: fc.boolean(),
  weightOfBoats: share,
  calcium: fc.integer({ min: 2, max: 60 }),
  horizon: fc.integer({ min: 1, max: 40 }),
  steps: anySteps,
  shape: fc.constantFrom(1, 1.5, 2),
});

type Water = typeof anyWater extends fc.Arbitrary<infer Drawn> ? Drawn : never;

function inputOf(
  drawn: Water,
  changes: { boats?: Partial<Boats>; option?: Partial<ProgramOption> } = {},
): StudyInput {
  const { launches, other, checked, weightOfBoats, calcium, horizon, steps } = drawn;
  const { chemistry } = productiveLake;
  return studyOf([duties], {
    lake: { ...productiveLake, chemistry: { ...chemistry, calcium } },
    boats: {
      ...boats,
      launches,
      classes: drawn.classes,
      otherWays: [{ name: "Other ways", chance: other, checked }],
      comparable: { rate: { kind: "unknown" }, checksLetThrough: 1, weightOfBoats },
      ...changes.boats,
    },
    options: [noProgram, { ...program, steps, ...changes.option }],
    money: { ...wholeStudy.money, horizon },
  });
}

/** Chances of being infested by each year: without a program, and with it. */
function infested(input: StudyInput, { shape }: Water): number[] {
  const { baseline, options } = compare(input, assumedWith({ "arrival.shape": shape }));
  return [...baseline.infestedByYear, ...options.flatMap(({ result }) => result.infestedByYear)];
}

const rounding = 1e-12;

describe("over random studies", () => {
  it("more boats never lower the chance", () => {
    fc.assert(
      fc.property(anyWater, fc.array(share, { minLength: 12, maxLength: 12 }), (drawn, more) => {
        const launches = drawn.launches.map((each, month) => each * (1 + 3 * (more[month] ?? 0)));
        const before = infested(inputOf(drawn), drawn);
        const after = infested(inputOf(drawn, { boats: { launches } }), drawn);
        for (const [year, each] of after.entries())
          expect(each).toBeGreaterThanOrEqual((before[year] ?? 2) - rounding);
      }),
      { seed: 29, numRuns: 150 },
    );
  });

  it("wider coverage never raises it", () => {
    fc.assert(
      fc.property(anyWater, share, (drawn, wider) => {
        const { coverage } = drawn.steps;
        const steps = { ...drawn.steps, coverage: coverage + wider * (1 - coverage) };
        const before = infested(inputOf(drawn), drawn);
        const after = infested(inputOf(drawn, { option: { steps } }), drawn);
        for (const [year, each] of after.entries())
          expect(each).toBeLessThanOrEqual((before[year] ?? -1) + rounding);
      }),
      { seed: 30, numRuns: 150 },
    );
  });
});
