import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type BoatDays, type StationDay, sampleBoatDays } from "../../../src/model/program/boat-days.js";
import { queueAt, type SteadyQueue, shareWaitingOver } from "../../../src/model/program/erlang-c.js";
import type { Estimate } from "../../../src/model/program/estimate.js";
import { serveDays } from "../../../src/model/program/queue-simulation.js";
import { meanSquareServiceHours, type ServiceTimes } from "../../../src/model/program/service-time.js";
import { summarise } from "./queue-summary.js";

const quickOnly = (minutes: number, spread: ServiceTimes["spread"] = "exponential"): ServiceTimes => ({
  quickCheckHours: minutes / 60,
  fullInspectionHours: 0,
  setAsideShare: 0,
  spread,
});

const flatDay = (boats: number, hours: number, service: ServiceTimes): StationDay => ({
  id: "flat",
  arrivalsByHour: Array<number>(hours).fill(boats),
  service,
});

const sampling = { replications: 200, seed: 11 };

function expectWithin4Errors({ mean, standardError }: Estimate, expected: number): void {
  expect(standardError).toBeGreaterThan(0);
  expect(Math.abs(mean - expected)).toBeLessThan(4 * standardError);
}

const anyDay = fc.record({
  id: fc.string(),
  arrivalsByHour: fc
    .array(fc.double({ min: 0, max: 40, noNaN: true }), { minLength: 1, maxLength: 12 })
    .filter((hours) => hours.some((each) => each > 0)),
  service: fc.record({
    quickCheckHours: fc.double({ min: 0, max: 0.3, noNaN: true }),
    fullInspectionHours: fc.double({ min: 0, max: 1, noNaN: true }),
    setAsideShare: fc.double({ min: 0, max: 1, noNaN: true }),
    spread: fc.constantFrom("exponential", "constant"),
  }),
});

describe("a simulated day", () => {
  /** Two days of two open hours: five boats, then none. */
  const days: BoatDays = {
    replications: 2,
    openHours: 2,
    firstBoat: [0, 5, 5],
    arrivalHours: Float64Array.of(0.5, 0.5, 0.75, 1.75, 1.75),
    serviceHours: Float64Array.of(1, 0.5, 0.25, 0.5, 1),
  };

  it("is as worked out by hand with one inspector", () => {
    // Starts 0.5, 1.5, 2, 2.25, 2.75; waits 0, 1, 1.25, 0.5, 1: 3.75 h. The last ends at 3.75, so 1.75 h after closing.
    // Two of five wait over one hour? 1.25 only. Two begin after closing (2.25 and 2.75; 2 is closing itself).
    const served = serveDays(days, 1, 1);
    expect(Array.from(served.waitHours)).toEqual([2.25, 1.5, 0, 0]);
    expect(Array.from(served.boats)).toEqual([3, 2, 0, 0]);
    expect(Array.from(served.boatsOver)).toEqual([1, 0, 0, 0]);
    expect(Array.from(served.longestWaitHours)).toEqual([1.25, 0]);
    expect(Array.from(served.servedAfterClosing)).toEqual([2, 0]);
    expect(Array.from(served.hoursAfterClosing)).toEqual([1.75, 0]);
    expect(summarise(served).utilisation.mean).toBeCloseTo(1.5 / 2 / 2, 12);
    expect(summarise(served).meanWaitHours.mean).toBeCloseTo(3.75 / 5, 12);
  });

  it("is as worked out by hand with two inspectors", () => {
    // The third waits from 0.75 to 1, the others find somebody free; they end at 2.25 and 2.75: 1 h after closing.
    const served = serveDays(days, 2, 0);
    expect(Array.from(served.waitHours)).toEqual([0.25, 0, 0, 0]);
    expect(Array.from(served.boatsOver)).toEqual([1, 0, 0, 0]);
    expect(Array.from(served.servedAfterClosing)).toEqual([0, 0]);
    expect(Array.from(served.hoursAfterClosing)).toEqual([1, 0]);
  });

  it("serves every boat that arrives, and works all its work", () => {
    fc.assert(
      fc.property(anyDay, fc.integer({ min: 1, max: 8 }), (day, inspectors) => {
        const drawn = sampleBoatDays(day, { replications: 5, seed: 3 });
        const served = serveDays(drawn, inspectors, 0.25);
        const sum = (values: Float64Array) => values.reduce((total, each) => total + each, 0);
        expect(sum(served.boats)).toBe(drawn.arrivalHours.length);
        expect(sum(served.busyHours)).toBeCloseTo(sum(drawn.serviceHours), 8);
        const { utilisation } = summarise(served);
        expect(utilisation.mean).toBeGreaterThanOrEqual(-1e-9);
        expect(utilisation.mean).toBeLessThanOrEqual(1 + 1e-9);
      }),
      { seed: 146, numRuns: 100 },
    );
  });

  it("never has longer waits with one more inspector", () => {
    fc.assert(
      fc.property(anyDay, fc.integer({ min: 1, max: 8 }), (day, inspectors) => {
        const drawn = sampleBoatDays(day, { replications: 5, seed: 4 });
        const fewer = serveDays(drawn, inspectors, 0.25);
        const more = serveDays(drawn, inspectors + 1, 0.25);
        for (const table of ["waitHours", "boatsOver", "longestWaitHours", "servedAfterClosing"] as const) {
          expect(more[table].every((each, index) => each <= (fewer[table][index] ?? 0))).toBe(true);
        }
      }),
      { seed: 147, numRuns: 100 },
    );
  });

  it("never has shorter waits where more boats are set aside", () => {
    fc.assert(
      fc.property(anyDay, fc.integer({ min: 1, max: 8 }), (day, inspectors) => {
        const serve = (setAsideShare: number) =>
          serveDays(
            sampleBoatDays(
              { ...day, service: { ...day.service, setAsideShare } },
              { replications: 5, seed: 4 },
            ),
            inspectors,
            0.25,
          );
        const less = serve(day.service.setAsideShare / 2);
        expect(
          serve(day.service.setAsideShare).waitHours.every(
            (each, hour) => each >= (less.waitHours[hour] ?? 0),
          ),
        ).toBe(true);
      }),
      { seed: 148, numRuns: 50 },
    );
  });

  it("is the same again for the same seed", () => {
    const day = flatDay(20, 8, quickOnly(5));
    const run = () => summarise(serveDays(sampleBoatDays(day, sampling), 2, 0.25));
    expect(run()).toEqual(run());
  });

  it("refuses a number of inspectors that is none", () => {
    expect(() => serveDays(days, 0, 1)).toThrow("number of inspectors is 0; allowed whole numbers from 1");
    expect(() => serveDays(days, 1.5, 1)).toThrow("number of inspectors is 1.5");
  });
});

describe("in steady hours simulation agrees with", () => {
  // The first four hours are left out: at least eight relaxation times s/(√c − √a)² of each case.
  it.each([
    [30, 1, 1],
    [60, 1, 2],
    [40, 3, 4],
    [100, 3, 7],
    [240, 2, 11],
  ])("Erlang C: %i boats an hour of %f min, %i inspectors", (boats, minutes, inspectors) => {
    const target = minutes / 60;
    const served = serveDays(
      sampleBoatDays(flatDay(boats, 24, quickOnly(minutes)), sampling),
      inspectors,
      target,
    );
    const found = summarise(served, 4);
    const queue = queueAt({ arrivalsPerHour: boats, serviceHours: minutes / 60, inspectors }) as SteadyQueue;
    expectWithin4Errors(found.meanWaitHours, queue.meanWaitHours);
    expectWithin4Errors(found.shareOverTarget, shareWaitingOver(queue, target));
    expectWithin4Errors(found.boatsPerDay, 20 * boats);
    // Work left at closing: every boat in the station has a mean service time left, having no memory.
    const left = (queue.utilisation * inspectors + queue.meanWaiting) * (minutes / 60);
    expectWithin4Errors(found.hoursAfterClosing, left);
    expectWithin4Errors(found.utilisation, queue.utilisation - left / (24 * inspectors));
  });

  it.each(["exponential", "constant"] as const)(
    "Pollaczek and Khinchine for one inspector, %s times",
    (spread) => {
      // W = λ E[S²]/(2(1 − ρ)) (textbook). λ 12, mean service 2 + 0.1·8 = 2.8 min, ρ 0.56.
      const service = { quickCheckHours: 2 / 60, fullInspectionHours: 8 / 60, setAsideShare: 0.1, spread };
      const served = serveDays(sampleBoatDays(flatDay(12, 24, service), sampling), 1, 0.1);
      const expected = (12 * meanSquareServiceHours(service)) / (2 * (1 - 0.56));
      expectWithin4Errors(summarise(served, 6).meanWaitHours, expected);
    },
  );

  it("the exact wait about as closely as its standard errors say", () => {
    // Over 60 seeds the squared deviation in standard errors has mean 1 (a little more with 30 replications: t of 29
    // degrees has variance 29/27) and standard error √(2/60) = 0.18: four of them about 1.07.
    const queue = queueAt({ arrivalsPerHour: 40, serviceHours: 3 / 60, inspectors: 4 }) as SteadyQueue;
    const day = flatDay(40, 12, quickOnly(3));
    const squares = Array.from({ length: 60 }, (_, seed) => {
      const served = serveDays(sampleBoatDays(day, { replications: 30, seed }), 4, 0.1);
      const { mean, standardError } = summarise(served, 2).meanWaitHours;
      return ((mean - queue.meanWaitHours) / standardError) ** 2;
    });
    const mean = squares.reduce((sum, each) => sum + each, 0) / 60;
    expect(mean).toBeGreaterThan(0.35);
    expect(mean).toBeLessThan(1.8);
  });
});

describe("in overloaded hours", () => {
  it("the queue grows as a fluid does", () => {
    // By hand: 600 boats an hour for 4 h, 40 inspectors at 5 min serve 480. A fluid's wait is 0.25 t, on average 0.5 h
    // and 1 h at the end; 480 boats are left at closing. The work left is 200 h come less 160 h done: 40 h.
    const day = flatDay(600, 4, quickOnly(5, "constant"));
    const served = serveDays(sampleBoatDays(day, { replications: 40, seed: 2 }), 40, 0.25);
    const found = summarise(served);
    // A queue never waits less than its fluid. It waits longer by about λ/(2(λ − cμ)) = 2.5 boats: 1 % of 0.5 h.
    expect(found.meanWaitHours.mean).toBeGreaterThan(0.5 - 4 * found.meanWaitHours.standardError);
    expect(found.meanWaitHours.mean).toBeLessThan(0.5 * 1.02 + 4 * found.meanWaitHours.standardError);
    // A fluid waits over 0.25 h from 1 h on: three quarters of the boats.
    expect(Math.abs(found.shareOverTarget.mean - 0.75)).toBeLessThan(
      0.02 + 4 * found.shareOverTarget.standardError,
    );
    expect(Math.abs(found.servedAfterClosing.mean - 480)).toBeLessThan(
      5 + 4 * found.servedAfterClosing.standardError,
    );
    expect(Math.abs(found.hoursAfterClosing.mean - 40)).toBeLessThan(
      0.5 + 4 * found.hoursAfterClosing.standardError,
    );
    expect(found.utilisation.mean).toBeGreaterThan(0.98);
  });

  it("a crowd at noon is worked off later, and the boats of calm hours wait as well", () => {
    const day = { id: "noon", arrivalsByHour: [5, 60, 5, 5], service: quickOnly(5) };
    const served = serveDays(sampleBoatDays(day, sampling), 2, 0.25);
    // By hand, as a fluid: 5 h of work come in the second hour, two inspectors do 2 h, so it ends with a wait of
    // 3/2 h. Then the wait falls by 1 - 5/24 an hour and is gone after 1.895 h: over the two hours left, boats wait
    // 1.5²/(2 · 19/24)/2 = 0.711 h on average. Chance makes it more; alone those hours would be all but without wait.
    const { mean, standardError } = summarise(served, 2).meanWaitHours;
    expect(mean).toBeGreaterThan(0.711 - 4 * standardError);
    expect(mean).toBeLessThan(1);
    const calm = queueAt({ arrivalsPerHour: 5, serviceHours: 5 / 60, inspectors: 2 }) as SteadyQueue;
    expect(calm.meanWaitHours).toBeLessThan(0.01);
  });
});

describe("speed", () => {
  it("200 days of 400 boats are drawn and served in well under 100 ms of processor time", () => {
    const day = { ...flatDay(40, 10, quickOnly(5)), id: "peak" };
    const times = Array.from({ length: 5 }, (_, seed) => {
      const start = process.cpuUsage();
      summarise(serveDays(sampleBoatDays(day, { replications: 200, seed }), 4, 0.25));
      return process.cpuUsage(start).user / 1000;
    });
    expect(Math.min(...times)).toBeLessThan(100);
  });
});
