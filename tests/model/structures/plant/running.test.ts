import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compare } from "../../../../src/model/compare.js";
import { monthDays } from "../../../../src/model/lake/calendar.js";
import { freshnessFactor } from "../../../../src/model/mussels/surface.js";
import { hydropowerComponents, operatingYear } from "../../../../src/model/structures/hydropower.js";
import type { Hydropower } from "../../../../src/model/structures/inputs.js";
import { plantRunning } from "../../../../src/model/structures/plant/running.js";
import { assumed } from "../../assumptions.js";
import { contextOf } from "../../contexts.js";
import { productiveLake } from "../../lakes.js";
import { everyMonth, relativeGap } from "../../near.js";
import { plant, studyOf } from "../../study.js";

const context = contextOf(productiveLake, 8, assumed);
const { flow: _, ...withoutFlow } = plant;
const running = (hours: readonly number[], flow: readonly number[]): Hydropower => ({
  ...withoutFlow,
  running: { hours, flow },
});
const allHours = monthDays.map((days) => days * 24);
const costOf = (each: Hydropower) =>
  compare(studyOf([each]), assumed)
    .infestation.ofStructure(each.id)
    .byYear.map((year) => year.toNumber());
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

describe("how a unit runs", () => {
  it("follows from units running: 1.5 of 2 units are three quarters of the hours, by hand", () => {
    const byUnits = plantRunning({
      ...withoutFlow,
      units: 2,
      running: { units: everyMonth(1.5), flow: everyMonth(12) },
    });
    expect(byUnits.hours[0]).toBe(0.75 * 744);
    expect(byUnits.share).toEqual(everyMonth(0.75));
  });

  it("follows from a monthly mean at the rated flow: 6 of 15 m³/s run for 40 % of the hours, by hand", () => {
    const { efficiency: __, ...withoutEfficiency } = plant;
    const turbine = { type: "francis", ratedFlow: 15, generatorEfficiency: 0.96 } as const;
    const each = plantRunning({ ...withoutEfficiency, turbine, flow: everyMonth(6) });
    expect(each.flow).toEqual(everyMonth(15));
    expect(each.hours[1]).toBeCloseTo(0.4 * 672, 10);
    expect(each.from).toBe("rated flow");
  });

  it("is the monthly mean in all hours where no rated flow is known, as it was", () => {
    const mean = operatingYear(plant, context);
    const entered = operatingYear(running(allHours, plant.flow ?? []), context);
    expect(entered.energy).toEqual(mean.energy);
    expect(mean.running.from).toBe("monthly mean");
  });

  it("has no flow in a month without hours, and no hours in one without flow", () => {
    const each = plantRunning(running([0, ...allHours.slice(1)], [12, 0, ...everyMonth(12).slice(2)]));
    expect(each.flow.slice(0, 3)).toEqual([0, 0, 12]);
    expect(each.hours.slice(0, 3)).toEqual([0, 0, 744]);
  });

  it("makes power at the flow while running for the hours that it runs", () => {
    // Two routes: half the hours at one flow make half the energy.
    const whole = operatingYear(running(allHours, everyMonth(12)), context).energy;
    const half = operatingYear(
      running(
        allHours.map((hours) => hours / 2),
        everyMonth(12),
      ),
      context,
    ).energy;
    half.forEach((energy, month) => {
      expect(relativeGap(energy, (whole[month] ?? Number.NaN) / 2)).toBeLessThan(1e-12);
    });
  });
});

describe("settlement while running", () => {
  const penstockOf = (each: Hydropower) => {
    const part = hydropowerComponents(each, context).find(({ name }) => name === "penstock");
    if (!part) throw new Error("a plant has a penstock");
    return context.growing(part.surface).months.map(({ settlement }) => settlement);
  };

  it("is none where the penstock runs too fast when it runs, though the monthly mean is slow", () => {
    // Bore of 3 m: 14 m³/s run at 1.98 m/s, above the 1.8 m/s of no settlement; a tenth of the hours is a mean of 0.2 m/s.
    const tenth = allHours.map((hours) => hours / 10);
    expect(sum(penstockOf(running(tenth, everyMonth(14))))).toBe(0);
    expect(sum(penstockOf({ ...plant, flow: everyMonth(1.4) }))).toBeGreaterThan(0);
  });

  it("is none in a month in which the water stands throughout, and whole from a day in five", () => {
    const idle = penstockOf(running([...allHours.slice(0, 6), 0, ...allHours.slice(7)], everyMonth(6)));
    const busy = penstockOf(running(allHours, everyMonth(6)));
    expect(idle[6]).toBe(0);
    expect(busy[6]).toBeGreaterThan(0);
    expect(idle[7]).toBe(busy[7]);
    // By hand: five days that a day keeps fresh.
    expect(freshnessFactor(0.2, 5)).toBe(1);
    expect(freshnessFactor(0.1, 5)).toBe(0.5);
    expect(freshnessFactor(0, 5)).toBe(0);
  });
});

describe("an idle month", () => {
  const left = (each: Hydropower): Hydropower => ({
    ...each,
    pinned: ["trash rack", "penstock", "cooling-water line"].map((part) => ({
      part,
      plan: "leave",
      reason: "so that no date tells",
    })),
  });

  it("is never dearer than a running month", () => {
    const plants = fc.record({
      flow: fc.double({ min: 2, max: 14, noNaN: true }),
      month: fc.integer({ min: 0, max: 11 }),
      share: fc.double({ min: 0.05, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(plants, ({ flow, month, share }) => {
        const hours = allHours.map((each) => each * share);
        const idle = hours.map((each, index) => (index === month ? 0 : each));
        const flows = everyMonth(flow);
        const [busy, still] = [running(hours, flows), running(idle, flows)];
        expect(sum(costOf(left(still)))).toBeLessThanOrEqual(sum(costOf(left(busy))) * 1.01);
        // A layer that comes up later may miss the first date of a routine of years by a hair, and wait for the next.
        expect(sum(costOf(still))).toBeLessThanOrEqual(sum(costOf(busy)) * 1.25);
      }),
      { seed: 2201, numRuns: 40 },
    );
  });
});
