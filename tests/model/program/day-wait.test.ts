import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type StationDay, sampleBoatDays } from "../../../src/model/program/boat-days.js";
import { type DayWait, dayWait } from "../../../src/model/program/day-wait.js";
import { queueAt, type SteadyQueue, shareWaitingOver } from "../../../src/model/program/erlang-c.js";
import { serveDays } from "../../../src/model/program/queue-simulation.js";
import type { ServiceTimes } from "../../../src/model/program/service-time.js";
import { hourState, relaxationHours } from "../../../src/model/program/steady-hour.js";
import { summarise } from "./queue-summary.js";

const quick: ServiceTimes = {
  quickCheckHours: 2 / 60,
  fullInspectionHours: 1 / 2,
  setAsideShare: 0,
  spread: "exponential",
};
const target = { share: 0.9, hours: 2 / 60 };
const sampling = { replications: 300, seed: 21 };
const judge = (day: StationDay, inspectors: number): DayWait =>
  dayWait(day, inspectors, { target, drawn: () => sampleBoatDays(day, sampling) });
const dayOf = (arrivalsByHour: readonly number[], service = quick): StationDay => ({
  id: "day",
  arrivalsByHour,
  service,
});
const reasons = (wait: DayWait) =>
  wait.hours.map(({ judgement }) => (judgement.method === "erlang-c" ? "erlang-c" : judgement.because));

describe("an hour", () => {
  it("settles in s/(1 − √ρ)² with one inspector, and in s where inspectors are many", () => {
    // Relaxation time of M/M/1, 1/(√μ − √λ)² (textbook; from memory): ρ 1/4 gives 4 s. M/M/∞: s.
    expect(relaxationHours(1 / 4, 1, 0.1)).toBeCloseTo(0.4, 12);
    expect(relaxationHours(1, 100, 0.1)).toBeCloseTo(0.1, 12);
  });

  it("is steady only if service is near exponential, work is below capacity and it settles soon", () => {
    const because = (arrivals: number, inspectors: number, service: ServiceTimes) => {
      const state = hourState(arrivals, inspectors, service);
      return state.kind === "steady" ? "steady" : state.because;
    };
    expect(because(60, 5, quick)).toBe("steady");
    expect(because(60, 2, quick)).toBe("overloaded");
    expect(because(60, 3, quick)).toBe("slow-to-settle");
    expect(because(60, 5, { ...quick, spread: "constant" })).toBe("service-not-exponential");
    expect(because(10, 5, { ...quick, setAsideShare: 0.1 })).toBe("service-not-exponential");
    // Constant times of 1 and 7 for one in twenty vary as much as an exponential, (1 + 0.05·48)/1.3² - 1 = 1.01, yet
    // are none.
    const mixed = {
      ...quick,
      spread: "constant",
      setAsideShare: 0.05,
      fullInspectionHours: 12 / 60,
    } as const;
    expect(because(30, 5, mixed)).toBe("service-not-exponential");
    // One in a thousand set aside for as long as a quick check hardly moves the variation.
    expect(because(60, 5, { ...quick, setAsideShare: 0.001, fullInspectionHours: 2 / 60 })).toBe("steady");
    expect(because(60, 1, { ...quick, quickCheckHours: 0 })).toBe("steady");
  });
});

describe("a day of steady hours", () => {
  const day = dayOf([30, 60, 0, 45]);

  it("is judged by Erlang C alone, without drawing a boat", () => {
    const wait = dayWait(day, 5, {
      target,
      drawn: () => {
        throw new Error("no boats are needed");
      },
    });
    expect(reasons(wait)).toEqual(Array(4).fill("erlang-c"));
    // Weighted by boats: Σ λ W/Σ λ.
    const queues = [30, 60, 45].map(
      (arrivalsPerHour) => queueAt({ arrivalsPerHour, serviceHours: 2 / 60, inspectors: 5 }) as SteadyQueue,
    );
    const weighted = (each: (queue: SteadyQueue) => number) =>
      [30, 60, 45].reduce((sum, boats, index) => sum + boats * each(queues[index] as SteadyQueue), 0) / 135;
    expect(wait.meanWaitHours).toEqual({
      mean: expect.closeTo(
        weighted((queue) => queue.meanWaitHours),
        14,
      ),
      standardError: 0,
    });
    expect(wait.shareOverTarget.mean).toBeCloseTo(
      weighted((queue) => shareWaitingOver(queue, 2 / 60)),
      14,
    );
  });

  it("is what simulation finds, but for what hours carry over", () => {
    // The rule lets at most about a tenth of the change between hours into an hour's mean; opening without a queue
    // counts as a change. So allow a tenth of the largest hour's wait, beside 4 standard errors.
    const steadyDay = fc
      .record({
        inspectors: fc.integer({ min: 4, max: 10 }),
        loads: fc.array(fc.double({ min: 0.05, max: 0.6, noNaN: true }), { minLength: 2, maxLength: 8 }),
        minutes: fc.double({ min: 0.5, max: 3, noNaN: true }),
      })
      .map(({ inspectors, loads, minutes }) => ({
        inspectors,
        steady: dayOf(
          loads.map((load) => (load * inspectors * 60) / minutes),
          { ...quick, quickCheckHours: minutes / 60 },
        ),
      }))
      .filter(({ inspectors, steady }) =>
        steady.arrivalsByHour.every((each) => hourState(each, inspectors, steady.service).kind === "steady"),
      );
    fc.assert(
      fc.property(steadyDay, ({ inspectors, steady }) => {
        const exact = judge(steady, inspectors);
        const days = sampleBoatDays(steady, { ...sampling, replications: 100 });
        const found = summarise(serveDays(days, inspectors, target.hours));
        const hourly = exact.hours.filter(({ boats }) => boats > 0);
        for (const [judged, simulated, worst] of [
          [
            exact.meanWaitHours,
            found.meanWaitHours,
            Math.max(...hourly.map(({ waitHours, boats }) => waitHours / boats)),
          ],
          [
            exact.shareOverTarget,
            found.shareOverTarget,
            Math.max(...hourly.map(({ boatsOver, boats }) => boatsOver / boats)),
          ],
        ] as const) {
          expect(Math.abs(judged.mean - simulated.mean)).toBeLessThan(
            worst / 10 + 4 * simulated.standardError + 1e-4,
          );
        }
        expect(Math.abs(exact.hoursAfterClosing.mean - found.hoursAfterClosing.mean)).toBeLessThan(
          0.01 * exact.hoursAfterClosing.mean + 4 * found.hoursAfterClosing.standardError,
        );
      }),
      { seed: 149, numRuns: 25 },
    );
  });
});

describe("a day with an hour that is not steady", () => {
  it("is simulated from that hour to its end, and says why", () => {
    const wait = judge(dayOf([30, 60, 200, 60, 30, 30]), 5);
    expect(reasons(wait)).toEqual([
      "erlang-c",
      "erlang-c",
      "overloaded",
      "earlier-hour-not-steady",
      "earlier-hour-not-steady",
      "earlier-hour-not-steady",
    ]);
    expect(wait.hours.map(({ utilisation }) => utilisation)).toEqual(
      [30, 60, 200, 60, 30, 30].map((boats) => expect.closeTo((boats * 2) / 60 / 5, 12)),
    );
  });

  it("adds up: the hours' boats and waits give the day's means", () => {
    for (const arrivals of [
      [30, 60, 200, 60],
      [200, 10],
      [20, 20, 80],
    ]) {
      const wait = judge(dayOf(arrivals), 4);
      const total = (key: "boats" | "waitHours" | "boatsOver") =>
        wait.hours.reduce((sum, hour) => sum + hour[key], 0);
      expect(wait.meanWaitHours.mean).toBeCloseTo(total("waitHours") / total("boats"), 10);
      expect(wait.shareOverTarget.mean).toBeCloseTo(total("boatsOver") / total("boats"), 10);
    }
  });

  it("is wholly the simulation if its first hour is not steady", () => {
    const day = dayOf([20, 30, 20], { ...quick, setAsideShare: 0.05 });
    const wait = judge(day, 3);
    const found = summarise(serveDays(sampleBoatDays(day, sampling), 3, target.hours));
    expect(wait.meanWaitHours).toEqual(found.meanWaitHours);
    expect(wait.shareOverTarget).toEqual(found.shareOverTarget);
    expect(wait.hoursAfterClosing).toEqual(found.hoursAfterClosing);
  });

  it("keeps the target exactly if the share within it is at least the one asked", () => {
    const day = dayOf([20, 30, 20], { ...quick, setAsideShare: 0.05 });
    const over = judge(day, 2).shareOverTarget.mean;
    const keeps = (share: number) =>
      dayWait(day, 2, {
        target: { ...target, share },
        drawn: () => sampleBoatDays(day, sampling),
      }).keepsTarget;
    expect(keeps(1 - over)).toBe(true);
    expect(keeps(1 - over + 1e-6)).toBe(false);
  });

  it("refuses a day without boats", () => {
    expect(() => judge(dayOf([0, 0]), 2)).toThrow("day: no arrivals in any hour");
  });
});
