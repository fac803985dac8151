import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type BoatDays, sampleBoatDays } from "../../../src/model/program/boat-days.js";
import { type StaffingInput, staffing } from "../../../src/model/program/staffing.js";

const input: StaffingInput = {
  dayTypes: [
    { id: "july-ordinary", name: "July, ordinary", daysPerYear: 21, arrivalsByHour: [5, 12, 15, 10, 8, 4] },
    { id: "july-peak", name: "July, peak", daysPerYear: 10, arrivalsByHour: [20, 50, 60, 40, 30, 15] },
  ],
  service: {
    quickCheckHours: 5 / 60,
    fullInspectionHours: 1 / 2,
    setAsideShare: 0.05,
    spread: "exponential",
  },
  target: { share: 0.9, hours: 1 / 4 },
  mostInspectors: 10,
  wagePerHour: 40,
  sampling: { replications: 100, seed: 31 },
};

/** Boats that wait longer than the target, by a plain walk: each takes the inspector with the earliest end. */
function boatsOver(days: BoatDays, inspectors: number, hours: number): number {
  let over = 0;
  for (let day = 0; day < days.replications; day++) {
    let ends = Array<number>(inspectors).fill(0);
    for (let boat = days.firstBoat[day] ?? 0; boat < (days.firstBoat[day + 1] ?? 0); boat++) {
      const [earliest = 0, ...others] = ends.toSorted((one, other) => one - other);
      const arrival = days.arrivalHours[boat] ?? 0;
      const start = Math.max(arrival, earliest);
      if (start - arrival > hours) over++;
      ends = [...others, start + (days.serviceHours[boat] ?? 0)];
    }
  }
  return over;
}

describe("the least staffing", () => {
  it("is that of a brute-force search on the same boats", () => {
    const anyStation = fc.record({
      arrivalsByHour: fc
        .array(fc.double({ min: 0, max: 40, noNaN: true }), { minLength: 1, maxLength: 6 })
        .filter((hours) => hours.some((each) => each > 1)),
      // With these shares and times service is never near exponential: every hour is simulated.
      spread: fc.constantFrom("exponential", "constant"),
      setAsideShare: fc.double({ min: 0.05, max: 0.2, noNaN: true }),
      quickMinutes: fc.double({ min: 1, max: 8, noNaN: true }),
      share: fc.double({ min: 0.5, max: 0.99, noNaN: true }),
      minutes: fc.double({ min: 0, max: 30, noNaN: true }),
    });
    fc.assert(
      fc.property(anyStation, ({ arrivalsByHour, spread, setAsideShare, quickMinutes, share, minutes }) => {
        const service = {
          quickCheckHours: quickMinutes / 60,
          fullInspectionHours: quickMinutes / 10,
          setAsideShare,
          spread,
        };
        const sampling = { replications: 20, seed: 33 };
        const dayType = { id: "any", name: "any", daysPerYear: 10, arrivalsByHour };
        const target = { share, hours: minutes / 60 };
        const found = staffing({
          ...input,
          dayTypes: [dayType],
          service,
          target,
          sampling,
          mostInspectors: 6,
        });
        const days = sampleBoatDays({ id: "any", arrivalsByHour, service }, sampling);
        const enough = [6, 5, 4, 3, 2, 1].filter(
          (inspectors) => 1 - boatsOver(days, inspectors, target.hours) / days.arrivalHours.length >= share,
        );
        expect(found.dayTypes[0]?.inspectors).toBe(enough.length > 0 ? Math.min(...enough) : 6);
        expect(found.dayTypes[0]?.keepsTarget).toBe(enough.length > 0);
      }),
      { seed: 150, numRuns: 60 },
    );
  });

  it("is the least of the published exercise where the hours are steady", () => {
    // 30 arrivals an hour of 5 min, at least 90 % not delayed: 6 servers. Taken at a tenth of the times, so that the
    // queue settles within the hour; Erlang C depends on the load only.
    const found = staffing({
      ...input,
      dayTypes: [{ id: "flat", name: "flat", daysPerYear: 1, arrivalsByHour: Array<number>(8).fill(300) }],
      service: { ...input.service, quickCheckHours: 0.5 / 60, setAsideShare: 0 },
      target: { share: 0.9, hours: 0 },
    });
    expect(found.dayTypes[0]?.inspectors).toBe(6);
    expect(found.dayTypes[0]?.waits[5]?.hours.every(({ judgement }) => judgement.method === "erlang-c")).toBe(
      true,
    );
    // By hand: 6 × 8 h, and after closing the work in the station, (2.5 + 300 · 0.013556 · s)·s with s = 1/120 h.
    const left = (2.5 + (300 * 0.013556) / 120) / 120;
    expect(found.staffHoursPerYear).toBeCloseTo(48 + left, 5);
  });

  it("is the largest number where none keeps the target, and says so", () => {
    // The peak hour brings 60 × 6.5 min = 6.5 h of work: three inspectors are far too few.
    const [ordinary, peak] = staffing({ ...input, mostInspectors: 3 }).dayTypes;
    expect(ordinary?.keepsTarget).toBe(true);
    expect(peak).toMatchObject({ inspectors: 3, keepsTarget: false });
  });

  it("is not more for a looser target, nor for fewer set aside", () => {
    const numbers = (change: Partial<StaffingInput>) =>
      staffing({ ...input, ...change }).dayTypes.map(({ inspectors }) => inspectors);
    const base = numbers({});
    for (const easier of [
      numbers({ target: { share: 0.8, hours: 1 / 4 } }),
      numbers({ target: { share: 0.9, hours: 1 / 2 } }),
      numbers({ service: { ...input.service, setAsideShare: 0.02 } }),
    ]) {
      expect(easier.every((inspectors, type) => inspectors <= (base[type] ?? 0))).toBe(true);
    }
  });
});

describe("the yearly staffing", () => {
  const found = staffing(input);

  it("pays open hours and service after closing at the loaded wage", () => {
    const hours = found.dayTypes.reduce((sum, { dayType, inspectors, waits }) => {
      const after = waits[inspectors - 1]?.hoursAfterClosing.mean ?? 0;
      return sum + dayType.daysPerYear * (inspectors * 6 + after);
    }, 0);
    expect(found.staffHoursPerYear).toBeCloseTo(hours, 8);
    expect(found.costPerYear).toBeCloseTo(hours * 40, 6);
    for (const { staffHoursPerYear, costPerYear } of found.curve) {
      expect(costPerYear).toBeCloseTo(staffHoursPerYear * 40, 6);
    }
  });

  it("serves the boats of all its days", () => {
    // By hand: 21 days of 54 boats and 10 days of 215.
    expect(found.boatsPerYear).toBeCloseTo(21 * 54 + 10 * 215, 9);
  });

  it("does not depend on the order of day types, nor on others beside", () => {
    const reversed = staffing({ ...input, dayTypes: input.dayTypes.toReversed() });
    expect(reversed.dayTypes.toReversed()).toEqual(found.dayTypes);
    expect(staffing({ ...input, dayTypes: input.dayTypes.slice(0, 1) }).dayTypes[0]).toEqual(
      found.dayTypes[0],
    );
  });

  it("pays at least for the work that comes", () => {
    // No inspector works less than is to be done: boats × mean service (5 + 0.05·30 = 6.5 min), within 4 standard
    // errors of a compound Poisson sum: per day √(boats · E[S²]), E[S²] = 155 min² (by hand).
    for (const { dayType, staffHoursPerDay } of found.dayTypes) {
      const boats = dayType.arrivalsByHour.reduce((sum, each) => sum + each, 0);
      const error = Math.sqrt((boats * 155) / 60 ** 2 / input.sampling.replications);
      expect(staffHoursPerDay).toBeGreaterThan((boats * 6.5) / 60 - 4 * error);
    }
  });
});

describe("the curve of wait against budget", () => {
  const { curve, dayTypes } = staffing(input);

  it("has a point for each number of inspectors; waits fall and cost rises", () => {
    expect(curve.map(({ inspectors }) => inspectors)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    for (const [index, point] of curve.slice(1).entries()) {
      expect(point.meanWaitHours.mean).toBeLessThanOrEqual(curve[index]?.meanWaitHours.mean ?? 0);
      expect(point.shareOverTarget.mean).toBeLessThanOrEqual(curve[index]?.shareOverTarget.mean ?? 0);
      expect(point.costPerYear).toBeGreaterThanOrEqual(curve[index]?.costPerYear ?? 0);
    }
  });

  it("is the mean of day types by their boats of the year", () => {
    // By hand: 21 × 54 = 1134 ordinary and 10 × 215 = 2150 peak boats.
    const [ordinary, peak] = dayTypes.map(({ waits }) => waits[2]);
    const expected =
      ((ordinary?.meanWaitHours.mean ?? 0) * 1134 + (peak?.meanWaitHours.mean ?? 0) * 2150) / (1134 + 2150);
    expect(curve[2]?.meanWaitHours.mean).toBeCloseTo(expected, 12);
    const error = Math.hypot(
      (ordinary?.meanWaitHours.standardError ?? 0) * 1134,
      (peak?.meanWaitHours.standardError ?? 0) * 2150,
    );
    expect(curve[2]?.meanWaitHours.standardError).toBeCloseTo(error / 3284, 12);
  });

  it("says what one more inspector buys: the steps add up to the whole, and the last has none", () => {
    const steps = curve.flatMap(({ oneMore }) => (oneMore ? [oneMore] : []));
    expect(steps).toHaveLength(9);
    expect(curve.at(-1)?.oneMore).toBeUndefined();
    const total = (key: keyof (typeof steps)[number]) => steps.reduce((sum, step) => sum + step[key], 0);
    const [first, last] = [curve[0], curve[9]];
    expect(total("costAdded")).toBeCloseTo((last?.costPerYear ?? 0) - (first?.costPerYear ?? 0), 6);
    expect(total("boatHoursSaved")).toBeCloseTo(
      3284 * ((first?.meanWaitHours.mean ?? 0) - (last?.meanWaitHours.mean ?? 0)),
      6,
    );
    expect(total("boatsSaved")).toBeCloseTo(
      3284 * ((first?.shareOverTarget.mean ?? 0) - (last?.shareOverTarget.mean ?? 0)),
      6,
    );
  });
});

describe("staffing inputs", () => {
  it("without meaning are refused, and named", () => {
    const [first] = input.dayTypes;
    if (!first) throw new Error("the example has day types");
    const withDay = (change: object) => () => staffing({ ...input, dayTypes: [{ ...first, ...change }] });
    expect(() => staffing({ ...input, dayTypes: [] })).toThrow("no day types; give at least one");
    expect(staffing({ ...input, mostInspectors: 1 }).curve).toHaveLength(1);
    expect(() => staffing({ ...input, mostInspectors: 0 })).toThrow(
      "largest number of inspectors is 0; allowed",
    );
    expect(withDay({ daysPerYear: 0 })).toThrow("july-ordinary: days a year are 0; allowed above 0 to 365");
    expect(withDay({ daysPerYear: 400 })).toThrow("july-ordinary: days a year are 400");
    expect(withDay({ arrivalsByHour: [] })).toThrow("july-ordinary: 0 open hours");
  });
});
