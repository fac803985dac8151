import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { erlangB, queueAt, type SteadyQueue, shareWaitingOver } from "../../../src/model/program/erlang-c.js";
import { halfDigit, relativeGap } from "../near.js";

/** The queue with service times of one hour, so that arrivals per hour are the load. */
const steady = (load: number, inspectors: number, serviceHours = 1): SteadyQueue => {
  const queue = queueAt({ arrivalsPerHour: load / serviceHours, serviceHours, inspectors });
  if (queue.kind !== "steady") throw new Error(`no steady state at load ${load} with ${inspectors}`);
  return queue;
};

/** Erlang C as it is written in textbooks, with powers and factorials. */
function textbook(load: number, servers: number): number {
  let term = 1;
  let sum = 0;
  for (let k = 0; k < servers; k++) {
    sum += term;
    term *= load / (k + 1);
  }
  const delayed = (term * servers) / (servers - load);
  return delayed / (sum + delayed);
}

const anySteady = fc
  .record({
    inspectors: fc.integer({ min: 1, max: 40 }),
    utilisation: fc.double({ min: 0.01, max: 0.99, noNaN: true }),
    serviceHours: fc.double({ min: 0.01, max: 2, noNaN: true }),
  })
  .map(({ inspectors, utilisation, serviceHours }) => ({
    inspectors,
    serviceHours,
    arrivalsPerHour: (utilisation * inspectors) / serviceHours,
  }));

describe("Erlang C", () => {
  it.each([
    // Table computed from the formula as written in textbooks, by another program than this one.
    [1, 0.5, 0.5, 1],
    [2, 1, 0.333333, 0.333333],
    [3, 2, 0.444444, 0.444444],
    [4, 2.5, 0.319857, 0.213238],
    [5, 2.5, 0.130371, 0.052149],
    [6, 2.5, 0.047445, 0.013556],
    [5, 4, 0.554113, 0.554113],
    [10, 8, 0.40918, 0.20459],
    [11, 10, 0.682118, 0.682118],
  ])(
    "with %i inspectors at load %f: chance %f, mean wait %f service times",
    (inspectors, load, chance, wait) => {
      expect(Math.abs(steady(load, inspectors).chanceToWait - chance)).toBeLessThan(halfDigit(6));
      expect(Math.abs(steady(load, inspectors).meanWaitHours - wait)).toBeLessThan(halfDigit(6));
    },
  );

  it("gives 4/9 with 3 servers at load 2", () => {
    // Textbook value (from memory); by hand: (8/6 x 3)/(1 + 2 + 2 + 4).
    expect(steady(2, 3).chanceToWait).toBeCloseTo(4 / 9, 14);
  });

  it("gives the waits of a hospital with one doctor and with two", () => {
    // Hillier and Lieberman, Introduction to Operations Research, County Hospital (from memory): 2 patients and 3
    // services an hour. One doctor: Wq 2/3 h, Lq 4/3, over 1/2 h 0.404, over 1 h 0.245. Two: 1/24 h, 1/12, 0.022, 0.003.
    const one = queueAt({ arrivalsPerHour: 2, serviceHours: 1 / 3, inspectors: 1 }) as SteadyQueue;
    const two = queueAt({ arrivalsPerHour: 2, serviceHours: 1 / 3, inspectors: 2 }) as SteadyQueue;
    expect([one.meanWaitHours, one.meanWaiting]).toEqual([
      expect.closeTo(2 / 3, 12),
      expect.closeTo(4 / 3, 12),
    ]);
    expect([two.meanWaitHours, two.meanWaiting]).toEqual([
      expect.closeTo(1 / 24, 12),
      expect.closeTo(1 / 12, 12),
    ]);
    expect(Math.abs(shareWaitingOver(one, 1 / 2) - 0.404)).toBeLessThan(1e-3);
    expect(Math.abs(shareWaitingOver(one, 1) - 0.245)).toBeLessThan(halfDigit(3));
    expect(Math.abs(shareWaitingOver(two, 1 / 2) - 0.022)).toBeLessThan(1e-3);
    expect(Math.abs(shareWaitingOver(two, 1) - 0.003)).toBeLessThan(halfDigit(3));
  });

  it("needs the 26 and 30 circuits of a published calculator's example at 20 erlang", () => {
    // personal.telefonica.terra.es, Erlang C calculator: 600 calls an hour of 120 s; 26 circuits for a chance of 15 %,
    // mean delay 3 s; 30 circuits bring the chance to 2.5 %.
    const chance = (circuits: number) => steady(20, circuits).chanceToWait;
    expect(chance(26)).toBeLessThanOrEqual(0.15);
    expect(chance(25)).toBeGreaterThan(0.15);
    const delay = steady(20, 26, 120 / 3600).meanWaitHours * 3600;
    expect(Math.round(delay)).toBe(3);
    expect(Math.round(chance(30) * 1000) / 1000).toBe(0.025);
  });

  it("asks for 6 servers at 30 arrivals an hour of 5 minutes if 90 % shall not be delayed", () => {
    // A published exercise: load 2.5; five servers delay 13 %, six 4.7 %.
    const chance = (servers: number) => steady(2.5, servers, 5 / 60).chanceToWait;
    expect(chance(5)).toBeGreaterThan(0.1);
    expect(chance(6)).toBeLessThanOrEqual(0.1);
  });

  it("is the closed form of M/M/1: chance ρ, mean wait ρ s/(1 − ρ), waiting ρ²/(1 − ρ)", () => {
    for (const load of [0.1, 0.5, 0.9, 0.999]) {
      const queue = steady(load, 1, 0.25);
      expect(relativeGap(queue.chanceToWait, load)).toBeLessThan(1e-12);
      expect(relativeGap(queue.meanWaitHours, (load * 0.25) / (1 - load))).toBeLessThan(1e-12);
      expect(relativeGap(queue.meanWaiting, load ** 2 / (1 - load))).toBeLessThan(1e-12);
      expect(relativeGap(shareWaitingOver(queue, 0.5), load * Math.exp(-(1 - load) * 2))).toBeLessThan(1e-12);
    }
  });

  it("agrees with the formula written with powers and factorials", () => {
    fc.assert(
      fc.property(anySteady, (station) => {
        const load = station.arrivalsPerHour * station.serviceHours;
        const found = steady(load, station.inspectors).chanceToWait;
        expect(relativeGap(found, textbook(load, station.inspectors))).toBeLessThan(1e-9);
      }),
      { seed: 142, numRuns: 300 },
    );
  });

  it("nears the law of many servers: C → 1/(1 + β Φ(β)/φ(β)) with β = (1 − ρ)√c", () => {
    // Halfin and Whitt 1981 (from memory). β = 1: Φ 0.841345, φ 0.241971, so C nears 0.223361.
    const gap = (servers: number) =>
      Math.abs(steady(servers - Math.sqrt(servers), servers).chanceToWait - 1 / (1 + 0.841345 / 0.241971));
    expect(gap(1_000_000)).toBeLessThan(1e-3);
    expect(gap(1_000_000)).toBeLessThan(gap(10_000));
    expect(gap(10_000)).toBeLessThan(gap(100));
  });
});

describe("a steady queue", () => {
  it("keeps Little's law: the mean wait is the integral of the share that waits longer", () => {
    fc.assert(
      fc.property(anySteady, (station) => {
        const queue = queueAt(station) as SteadyQueue;
        expect(queue.meanWaiting).toBeCloseTo(station.arrivalsPerHour * queue.meanWaitHours, 10);
        const step = queue.delayedWaitHours / 200;
        let integral = 0;
        for (let index = 0; index < 6000; index++)
          integral += step * shareWaitingOver(queue, (index + 0.5) * step);
        expect(relativeGap(integral, queue.meanWaitHours)).toBeLessThan(1e-4);
      }),
      { seed: 143, numRuns: 50 },
    );
  });

  it("waits less with one more inspector, and longer with more boats", () => {
    fc.assert(
      fc.property(anySteady, (station) => {
        const queue = queueAt(station) as SteadyQueue;
        const more = queueAt({ ...station, inspectors: station.inspectors + 1 }) as SteadyQueue;
        const fewer = queueAt({ ...station, arrivalsPerHour: station.arrivalsPerHour / 2 }) as SteadyQueue;
        for (const better of [more, fewer]) {
          expect(better.chanceToWait).toBeLessThan(queue.chanceToWait);
          expect(better.meanWaitHours).toBeLessThan(queue.meanWaitHours);
          expect(shareWaitingOver(better, 0.2)).toBeLessThanOrEqual(shareWaitingOver(queue, 0.2));
        }
      }),
      { seed: 144, numRuns: 200 },
    );
  });

  it("has no wait without boats, and none if service takes no time", () => {
    for (const [arrivalsPerHour, serviceHours] of [
      [0, 1],
      [30, 0],
    ] as const) {
      const queue = queueAt({ arrivalsPerHour, serviceHours, inspectors: 2 }) as SteadyQueue;
      expect(queue).toMatchObject({ kind: "steady", chanceToWait: 0, meanWaitHours: 0, meanWaiting: 0 });
      expect(shareWaitingOver(queue, 0)).toBe(0);
    }
  });
});

describe("a queue without a steady state", () => {
  it.each([
    // By hand: load = arrivals x minutes / 60, over the number of inspectors.
    [12, 5, 1, 1],
    [60, 15, 10, 1.5],
    [60, 5, 4, 1.25],
  ])(
    "is told as such: %i boats an hour, %i min each, %i inspectors",
    (arrivalsPerHour, minutes, inspectors, rho) => {
      const queue = queueAt({ arrivalsPerHour, serviceHours: minutes / 60, inspectors });
      expect(queue).toEqual({ kind: "overloaded", utilisation: expect.closeTo(rho, 12) });
    },
  );

  it("refuses numbers without meaning and names them", () => {
    const station = { arrivalsPerHour: 10, serviceHours: 0.1, inspectors: 1 };
    expect(() => queueAt({ ...station, inspectors: 1.5 })).toThrow(
      "number of inspectors is 1.5; allowed whole",
    );
    expect(() => queueAt({ ...station, inspectors: 0 })).toThrow("number of inspectors is 0");
    expect(() => queueAt({ ...station, arrivalsPerHour: -1 })).toThrow("arrivals per hour is -1; allowed");
    expect(() => queueAt({ ...station, serviceHours: Number.NaN })).toThrow("service time in hours is NaN");
  });
});

describe("Erlang B", () => {
  it.each([
    // Published traffic tables for a loss of 1 %, to three digits (from memory).
    [5, 1.36],
    [10, 4.46],
    [20, 12],
    [50, 37.9],
    [100, 84.1],
  ])("loses 1 %% with %i lines at %f erlang", (lines, load) => {
    const step = 0.5 * 10 ** (Math.floor(Math.log10(load)) - 2);
    expect(erlangB(load - step, lines)).toBeLessThan(0.01);
    expect(erlangB(load + step, lines)).toBeGreaterThan(0.01);
  });
});
