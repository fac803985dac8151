import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { leastCost } from "../../../src/model/search/best.js";
import { type Choice, efficient, type Level } from "../../../src/model/search/choices.js";

const taking = (hours: number, met: number): Choice => ({
  levels: [
    { hours: 0, met: 0 },
    { hours, met },
  ],
});

/** Every way of taking one level of each. */
const all = (choices: readonly Choice[]): Level[] =>
  choices.reduce<Level[]>(
    (sums, { levels }) =>
      sums.flatMap((sum) =>
        levels.map(({ hours, met }) => ({ hours: sum.hours + hours, met: sum.met + met })),
      ),
    [{ hours: 0, met: 0 }],
  );

const level = fc.record({ hours: fc.integer({ min: 0, max: 30 }), met: fc.integer({ min: 0, max: 50 }) });
const choice = fc
  .tuple(level, fc.array(level, { maxLength: 3 }))
  .map(([first, rest]): Choice => ({ levels: [first, ...rest] }));

describe("what is efficient of several choices", () => {
  it("is the optimum of a textbook's knapsack", () => {
    // Cormen, Leiserson, Rivest and Stein, Introduction to Algorithms, greedy algorithms (from memory): weights 10, 20 and
    // 30 of values 60, 100 and 120 in a knapsack of 50 make 220, where the greedy choice by value over weight makes 160.
    const found = efficient([taking(10, 60), taking(20, 100), taking(30, 120)]);
    expect(found.findLast(({ hours }) => hours <= 50)).toMatchObject({
      hours: 50,
      met: 220,
      levels: [0, 1, 1],
    });
  });

  it("is what trying all finds", () => {
    fc.assert(
      fc.property(fc.array(choice, { minLength: 1, maxLength: 5 }), (choices) => {
        const tried = all(choices);
        const undominated = tried.filter(
          (one) =>
            !tried.some(
              (other) =>
                (other.hours < one.hours && other.met >= one.met) ||
                (other.hours <= one.hours && other.met > one.met),
            ),
        );
        const distinct = new Set(undominated.map(({ hours, met }) => `${hours} ${met}`));
        const found = efficient(choices);
        expect(new Set(found.map(({ hours, met }) => `${hours} ${met}`))).toEqual(distinct);
        for (const { hours, met, levels } of found) {
          const taken = choices.map(({ levels: own }, index) => own[levels[index] ?? -1]);
          expect(taken.reduce((sum, each) => sum + (each?.hours ?? Number.NaN), 0)).toBe(hours);
          expect(taken.reduce((sum, each) => sum + (each?.met ?? Number.NaN), 0)).toBe(met);
        }
      }),
    );
  });
});

describe("the rung that costs least", () => {
  const step = fc.record({
    loss: fc.integer({ min: 0, max: 100 }),
    idle: fc.integer({ min: 0, max: 5 }),
    hours: fc.integer({ min: 1, max: 9 }),
  });

  it("is found where fees pay for it, at what it costs, by hand", () => {
    // Five rungs of 10 an hour, from one hour on: 60, 5 − 20 + 20, 5 − 20 + 30, 5 − 20 + 40, 5 − 20 + 50. Losses, idle costs
    // and fees of the top and the hours of the foot leave a stretch as low as −5, so that the ends alone, 60 and 35,
    // settle nothing.
    const ladder = {
      length: 5,
      hours: (rung: number) => rung + 1,
      met: (rung: number) =>
        rung === 0
          ? { loss: 45, idle: 5, fees: 0, perHours: 10 }
          : { loss: 3, idle: 2, fees: -20, perHours: 10 },
    };
    expect(leastCost([ladder], 0)).toMatchObject({ best: { ladder: 0, rung: 1, cost: 5 }, bound: 5 });
    // Within 40 of the bound the better end will do.
    expect(leastCost([ladder], 40)).toEqual({
      best: { ladder: 0, rung: 4, cost: 35 },
      bound: -5,
      evaluated: 2,
    });
    expect(leastCost([{ ...ladder, length: 0 }], 0)).toEqual({ best: undefined, bound: 0, evaluated: 0 });
    const empty = { ...ladder, length: 0 };
    expect(leastCost([empty, ladder, empty], 0)).toMatchObject({
      best: { ladder: 1, rung: 1, cost: 5 },
      bound: 5,
    });
    // By itself the first rung is the foot and the top of its ladder.
    expect(leastCost([{ ...ladder, length: 1 }], 0)).toEqual({
      best: { ladder: 0, rung: 0, cost: 60 },
      bound: 60,
      evaluated: 1,
    });
  });

  it("is left where 600 rungs are worked out, with the bound as far as it is known", () => {
    // By hand: each hour costs the 10 that it spares, so that every rung costs nothing and no stretch can be ruled out.
    const even = {
      length: 5000,
      hours: (rung: number) => rung,
      met: (rung: number) => ({ loss: -10 * rung, idle: 0, fees: 0, perHours: 10 }),
    };
    const { best, bound, evaluated } = leastCost([even], 0);
    expect(best).toEqual({ ladder: 0, rung: 0, cost: 0 });
    expect(evaluated).toBe(600);
    expect(bound).toBeLessThan(-10);
  });

  it("is the one that trying all finds, and the bound lies within the tolerance below it", () => {
    const ladder = fc.array(step, { minLength: 1, maxLength: 40 }).map((steps) => {
      const total = steps.reduce((sum, { loss }) => sum + loss, 0);
      let [loss, idle, hours] = [total + 10, 0, 0];
      return steps.map((each) => {
        loss -= each.loss;
        idle += each.idle;
        hours += each.hours;
        return { loss, idle, fees: -idle / 10, perHours: 20 + idle / 100, hours };
      });
    });
    fc.assert(
      fc.property(
        fc.array(ladder, { minLength: 1, maxLength: 3 }),
        fc.constantFrom(0, 3),
        (ladders, tolerance) => {
          const tried = ladders.flatMap((rungs) =>
            rungs.map(({ loss, idle, fees, perHours, hours }) => loss + idle + fees + hours * perHours),
          );
          const { best, bound } = leastCost(
            ladders.map((rungs) => ({
              length: rungs.length,
              hours: (rung) => rungs[rung]?.hours ?? Number.NaN,
              met: (rung) => rungs[rung] ?? { loss: Number.NaN, idle: 0, fees: 0, perHours: 0 },
            })),
            tolerance,
          );
          const least = Math.min(...tried);
          expect(best?.cost ?? Number.NaN).toBeLessThanOrEqual(least + tolerance + 1e-9);
          expect(bound).toBeLessThanOrEqual(least + 1e-9);
          expect((best?.cost ?? Number.NaN) - bound).toBeLessThanOrEqual(tolerance + 1e-9);
        },
      ),
    );
  });
});
