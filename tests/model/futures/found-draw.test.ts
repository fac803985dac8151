import { describe, expect, it } from "vitest";
import { sumOf } from "../../../src/lists.js";
import { foundDraw, foundFuture } from "../../../src/model/futures/found-draw.js";
import { drawsPerYear, simulatedCourse } from "../../../src/model/futures/found-outcome.js";
import type { OptionNumbers } from "../../../src/model/option-numbers.js";
import { randomStream } from "../../../src/model/random/generator.js";
import { foundCourse, type PaidWhen, type PricedPhase, phaseWorth } from "../../../src/model/risk/course.js";
import { stateProbabilities } from "../../../src/model/risk/state-probabilities.js";

const hazards = [0.02, 0.2, 0.1, 0.05, 0.3, 0.1, 0.1, 0.15, 0.2, 0.1];
const factors = hazards.map((_, year) => 1.03 ** -year);
const detection = {
  chanceByAge: [0.3, 0.5, 0.8],
  containment: { success: 0.4, latestAge: 2 },
};
const none = factors.map(() => 0);
const numbers: OptionNumbers = {
  factors,
  programInYear: none,
  keptShare: 1,
  knownAtStart: false,
  scheduleInYear: none,
  losses: [],
  detection,
  attemptInYear: none,
};
const phaseOf = (when: PaidWhen, amount: number, fromAge = 0): PricedPhase => ({
  when,
  parts: [{ amount, fromAge, inYear: factors.map((factor, year) => factor * 1.01 ** year) }],
});
const phases = [
  phaseOf("found", 4000),
  phaseOf("tried", 400_000),
  phaseOf("known", 9000),
  phaseOf("known", 5000, 2),
  phaseOf("watched", 30_000),
  phaseOf("delisted", 2000),
];
const cleanYears = 3;
const exact = foundCourse(stateProbabilities(hazards, detection), { success: 0.4, cleanYears });
const drawn = foundDraw(numbers, phases, cleanYears);
const future = (luck: number, draws: readonly number[]) => foundFuture(drawn, hazards, { luck, draws });
const uniform = (stream: ReturnType<typeof randomStream>) =>
  Array.from({ length: hazards.length * drawsPerYear }, stream.uniform);

describe("what is done once mussels are found, in a future", () => {
  it("is expected to cost the same by the year of establishment as by the chances of each year", () => {
    const { expected, times } = future(0.5, uniform(randomStream(1, "draws")));
    phases.forEach((phase, index) => {
      expect(expected[index]).toBeCloseTo(phaseWorth(phase, exact.payments), 8);
    });
    for (const key of ["found", "tried", "contained", "returned"] as const) {
      expect(times[key]).toBeCloseTo(exact.times[key], 12);
    }
  });

  it("costs the same whichever payments phases have in common", () => {
    const [one, other] = [1.01, 1.05].map((rise) => factors.map((factor, year) => factor * rise ** year));
    if (!one || !other) throw new Error("no prices");
    const priced = (when: PaidWhen, fromAge: number, inYear: readonly number[]): PricedPhase => ({
      when,
      parts: [{ amount: 1000, fromAge, inYear }],
    });
    const alike = [
      priced("known", 0, one),
      priced("known", 0, other),
      priced("known", 2, one),
      priced("found", 0, one),
      priced("known", 0, one),
    ];
    const draw = foundDraw(numbers, alike, cleanYears);
    expect(draw.reasons).toHaveLength(4);
    const { expected } = foundFuture(draw, hazards, { luck: 0.5, draws: uniform(randomStream(2, "alike")) });
    expect(expected).toEqual(alike.map((phase) => expect.closeTo(phaseWorth(phase, exact.payments), 8)));
  });

  it("comes out on average at what is expected, within four standard errors of 8,000 courses", () => {
    const courses = 8000;
    const stream = randomStream(7, "courses");
    const futures = Array.from({ length: courses }, (_, index) =>
      future((index + 0.5) / courses, uniform(stream)),
    );
    phases.forEach((phase, index) => {
      const costs = futures.map(({ cost }) => cost[index] ?? Number.NaN);
      const mean = sumOf(costs) / courses;
      const error = Math.sqrt(sumOf(costs.map((cost) => (cost - mean) ** 2)) / courses / (courses - 1));
      expect(error).toBeGreaterThan(0);
      expect(Math.abs(mean - phaseWorth(phase, exact.payments))).toBeLessThan(4 * error);
    });
    const found = futures.filter(({ isFound }) => isFound).length / courses;
    expect(found).toBeLessThan(exact.times.found);
  });

  it("is one course: found in the second year, rid of mussels, watched, and infested again", () => {
    // Establishes in year 3 (chances up to then 0.02, 0.216, 0.294); not noticed in it, noticed in year 4 and rid of them;
    // again in year 5, noticed at once, and the attempt fails.
    const draws = hazards.flatMap((_, year) => [
      year === 4 ? 0.1 : 0.9,
      year === 2 ? 0.9 : 0.1,
      year === 3 ? 0.1 : 0.9,
    ]);
    const { times, payments } = simulatedCourse(hazards, detection, { luck: 0.25, draws, cleanYears });
    expect(times).toEqual({ found: 2, tried: 2, contained: 1, returned: 1 });
    expect(payments.found).toEqual([0, 0, 0, 1, 1, 0, 0, 0, 0, 0]);
    expect(payments.known(0)).toEqual([0, 0, 0, 1, 1, 1, 1, 1, 1, 1]);
    expect(payments.known(2)).toEqual([0, 0, 0, 0, 0, 0, 1, 1, 1, 1]);
    expect(payments.watched).toEqual([0, 0, 0, 0, 1, 1, 1, 0, 0, 0]);
    expect(payments.delisted).toEqual([0, 0, 0, 0, 0, 0, 1, 0, 0, 0]);
  });

  it("leaves out what has no chance, whatever is drawn", () => {
    // Contained in the first year at once; at no chance mussels neither come again nor are they detected, at a draw of 0.
    const certain = { chanceByAge: [1], containment: { success: 1, latestAge: 1 } };
    const luck = { luck: 0, draws: none.flatMap(() => [0, 0, 0]), cleanYears };
    const once = simulatedCourse([1, ...none.slice(1)], certain, luck).times;
    expect(once).toEqual({ found: 1, tried: 1, contained: 1, returned: 0 });
    expect(simulatedCourse(hazards, { chanceByAge: none }, luck).times.found).toBe(0);
    const hopeless = { chanceByAge: [1], containment: { success: 0, latestAge: 1 } };
    expect(simulatedCourse(hazards, hopeless, luck).times).toMatchObject({ tried: 1, contained: 0 });
  });

  it("is detected or not, and paid for only if it is", () => {
    const [always, never] = [{ chanceByAge: [1] }, { chanceByAge: none }].map((each) =>
      foundFuture(foundDraw({ ...numbers, detection: each }, phases, cleanYears), hazards, {
        luck: 0.2,
        draws: uniform(randomStream(4, "found")),
      }),
    );
    expect([always?.isFound, never?.isFound]).toEqual([true, false]);
    expect(always?.cost[0]).toBeGreaterThan(0);
    expect(never?.cost).toEqual(phases.map(() => 0));
  });

  it("begins once where mussels establish in the first year and nothing rids the lake of them", () => {
    const unlucky = hazards.flatMap(() => [0, 0, 0.9]);
    const { times, payments } = simulatedCourse(hazards, detection, { luck: 0, draws: unlucky, cleanYears });
    expect(times).toEqual({ found: 1, tried: 1, contained: 0, returned: 0 });
    expect(payments.known(0)).toEqual(hazards.map(() => 1));
    expect(payments.known(1)).toEqual(hazards.map((_, year) => Number(year > 0)));
  });

  it("is never late or missed where mussels are known at once, and costs nothing where they never establish", () => {
    const draws = uniform(randomStream(3, "none"));
    const { cost, isFound } = foundFuture(
      foundDraw({ ...numbers, detection: { chanceByAge: [] } }, phases, cleanYears),
      none,
      { luck: 0.999, draws },
    );
    expect(cost).toEqual(phases.map(() => 0));
    expect(isFound).toBe(false);
  });
});
