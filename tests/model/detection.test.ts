import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Comparison, compare, type OptionBalance } from "../../src/model/compare.js";
import { infestationCost } from "../../src/model/infestation-cost.js";
import type { Monitoring, ProgramOption, Response, StudyInput } from "../../src/model/inputs.js";
import { amountOf, sumOf } from "../../src/model/money/line.js";
import type { OptionResult } from "../../src/model/option.js";
import { randomStream } from "../../src/model/random/generator.js";
import { assumed, assumedWith } from "./assumptions.js";
import { relativeGap } from "./near.js";
import { boats, duties, fixedDock, floatingDock, noProgram, program, ramp, studyOf } from "./study.js";

const perArrival = "arrival.establishment-per-fouled-launch";
/** No structure ever costs that much, so that only samples and chances tell. */
const noHarm = { "detection.first-harm": 1e12 };

const heavyDuties = {
  ...duties,
  items: [{ name: "Permits, staff and monitoring", cost: 300_000, apart: false, fromYear: 2 }],
};
const study = studyOf([floatingDock, fixedDock, ramp, heavyDuties]);
const known = compare(study, assumed);

const treatment: Response = { name: "Treatment of a bay", cost: 400_000, chance: 0.25, latestYear: 2 };
const slowly: Monitoring = { noticedWithin: [0.1, 0.4, 0.8] };

interface Watch {
  readonly monitoring?: Monitoring;
  readonly response?: Response;
}

const watched = (baseline: Watch, other: Watch, input: StudyInput = study): StudyInput => ({
  ...input,
  options: [
    { ...noProgram, ...baseline },
    { ...program, ...other },
  ],
});

function programOf(comparison: Comparison): OptionBalance {
  const [balance] = comparison.options;
  if (!balance) throw new Error("no program");
  return balance;
}

/** The program of a study whose lake is worked out already. */
const resultOf = (watch: Watch, replaced: Readonly<Record<string, number>> = noHarm): OptionResult =>
  programOf(compare(watched(watch, watch), assumedWith(replaced), known)).result;

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
    const clean = { ...study, boats: { ...boats, otherPathways: 0, classes: boats.classes.slice(0, 1) } };
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
          resultOf({ monitoring: { planktonTows } }).course.map((year) => year.known);
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
    expect(result.course.every((year) => year.known === 1)).toBe(true);
    expect(result.containment?.attempts).toBe(0);
  });
});

describe("the first harm", () => {
  const own = known.schedules[0];
  const { firstAgeAbove } = own.infestation;
  const costOf = (age: number) =>
    [floatingDock, fixedDock, ramp].map(
      ({ id }) => own.infestation.ofStructure(id).byYear[age]?.toNumber() ?? 0,
    );

  it("is the first year in which one structure costs more than the limit; duties do not count", () => {
    const limit = 5000;
    const age = firstAgeAbove(limit) ?? Number.NaN;
    expect(Math.max(...costOf(age))).toBeGreaterThan(limit);
    for (let before = 0; before < age; before++)
      expect(Math.max(...costOf(before))).toBeLessThanOrEqual(limit);
    const dutiesAlone = own.structures.filter(({ structure }) => structure.id === duties.id);
    expect(infestationCost(dutiesAlone, 0).firstAgeAbove(limit)).toBeUndefined();
    expect(firstAgeAbove(1e12)).toBeUndefined();
  });

  it("makes it certain, whatever the samples", () => {
    const limit = 5000;
    const age = firstAgeAbove(limit) ?? Number.NaN;
    const { noticing } = resultOf({ monitoring: {} }, { "detection.first-harm": limit });
    // Nothing is watched for: no chance before, certainty from that year on.
    expect(noticing.chanceByAge.map(Math.abs)).toEqual(Array<number>(age).fill(0));
    expect(noticing.firstHarmAge).toBe(age);
  });
});

describe("containment", () => {
  it("that always succeeds at once leaves a lake clean at each year's end, for the attempts and first years alone", () => {
    const { hazard, course, containment, presentValue, programPerYear, schedule } = resultOf({
      response: { ...treatment, chance: 1, latestYear: 1 },
    });
    // By hand: clean at each start, so h attempts a year, each with the cost of a first year; the program never shrinks.
    const factors = known.discountFactors.reduce((sum, factor) => sum + factor, 0);
    const first = schedule.infestation.byYear[0]?.toNumber() ?? Number.NaN;
    for (const { infested, attempts } of course) {
      expect(Math.abs(infested)).toBeLessThan(1e-12);
      expect(attempts).toBeCloseTo(hazard, 12);
    }
    expect(containment?.successes).toBeCloseTo(hazard * course.length, 10);
    expect(
      relativeGap(presentValue.infestation.toNumber(), factors * hazard * (400_000 + first)),
    ).toBeLessThan(1e-9);
    expect(relativeGap(presentValue.program.toNumber(), factors * programPerYear.toNumber())).toBeLessThan(
      1e-9,
    );
  });

  it("is paid by the bearer that the study names, within the sums by year and by bearer", () => {
    const bearer = [
      { id: "city", share: 0.7 },
      { id: "power-fund", share: 0.3 },
    ];
    const { containment, infestationByBearer, presentValue, expectedByYear } = resultOf({
      monitoring: slowly,
      response: { ...treatment, bearer },
    });
    const paid = (id: string) =>
      infestationByBearer.find((each) => each.id === id)?.presentValue.toNumber() ?? Number.NaN;
    // Neither owns a structure here: they pay for the attempts alone.
    const attempts = containment?.presentValue.toNumber() ?? Number.NaN;
    expect(attempts).toBeGreaterThan(0);
    expect(relativeGap(paid("city"), 0.7 * attempts)).toBeLessThan(1e-12);
    expect(relativeGap(paid("power-fund"), 0.3 * attempts)).toBeLessThan(1e-12);
    const byBearer = sumOf(infestationByBearer.map((each) => each.presentValue)).toNumber();
    const byYear = expectedByYear.reduce(
      (sum, { infestation }, year) =>
        sum + infestation.toNumber() * (known.discountFactors[year] ?? Number.NaN),
      0,
    );
    expect(relativeGap(byBearer, presentValue.infestation.toNumber())).toBeLessThan(1e-12);
    expect(relativeGap(byYear, presentValue.infestation.toNumber())).toBeLessThan(1e-12);
  });

  it("is worth what the option costs without it, less what it costs with it", () => {
    const at = (watch: Watch) =>
      programOf(compare(watched({ monitoring: slowly }, watch), assumedWith(noHarm), known));
    const without = at({ monitoring: slowly });
    const cheap = at({ monitoring: slowly, response: { ...treatment, cost: 1, chance: 1 } });
    const saved = without.result.presentValue.total.minus(cheap.result.presentValue.total).toNumber();
    expect(without.responseBenefit()).toBeUndefined();
    expect(saved).toBeGreaterThan(0);
    expect(cheap.responseBenefit()?.toNumber()).toBeCloseTo(saved, 6);
    // A dear attempt that never succeeds saves nothing: it is worth its own cost, lost.
    const vain = at({ monitoring: slowly, response: { ...treatment, chance: 0 } });
    expect(
      vain
        .responseBenefit()
        ?.plus(vain.result.containment?.presentValue ?? Number.NaN)
        .toNumber(),
    ).toBeCloseTo(0, 6);
  });

  it("falls to the program's bearer if nobody is named", () => {
    expect(resultOf({ response: treatment }).containment?.line.bearer).toBe(study.money.programBearer);
  });
});

/** Present cost of one lake followed by chance, with all that the option pays. */
function followedLake(result: OptionResult, random: () => number): number {
  const { option, noticing, schedule, unnoticed, containment, programPerYear, hazard } = result;
  const perYear = programPerYear.toNumber();
  const perAttempt = containment ? amountOf(containment.line).toNumber() : 0;
  let [age, isKnown, cost] = [0, false, 0];
  for (const factor of known.discountFactors) {
    const running = isKnown ? option.afterInfestation.share : 1;
    if (age > 0) age++;
    else if (random() < hazard) age = 1;
    let spent = perYear * running;
    let isContained = false;
    if (age > 0) {
      if (!isKnown && random() < (noticing.chanceByAge[age - 1] ?? 1)) {
        isKnown = true;
        if (noticing.containment && age <= noticing.containment.latestAge) {
          spent += perAttempt;
          isContained = random() < noticing.containment.success;
        }
      }
      const stream = isKnown ? schedule.infestation.byYear : unnoticed.harm;
      spent += stream[age - 1]?.toNumber() ?? Number.NaN;
    }
    cost += factor * spent;
    if (isContained) [age, isKnown] = [0, false];
  }
  return cost;
}

describe("the expected cost of an option", () => {
  it("is that of lakes followed one by one", () => {
    const result = resultOf({ monitoring: slowly, response: treatment }, { ...noHarm, [perArrival]: 0.02 });
    const runs = 20_000;
    const { uniform } = randomStream(11, "detection");
    let [sum, squares] = [0, 0];
    for (let run = 0; run < runs; run++) {
      const cost = followedLake(result, uniform);
      sum += cost;
      squares += cost ** 2;
    }
    const mean = sum / runs;
    const standardError = Math.sqrt((squares / runs - mean ** 2) / runs);
    expect(result.containment?.attempts).toBeGreaterThan(0.01);
    expect(Math.abs(mean - result.presentValue.total.toNumber())).toBeLessThan(4 * standardError);
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
      const pressure = -Math.log((1 - value) / (1 - boats.otherPathways));
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
