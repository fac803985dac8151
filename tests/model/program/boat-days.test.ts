import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type StationDay, sampleBoatDays } from "../../../src/model/program/boat-days.js";
import {
  meanServiceHours,
  meanSquareServiceHours,
  type ServiceTimes,
  squaredVariation,
} from "../../../src/model/program/service-time.js";

const service: ServiceTimes = {
  quickCheckHours: 5 / 60,
  fullInspectionHours: 1 / 2,
  setAsideShare: 0.1,
  spread: "exponential",
};
const day: StationDay = { id: "July, peak", arrivalsByHour: [4, 0, 20, 7.5], service };
const sampling = { replications: 2000, seed: 5 };
const mean = (values: readonly number[]) => values.reduce((sum, each) => sum + each, 0) / values.length;

describe("boats drawn", () => {
  const days = sampleBoatDays(day, sampling);
  const arrivalsOf = (replication: number) =>
    Array.from(days.arrivalHours.subarray(days.firstBoat[replication], days.firstBoat[replication + 1]));
  const all = Array.from({ length: sampling.replications }, (_, index) => arrivalsOf(index));

  it.each([
    [0, 4],
    [1, 0],
    [2, 20],
    [3, 7.5],
  ])("in open hour %i are Poisson with mean and variance %f, within 4 standard errors", (hour, expected) => {
    // Poisson: variance of the mean m/n; of the squared deviation (m + 2 m²)/n, from the fourth moment m + 3 m².
    const counts = all.map((arrivals) => arrivals.filter((each) => Math.floor(each) === hour).length);
    const n = counts.length;
    expect(Math.abs(mean(counts) - expected)).toBeLessThanOrEqual(4 * Math.sqrt(expected / n));
    const variance = mean(counts.map((count) => (count - expected) ** 2));
    expect(Math.abs(variance - expected)).toBeLessThanOrEqual(
      4 * Math.sqrt((expected + 2 * expected ** 2) / n),
    );
  });

  it("come in order, within open hours, and anywhere in their hour alike", () => {
    for (const arrivals of all.slice(0, 100)) {
      expect(arrivals).toEqual(arrivals.toSorted((one, other) => one - other));
    }
    const within = all.flat().map((each) => each - Math.floor(each));
    expect(days.arrivalHours.every((each) => each >= 0 && each <= day.arrivalsByHour.length)).toBe(true);
    expect(Math.abs(mean(within) - 1 / 2)).toBeLessThan(4 * Math.sqrt(1 / 12 / within.length));
  });

  it.each(["exponential", "constant"] as const)("take the mean and mean square of %s service", (spread) => {
    const drawn = Array.from(
      sampleBoatDays({ ...day, service: { ...service, spread } }, sampling).serviceHours,
    );
    for (const [power, expected] of [
      [1, meanServiceHours({ ...service, spread })],
      [2, meanSquareServiceHours({ ...service, spread })],
    ] as const) {
      const powers = drawn.map((each) => each ** power);
      const found = mean(powers);
      const variance = mean(powers.map((each) => (each - found) ** 2));
      expect(Math.abs(found - expected)).toBeLessThan(4 * Math.sqrt(variance / drawn.length));
    }
  });

  it("are the same for the same seed and id, and others for others", () => {
    const few = { replications: 3, seed: 5 };
    expect(sampleBoatDays(day, few)).toEqual(sampleBoatDays(day, few));
    const arrivals = (id: string, seed: number) =>
      Array.from(sampleBoatDays({ ...day, id }, { ...few, seed }).arrivalHours);
    expect(arrivals("June, peak", 5)).not.toEqual(arrivals(day.id, 5));
    expect(arrivals(day.id, 6)).not.toEqual(arrivals(day.id, 5));
  });

  it("stay the same if more days are drawn, or if service is another", () => {
    const few = sampleBoatDays(day, { ...sampling, replications: 3 });
    expect(days.firstBoat.slice(0, 4)).toEqual(few.firstBoat);
    expect(days.serviceHours.slice(0, few.serviceHours.length)).toEqual(few.serviceHours);
    const other = sampleBoatDays({ ...day, service: { ...service, setAsideShare: 1 } }, sampling);
    expect(other.arrivalHours).toEqual(days.arrivalHours);
    expect(other.serviceHours.every((each, boat) => each >= (days.serviceHours[boat] ?? 0))).toBe(true);
  });

  it("are refused where a number has no meaning, and the day is named", () => {
    const drawWith = (change: Partial<StationDay>, replications = 2) =>
      sampleBoatDays({ ...day, ...change }, { replications, seed: 1 });
    expect(() => drawWith({ arrivalsByHour: [] })).toThrow("July, peak: 0 open hours; allowed 1 to 24");
    expect(() => drawWith({ arrivalsByHour: Array<number>(25).fill(1) })).toThrow("25 open hours");
    // A station may be open all day or for one hour, and set every boat aside.
    expect(drawWith({ arrivalsByHour: Array<number>(24).fill(1) }).openHours).toBe(24);
    expect(drawWith({ arrivalsByHour: [1], service: { ...service, setAsideShare: 1 } }).openHours).toBe(1);
    expect(() => drawWith({ arrivalsByHour: [1, -2] })).toThrow(
      "arrivals in open hour 2 is -2; allowed numbers",
    );
    expect(() => drawWith({ arrivalsByHour: [0, 0] })).toThrow(
      "July, peak: no arrivals in any hour; leave out",
    );
    expect(() => drawWith({ service: { ...service, setAsideShare: 1.5 } })).toThrow("is 1.5; allowed 0 to 1");
    expect(() => drawWith({ service: { ...service, quickCheckHours: Number.NaN } })).toThrow("quick check");
    expect(() => drawWith({}, 1)).toThrow("July, peak: replications are 1; allowed whole numbers from 2");
  });
});

describe("service time", () => {
  it("has the variation of its parts", () => {
    // By hand: a quick check of 1, a full inspection of 4 for half the boats. Mean 3. Constant: squares 1 and 25, mean
    // 13, variation 13/9 - 1. Exponential: 2 + (2·4 + 2·16)/2 = 22, variation 22/9 - 1.
    const parts = { quickCheckHours: 1, fullInspectionHours: 4, setAsideShare: 0.5 };
    expect(meanServiceHours({ ...parts, spread: "constant" })).toBe(3);
    expect(squaredVariation({ ...parts, spread: "constant" })).toBeCloseTo(4 / 9, 12);
    expect(squaredVariation({ ...parts, spread: "exponential" })).toBeCloseTo(13 / 9, 12);
  });

  it("varies as an exponential or a constant if no boat is set aside", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 5, noNaN: true }), (quickCheckHours) => {
        const parts = { quickCheckHours, fullInspectionHours: 1, setAsideShare: 0 };
        expect(squaredVariation({ ...parts, spread: "exponential" })).toBeCloseTo(1, 10);
        expect(squaredVariation({ ...parts, spread: "constant" })).toBeCloseTo(0, 10);
      }),
      { seed: 145, numRuns: 50 },
    );
  });
});
