import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { prepareStudy } from "../../../src/study/prepare/prepared.js";
import { realSet } from "../../assumptions/real.js";
import { shortExample, studyFrom } from "./facts.js";

const set = realSet();

/** One of facts that a lake may have together, in either system of units. */
const facts = fc.record(
  {
    name: fc.constantFrom("Blue Lake", "Lac Léman"),
    units: fc.constantFrom("us", "si"),
    currency: fc.constantFrom("USD", "EUR", "CAD"),
    place: fc.constantFrom("Idaho", "TX", 61, "33.5 S", "47 deg"),
    summerLevel: fc.constantFrom("1200 m", "4,000 ft", "1190 to 1210 m"),
    winterLevel: fc.constantFrom("1190 m", "3,990 ft", "1200 m", "1180 to 1189 m"),
    area: fc.constantFrom("40 ha", "90,000 acre"),
    depth: fc.constantFrom("60 m", "300 ft"),
    hardness: fc.constantFrom("soft", "moderate", "hard", "very-hard"),
    calcium: fc.constantFrom("3 mg/L", 24, "20 to 30 mg/L"),
    warmestMonth: fc.constantFrom("14 degC", "86 degF", "20 to 24 degC"),
    intakes: fc.array(
      fc.record(
        {
          name: fc.constantFrom("North", "South"),
          use: fc.constantFrom("town", "irrigation", "industry"),
          flow: fc.constantFrom("0.02 m3/s", "6 cfs", "1 to 10 cfs", "5 gpm"),
          pipe: fc.constantFrom("600 mm", "36 in"),
          depth: fc.constantFrom("45 m", "150 ft"),
        },
        { requiredKeys: [] },
      ),
      { maxLength: 3 },
    ),
    plant: fc.record(
      {
        power: fc.constantFrom("800 kW", "12 MW", 200),
        head: fc.constantFrom("60 m", "400 ft"),
        units: fc.integer({ min: 1, max: 6 }),
      },
      { requiredKeys: [] },
    ),
    docks: fc.record(
      { slips: fc.constantFrom(0, 3, 400), area: fc.constantFrom("300 m2", "9,000 ft2") },
      { requiredKeys: [] },
    ),
    ramps: fc.integer({ min: 0, max: 4 }),
    launches: fc.constantFrom(300, "26,000", "1000 to 4000"),
    fromAway: fc.constantFrom("0 %", 54, "100 %"),
    nearestInfested: fc.constantFrom("2 h", "20 h", "5 d"),
    wanted: program(),
    inForce: program(),
    horizon: fc.integer({ min: 1, max: 100 }),
  },
  { requiredKeys: [] },
);

function program() {
  return fc.record(
    {
      from: fc.constantFrom("jan", "apr"),
      until: fc.constantFrom("apr", "dec"),
      hours: fc.constantFrom(4, "24 h", "8 to 12 h"),
      stations: fc.integer({ min: 1, max: 5 }),
      cost: fc.constantFrom(0, "45,000", 45000.5),
    },
    { requiredKeys: [] },
  );
}

describe("a study from any facts", () => {
  it("is complete, and passes every check", () => {
    fc.assert(
      fc.property(facts, (typed) => {
        prepareStudy(studyFrom(typed).study, set);
      }),
      { numRuns: 60, seed: 25 },
    );
  });

  it("is complete with no fact at all, and with each fact of an example alone", () => {
    prepareStudy(studyFrom({}).study, set);
    for (const [key, value] of Object.entries(Object(shortExample("sorrel-bend")))) {
      expect(() => prepareStudy(studyFrom({ [key]: value }).study, set), key).not.toThrow();
    }
  });
});
