import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import {
  counterflowEffectiveness,
  exchangerDuty,
  fouledCoefficient,
} from "../../../src/model/hydraulics/exchanger.js";
import { halfDigit, relativeGap } from "../near.js";

describe("the coefficient of a fouled wall", () => {
  test.each([
    // 1/U = 1/1000 + R, computed from the stated equation.
    [0.0001, 909.09],
    [0.0002, 833.33],
    [0.00035, 740.74],
    [0.0005, 666.67],
    [0.00088, 531.91],
  ])("with a resistance of %d is %d W/m2K", (resistance, expected) => {
    expect(Math.abs(fouledCoefficient(1000, resistance) - expected)).toBeLessThanOrEqual(halfDigit(2));
  });
});

describe("the effectiveness of a counterflow exchanger", () => {
  it("is 0.774600 at NTU 2 and C 0.5, and 0.687009 once the wall has fouled", () => {
    // Computed from the stated equation; NTU falls to 2 x 0.74074.
    const clean = counterflowEffectiveness(2, 0.5);
    const fouled = counterflowEffectiveness((2 * fouledCoefficient(1000, 0.00035)) / 1000, 0.5);
    expect(Math.abs(clean - 0.7746)).toBeLessThanOrEqual(halfDigit(6));
    expect(Math.abs(fouled - 0.687009)).toBeLessThanOrEqual(halfDigit(6));
    expect(Math.abs(fouled / clean - 0.88692)).toBeLessThanOrEqual(halfDigit(6));
  });

  it("is that of Incropera and DeWitt's oil cooler", () => {
    // Fundamentals of Heat and Mass Transfer, Example 11.1 (from memory): oil 0.1 kg/s of 2131 J/kgK from 100 to 60
    // degC, water 0.2 kg/s of 4178 J/kgK at 30 degC, U 37.8 W/m2K, tube 25 mm by 65.9 m: 8524 W of 14,917 W.
    const hot = 0.1 * 2131;
    const cold = 0.2 * 4178;
    const area = Math.PI * 0.025 * 65.9;
    const effectiveness = counterflowEffectiveness((37.8 * area) / hot, hot / cold);
    expect(relativeGap(effectiveness, 8524 / (hot * 70))).toBeLessThan(0.01);
  });

  it("is 1 - e^-NTU beside a boundless stream and NTU/(1 + NTU) between equal ones", () => {
    // Limits of the equation at C = 0 and C = 1.
    expect(counterflowEffectiveness(1.7, 0)).toBeCloseTo(1 - Math.exp(-1.7), 12);
    expect(counterflowEffectiveness(1.7, 1)).toBeCloseTo(1.7 / 2.7, 12);
    expect(counterflowEffectiveness(1.7, 1 - 1e-9)).toBeCloseTo(1.7 / 2.7, 7);
  });
});

describe("the duty of an exchanger", () => {
  const exchanger = { area: 12, cleanCoefficient: 1500, hotCapacityRate: 60 };

  it("is nothing without cooling water, also through a wall that lets no heat pass", () => {
    for (const coefficient of [0, 1500]) expect(exchangerDuty(exchanger, 0, coefficient)).toBe(0);
  });

  it("is effectiveness times the smaller capacity rate", () => {
    // By hand: 0.005 m3/s of water at 4186 J/kgK is 20.93 kW/K, a third of 62.79; NTU 18/20.93, C 1/3.
    const even = { ...exchanger, hotCapacityRate: 3 * 20.93 };
    const left = Math.exp((-18 / 20.93) * (2 / 3));
    expect(exchangerDuty(even, 0.005, 1500)).toBeCloseTo((20.93 * (1 - left)) / (1 - left / 3), 9);
  });

  it("agrees with the mean temperature difference", () => {
    // Q = U A dT_lm, worked from the outlet temperatures that the duty gives, inlets 1 K apart.
    const duty = exchangerDuty(exchanger, 0.004, 1200);
    const cold = 0.004 * 4186;
    const hotEnd = 1 - duty / cold;
    const coldEnd = 1 - duty / 60;
    const mean = (hotEnd - coldEnd) / Math.log(hotEnd / coldEnd);
    expect(relativeGap((1.2 * 12 * mean) / duty, 1)).toBeLessThan(1e-9);
  });

  it("never rises with less water or a worse wall, and falls less than the water does", () => {
    const flows = fc.double({ min: 1e-4, max: 0.05, noNaN: true });
    fc.assert(
      fc.property(flows, fc.double({ min: 0.05, max: 1, noNaN: true }), (flow, share) => {
        const whole = exchangerDuty(exchanger, flow, 1500);
        expect(exchangerDuty(exchanger, flow * share, 1500)).toBeLessThanOrEqual(whole * (1 + 1e-12));
        expect(exchangerDuty(exchanger, flow * share, 1500)).toBeGreaterThanOrEqual(
          whole * share * (1 - 1e-12),
        );
        expect(exchangerDuty(exchanger, flow, 1500 * share)).toBeLessThanOrEqual(whole * (1 + 1e-12));
      }),
      { seed: 302, numRuns: 200 },
    );
    expect(exchangerDuty(exchanger, 0, 1500)).toBe(0);
  });
});
