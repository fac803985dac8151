import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sumOf } from "../../../../src/lists.js";
import type { Assumed } from "../../../../src/model/assumed.js";
import { compare } from "../../../../src/model/compare.js";
import type { StudyInput } from "../../../../src/model/inputs.js";
import type { AssumptionId } from "../../../../src/model/register/register.js";
import type { Structure } from "../../../../src/model/structures/kinds.js";
import { assumed, assumedWith, assumptionSet } from "../../assumptions.js";
import { drawnDownLake } from "../../lakes.js";
import { everyMonth } from "../../near.js";
import {
  fixedDock,
  floatingDock,
  gravityIntake,
  plant,
  pumpedIntake,
  sealWater,
  studyOf,
} from "../../study.js";

const price = fc.constantFrom(
  ...[...assumptionSet.entries.values()]
    .filter(({ id, unit }) => unit.includes("$") && !/^(checks|detection)/.test(id))
    .map(({ id }) => id as AssumptionId),
);

const share = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const structures: fc.Arbitrary<Structure[]> = fc
  .record({
    elevation: share(70, 98),
    diameter: share(0.4, 2),
    flow: share(0.1, 1.5),
    spacing: share(0.02, 0.1),
    oxidantAllowed: fc.boolean(),
    lineBore: share(0.05, 0.2),
    energyPrice: share(0.01, 0.2),
    area: share(20, 900),
    spareBuoyancy: share(1, 8),
  })
  .map((drawn) => {
    const { elevation, diameter, flow, oxidantAllowed, spacing } = drawn;
    const intake = {
      elevation,
      oxidantAllowed,
      demand: everyMonth(flow),
      conduit: { ...gravityIntake.conduit, diameter },
      rack: { ...gravityIntake.rack, clearSpacing: spacing },
    };
    return [
      { ...gravityIntake, ...intake },
      { ...pumpedIntake, ...intake, elevation: elevation - 5 },
      { ...plant, elevation: elevation - 8, energyPrice: everyMonth(drawn.energyPrice) },
      { ...sealWater, oxidantAllowed, diameter: drawn.lineBore },
      { ...floatingDock, wettedArea: drawn.area, spareBuoyancy: drawn.spareBuoyancy },
      { ...fixedDock, elevation, wettedArea: drawn.area },
    ];
  });

/** Present value of an infestation that is as likely to begin in one year of the horizon as in another, mid-year. */
function presentValue(study: StudyInput, source: Assumed): number {
  const { horizon, discountRate } = study.money;
  const factors = Array.from({ length: horizon }, (_, year) => (1 + discountRate) ** -(year + 1 / 2));
  const { byYear } = compare(study, source).infestation.plain;
  return sumOf(byYear.map((cost, age) => (cost * sumOf(factors.slice(age))) / horizon));
}

const years = [3, 8, 20, 40];
const rates = [0, 0.02, 0.03, 0.05, 0.07];

describe("a dearer price", () => {
  it("never makes an infestation cheaper", () => {
    fc.assert(
      fc.property(
        structures,
        price,
        share(1.02, 4),
        fc.constantFrom(...years),
        fc.constantFrom(...rates),
        (drawn, id, factor, horizon, discountRate) => {
          const study = studyOf(drawn, {
            lake: drawnDownLake,
            money: { ...studyOf([]).money, horizon, discountRate },
          });
          const before = presentValue(study, assumed);
          const after = presentValue(study, assumedWith({ [id]: assumed(id) * factor }));
          // Lines are whole cents.
          expect(after, id).toBeGreaterThanOrEqual(before * (1 - 1e-7) - 1);
        },
      ),
      { seed: 2202, numRuns: 80 },
    );
  });
});
