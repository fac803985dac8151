import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compare } from "../../src/model/compare.js";
import { infestationCost } from "../../src/model/infestation-cost.js";
import type { ProgramOption } from "../../src/model/inputs.js";
import type { OptionResult } from "../../src/model/option.js";
import type { OptionBalance } from "../../src/model/option-balance.js";
import { assumed, assumedWith } from "./assumptions.js";
import { boats, duties, fixedDock, floatingDock, otherChance, ramp } from "./study.js";
import { known, perArrival, programOf, resultOf, slowly, study, treatment, watched } from "./watched.js";

const amounts = ({ presentValue, undiscounted, expectedByYear }: OptionResult) =>
  [presentValue, undiscounted, ...expectedByYear].flatMap((each) => [
    each.program.toFixed(6),
    each.infestation.toFixed(6),
  ]);

describe("an option that says how it watches for mussels", () => {
  it("costs the same as one that says nothing if it notices them in the first year for certain", () => {
    expect(amounts(resultOf({ monitoring: { noticedWithin: [1] } }))).toEqual(amounts(resultOf({})));
  });

  it("costs the same with a response that costs nothing and never succeeds", () => {
    const vain = { ...treatment, cost: 0, chance: 0 };
    for (const monitoring of [undefined, slowly]) {
      const watch = monitoring ? { monitoring } : {};
      expect(amounts(resultOf({ ...watch, response: vain }))).toEqual(amounts(resultOf(watch)));
    }
  });

  it("loses what a lake loses, and spends nothing against mussels, while nobody knows of them", () => {
    const { horizon } = study.money;
    const never = resultOf({ monitoring: { noticedWithin: Array<number>(horizon).fill(0) } });
    // By hand: the harm alone of each age, weighed by the chance of establishment h(1−h)^(e−1); the program runs on.
    const { hazard, unnoticed } = never;
    never.expectedByYear.forEach(({ infestation, program: spent }, year) => {
      let expected = 0;
      for (let since = 0; since <= year; since++)
        expected += hazard * (1 - hazard) ** since * (unnoticed.harm[year - since]?.toNumber() ?? Number.NaN);
      expect(Math.abs(infestation.toNumber() - expected)).toBeLessThan(1e-6);
      expect(spent.equals(never.programPerYear)).toBe(true);
    });
    expect(never.presentValue.infestation.greaterThan(0)).toBe(true);
  });

  it("is never infested, and tries nothing, where no mussels come", () => {
    const clean = { ...study, boats: { ...boats, otherWays: [], classes: boats.classes.slice(0, 1) } };
    const comparison = compare(
      watched(
        { monitoring: slowly, response: treatment },
        { monitoring: slowly, response: treatment },
        clean,
      ),
      assumed,
      known,
    );
    for (const result of [comparison.baseline, programOf(comparison).result]) {
      expect(result.presentValue.infestation.isZero()).toBe(true);
      expect(result.containment?.attempts).toBe(0);
    }
  });

  it("notices no later with more tows, and then knows of an infestation at least as likely in each year", () => {
    const tows = fc.integer({ min: 0, max: 60 });
    fc.assert(
      fc.property(tows, tows, (few, more) => {
        const knownWith = (planktonTows: number) =>
          resultOf({ monitoring: { planktonTows } }).statesByYear.map((year) => year.known);
        const after = knownWith(few + more);
        knownWith(few).forEach((chance, year) => {
          expect(after[year]).toBeGreaterThanOrEqual(chance - 1e-12);
        });
      }),
      { seed: 411, numRuns: 15 },
    );
  });

  it("watches no more in a lake that is infested already", () => {
    const infested = { ...study, lake: { ...study.lake, infestedSince: study.money.startYear } };
    const watch = { monitoring: slowly, response: treatment };
    const { result } = programOf(compare(watched(watch, watch, infested), assumed));
    expect(result.statesByYear.every((year) => year.known === 1)).toBe(true);
    expect(result.containment?.attempts).toBe(0);
  });
});

describe("the first harm", () => {
  const own = known.schedules[0];
  const { firstAgeAbove } = own.infestation;
  const inOneYear = (part: "byYear" | "harm", age: number) =>
    [floatingDock, fixedDock, ramp].map(
      ({ id }) => own.infestation.ofStructure(id)[part][age]?.toNumber() ?? 0,
    );
  const ages = Array.from({ length: study.money.horizon }, (_, age) => age);

  it("is the first year in which one structure loses more than the limit; duties do not count", () => {
    const limit = 5000;
    const age = firstAgeAbove(limit) ?? Number.NaN;
    expect(Math.max(...inOneYear("harm", age))).toBeGreaterThan(limit);
    for (let before = 0; before < age; before++)
      expect(Math.max(...inOneYear("harm", before))).toBeLessThanOrEqual(limit);
    const dutiesAlone = own.structures.filter(({ structure }) => structure.id === duties.id);
    expect(infestationCost(dutiesAlone, 0).firstAgeAbove(limit)).toBeUndefined();
    expect(firstAgeAbove(1e12)).toBeUndefined();
  });

  it("counts losses alone: what cleaning and protection cost, which nobody would order yet, tells of nothing", () => {
    const greatestLoss = Math.max(...ages.flatMap((age) => inOneYear("harm", age)));
    const greatestCost = Math.max(...ages.flatMap((age) => inOneYear("byYear", age)));
    expect(greatestCost).toBeGreaterThan(greatestLoss);
    expect(firstAgeAbove(greatestLoss)).toBeUndefined();
    expect(firstAgeAbove(greatestLoss - 0.02)).toBeDefined();
  });

  it("makes it certain, whatever the samples", () => {
    const limit = 5000;
    const age = firstAgeAbove(limit) ?? Number.NaN;
    const { detection: noticing } = resultOf({ monitoring: {} }, { "detection.first-harm": limit });
    // Nothing is watched for: no chance before, certainty from that year on.
    expect(noticing.chanceByAge.map(Math.abs)).toEqual(Array<number>(age).fill(0));
    expect(noticing.firstHarmAge).toBe(age);
  });
});

describe("the values at which the answer turns", () => {
  const baseline = { monitoring: { planktonTows: 6 } };
  const responding = { monitoring: { planktonTows: 12, searches: 2 }, response: treatment };
  const again = (chance: number, option: Partial<ProgramOption> = {}) => {
    const input = watched(baseline, responding);
    const [first, second] = input.options;
    if (!first || !second) throw new Error("two options are missing");
    const options = [first, { ...second, ...option }];
    return programOf(compare({ ...input, options }, assumedWith({ [perArrival]: chance }), known));
  };
  const rest = ({ netBenefit, addedProgramCost }: OptionBalance) =>
    Math.abs(netBenefit.toNumber() / addedProgramCost.toNumber());

  it("leave no net benefit at the chance that is told, with detection and response", () => {
    const comparison = compare(watched(baseline, responding), assumed, known);
    const { hazards, hazard } = programOf(comparison).breakEven;
    expect(hazards.turns.length).toBeGreaterThan(0);
    expect(hazard).toBe(hazards.turns[0]?.value);
    const { slipThrough } = comparison.baseline.arrivals;
    for (const { value } of hazards.turns) {
      const pressure = -Math.log((1 - value) / (1 - otherChance));
      expect(rest(again(pressure / (slipThrough * comparison.lake.suitability.weight)))).toBeLessThan(1e-3);
    }
  });

  it("leave none at the budget that is told", () => {
    const cost = again(0.02).breakEven.programPerYear?.toNumber() ?? Number.NaN;
    const budget = { staff: [], equipment: [], fees: [], yearly: [{ name: "Budget", cost }] };
    expect(rest(again(0.02, budget))).toBeLessThan(1e-6);
  });

  it("do not claim to be all where an infestation may be contained and come again", () => {
    expect(again(0.02).breakEven.stopped.all).toBe(false);
  });
});
