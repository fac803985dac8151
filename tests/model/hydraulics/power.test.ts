import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { hydroPower, pumpPower } from "../../../src/model/hydraulics/power.js";
import { halfDigit, relativeGap } from "../near.js";

describe("power of a turbine", () => {
  it("is 294,594.3 W in the worked example of 41 m gross head with 2 m lost", () => {
    // Published worked example: 1 m3/s, efficiency 0.77, unit weight 9,810 N/m3.
    expect(Math.abs(hydroPower(1, 41 - 2, 0.77) * 1000 - 294_594.3)).toBeLessThanOrEqual(halfDigit(1));
  });

  it("is 66.7 MW at 100 m3/s, 120 m gross head, 35 m lost, efficiency 0.80", () => {
    // Cengel and Cimbala (from memory), 66.7 MW; 66.708 by calculation.
    expect(Math.abs(hydroPower(100, 120 - 35, 0.8) / 1000 - 66.708)).toBeLessThanOrEqual(halfDigit(3));
  });

  it("loses 1546.8408 MWh a year to one metre at 50 m3/s, efficiency 0.9, capacity factor 0.4", () => {
    // Computed from eta rho g Q dh t: 441.45 kW over 8,760 h times 0.4.
    expect(hydroPower(50, 1, 0.9)).toBeCloseTo(441.45, 8);
    expect((hydroPower(50, 1, 0.9) * 8760 * 0.4) / 1000).toBeCloseTo(1546.8408, 6);
    expect((hydroPower(50, 80, 0.9) * 8760 * 0.4) / 1000).toBeCloseTo(123_747.264, 4);
  });

  it("is cfs times ft times efficiency over 11.81 kW in US units, within 0.2 %", () => {
    // kW = cfs ft eta/11.81 (from memory): 762.07 kW for 100 cfs, 100 ft, 0.9.
    const power = hydroPower(100 * 0.3048 ** 3, 100 * 0.3048, 0.9);
    expect(relativeGap(power, 762.07)).toBeLessThan(0.002);
  });
});

describe("power of a pump", () => {
  it("is 39.24 kW for 0.1 m3/s against 30 m at efficiency 0.75, 343,742.4 kWh in a year", () => {
    // Computed from rho g Q H/eta.
    expect(pumpPower(0.1, 30, 0.75)).toBeCloseTo(39.24, 10);
    expect(pumpPower(0.1, 30, 0.75) * 8760).toBeCloseTo(343_742.4, 6);
  });

  it("is 5.65 kW for 500 gpm against 60 ft without losses", () => {
    // Published worked example: kW = gpm ft/5,310, printed 5.65; its constant is rounded to three digits.
    const gallon = 3.785411784e-3;
    expect(relativeGap(pumpPower((500 * gallon) / 60, 60 * 0.3048, 1), 5.65)).toBeLessThan(0.003);
  });

  it("is 16.835 hp for 500 gpm against 100 ft at efficiency 0.75", () => {
    // hp = gpm ft/(3960 eta) = 16.83502 hp, 1 hp = 0.745699872 kW (computed). 3960 = 33,000 ft lb/min over
    // 25/3 lb per gallon, which is water of 998.5 kg/m3 under 9.80665 m/s2; the model's is 1000 under 9.81, 0.18 %
    // more.
    const gallon = 3.785411784e-3;
    const horsepower = pumpPower((500 * gallon) / 60, 100 * 0.3048, 0.75) / 0.745699872;
    const lighterWater = (((25 / 3) * 0.45359237) / gallon / 1000) * (9.80665 / 9.81);
    expect(relativeGap(horsepower, 16.83502)).toBeLessThan(0.002);
    expect(relativeGap(horsepower * lighterWater, 16.83502)).toBeLessThan(1e-6);
  });

  it("is 74.1 % efficient at 50 L/s, 200 kPa and 13.5 kW on the shaft", () => {
    // Cengel and Cimbala (from memory): 74.1 %, 0.74074 by calculation.
    const head = 200_000 / (1000 * 9.81);
    expect(Math.abs(pumpPower(0.05, head, 1) / 13.5 - 0.74074)).toBeLessThanOrEqual(halfDigit(5));
  });

  it("is linear in flow and in head, and what a turbine returns is less than what the pump took", () => {
    const positive = fc.double({ min: 0.01, max: 200, noNaN: true });
    const share = fc.double({ min: 0.2, max: 0.99, noNaN: true });
    fc.assert(
      fc.property(positive, positive, share, share, (flow, head, pump, turbine) => {
        expect(relativeGap(pumpPower(2 * flow, head, pump), 2 * pumpPower(flow, head, pump))).toBeLessThan(
          1e-12,
        );
        expect(
          relativeGap(hydroPower(flow, 3 * head, turbine), 3 * hydroPower(flow, head, turbine)),
        ).toBeLessThan(1e-12);
        expect(hydroPower(flow, head, turbine)).toBeLessThan(pumpPower(flow, head, pump));
      }),
      { seed: 6, numRuns: 100 },
    );
  });
});
