import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  largestFlow,
  operatingPoint,
  type PumpPoint,
  pumpCurve,
  pumpHead,
  pumpRun,
  relativeSpeed,
} from "../../../src/model/hydraulics/pump.js";
import { halfDigit, relativeGap } from "../near.js";

const shares = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const curves: fc.Arbitrary<PumpPoint[]> = fc
  .record({
    flow: shares(0.01, 3),
    head: shares(3, 120),
    shutOff: shares(1.005, 1.7),
    last: shares(0.1, 0.9),
    end: shares(1.2, 2.2),
    count: fc.constantFrom(1, 3, 4),
  })
  .map(({ flow, head, shutOff, last, end, count }) => {
    const design = { flow, head };
    const first = { flow: 0, head: head * shutOff };
    const final = { flow: flow * end, head: head * last };
    if (count === 1) return [design];
    return count === 3
      ? [first, design, final]
      : [first, design, final, { flow: final.flow * 1.1, head: final.head / 2 }];
  });

describe("a pump curve of one point", () => {
  it("has 4/3 of the design head at no flow, the design head at the design flow, and none at twice that", () => {
    // EPANET manual, "Pump curves": shut-off head 133 % of the design head, largest flow twice the design flow.
    const curve = pumpCurve([{ flow: 0.3, head: 24 }]);
    expect(pumpHead(curve, 0)).toBeCloseTo(32, 12);
    expect(pumpHead(curve, 0.3)).toBeCloseTo(24, 12);
    expect(largestFlow(curve)).toBeCloseTo(0.6, 12);
  });
});

describe("a pump curve of three points that do not start at no flow", () => {
  it("is of straight lines, the end ones produced", () => {
    // EPANET manual, "Pump curves": three points make a power curve only from zero flow. By hand: slopes -2 and -3 m per m3/s.
    const curve = pumpCurve([
      { flow: 1, head: 10 },
      { flow: 2, head: 8 },
      { flow: 3, head: 5 },
    ]);
    expect([0, 1, 1.5, 2, 2.5, 4].map((flow) => pumpHead(curve, flow))).toEqual([12, 10, 9, 8, 6.5, 2]);
    expect(largestFlow(curve)).toBeCloseTo(3 + 5 / 3, 12);
  });
});

describe("any pump curve", () => {
  it("passes through its points and falls", () => {
    fc.assert(
      fc.property(curves, shares(0, 1), shares(0.001, 1), (points, start, more) => {
        const curve = pumpCurve(points);
        for (const { flow, head } of points)
          expect(relativeGap(pumpHead(curve, flow), head)).toBeLessThan(1e-9);
        const end = largestFlow(curve);
        expect(pumpHead(curve, end) / pumpHead(curve, 0)).toBeCloseTo(0, 9);
        expect(pumpHead(curve, (start + more) * end)).toBeLessThanOrEqual(pumpHead(curve, start * end));
        expect(pumpHead(curve, end / 2)).toBeLessThan(pumpHead(curve, 0));
      }),
      { seed: 201, numRuns: 200 },
    );
  });
});

describe("the operating point", () => {
  it("is at 7.43 Lpm and 4.96 m in the worked example", () => {
    // Cengel and Cimbala, Fluid Mechanics, problem on the operating point of a pump (statement read): shut-off head
    // 7.46 m, a 0.0453 m/Lpm2, lift 3.52 m, b 0.0261 m/Lpm2. By algebra Q = sqrt((7.46 - 3.52)/(a + b)) = 7.428 Lpm,
    // H = 4.960 m. Three points on the curve are given here.
    const head = (flow: number) => 7.46 - 0.0453 * flow ** 2;
    const curve = pumpCurve([0, 6, 10].map((flow) => ({ flow, head: head(flow) })));
    const point = operatingPoint(curve, (flow) => 3.52 + 0.0261 * flow ** 2);
    expect(Math.abs(point.flow - 7.428)).toBeLessThanOrEqual(halfDigit(3));
    expect(Math.abs(point.head - 4.96)).toBeLessThanOrEqual(halfDigit(3));
  });

  it("is at 8.18 and 53.46 m on a straight curve", () => {
    // Exercise on hydraulics (intermediatehydraulics.passetra.com, read): H = 60 - 0.8 Q against 20 + 0.5 Q2, printed
    // 8.18 and 53.46 (exactly 8.1800 and 53.456).
    const curve = pumpCurve([0, 5, 10, 20].map((flow) => ({ flow, head: 60 - 0.8 * flow })));
    const point = operatingPoint(curve, (flow) => 20 + 0.5 * flow ** 2);
    expect(Math.abs(point.flow - 8.18)).toBeLessThanOrEqual(halfDigit(2));
    expect(Math.abs(point.head - 53.46)).toBeLessThanOrEqual(halfDigit(2));
  });

  // By the law itself: what the pump gives is what the system needs.
  it.each([
    ["flat and then falls steeply", [50, 49.5, 40], [0, 0.1, 0.12], 20, 1],
    ["flat nearly to its end", [100, 99.9, 50], [0, 1, 1.1], 99.9, 0.01],
  ])("lies on both curves where the pump's is %s", (_shape, heads, flows, lift, resistance) => {
    const curve = pumpCurve(flows.map((flow, index) => ({ flow, head: heads[index] ?? Number.NaN })));
    const system = (flow: number) => lift + resistance * flow ** 2;
    const { flow, head } = operatingPoint(curve, system);
    expect(head).toBeCloseTo(system(flow), 9);
    expect(pumpHead(curve, flow)).toBeCloseTo(head, 9);
  });

  it("is asked for at three flows where both are straight in the flow squared", () => {
    // A pump of one point falls with the flow squared. By hand: at no flow, at one from which the secant leads to the
    // root, and there.
    const curve = pumpCurve([{ flow: 1.2, head: 30 }]);
    const asked: number[] = [];
    const point = operatingPoint(curve, (flow) => {
      asked.push(flow);
      return 10 + 5 * flow ** 2;
    });
    expect(asked).toHaveLength(3);
    expect(Math.max(...asked)).toBeLessThanOrEqual(largestFlow(curve));
    // 40 - (10/1.44) Q2 = 10 + 5 Q2.
    expect(point.flow).toBeCloseTo(Math.sqrt(30 / (10 / 1.44 + 5)), 12);
  });

  it("is as exact for a pump of drops as for a great one", () => {
    // By algebra Q = sqrt((H0 - z)/(a + b)) for a parabola through three points, whatever the unit of flow.
    for (const unit of [1e-6, 1e-3, 1, 1e3]) {
      const [a, b] = [2 / unit ** 2, 3 / unit ** 2];
      const curve = pumpCurve([0, unit, 1.5 * unit].map((flow) => ({ flow, head: 10 - a * flow ** 2 })));
      const { flow } = operatingPoint(curve, (each) => 4 + b * each ** 2);
      expect(relativeGap(flow, Math.sqrt(6 / (a + b)))).toBeLessThan(1e-12);
    }
  });

  it("lies on both curves; there is none where the lift is too high, nor through a closed pipe", () => {
    fc.assert(
      fc.property(curves, shares(0, 0.95), shares(0.001, 40), (points, liftShare, resistance) => {
        const curve = pumpCurve(points);
        const lift = liftShare * pumpHead(curve, 0);
        const system = (flow: number) => lift + resistance * flow ** 2;
        const { flow, head } = operatingPoint(curve, system);
        expect(head).toBe(pumpHead(curve, flow));
        expect(Math.abs(system(flow) - head) / pumpHead(curve, 0)).toBeLessThan(1e-9);
        expect(operatingPoint(curve, () => pumpHead(curve, 0) * 1.01).flow).toBe(0);
        expect(operatingPoint(curve, (each) => (each === 0 ? lift : Number.POSITIVE_INFINITY)).flow).toBe(0);
      }),
      { seed: 202, numRuns: 200 },
    );
  });

  it("is the pump's largest flow at no head where the water would run by itself", () => {
    const curve = pumpCurve([{ flow: 1, head: 10 }]);
    const point = operatingPoint(curve, (flow) => -5 + flow);
    expect(point.flow).toBeCloseTo(2, 12);
    expect(point.head).toBe(0);
  });
});

describe("the speed of a pump", () => {
  it("carries the curve along by the affinity laws", () => {
    // Affinity laws: flow with the speed, head with its square.
    fc.assert(
      fc.property(curves, shares(0.3, 0.999), shares(0.05, 0.9), (points, speed, share) => {
        const curve = pumpCurve(points);
        const flow = share * largestFlow(curve);
        const point = { flow: speed * flow, head: speed ** 2 * pumpHead(curve, flow) };
        expect(relativeSpeed(curve, point)).toBeCloseTo(speed, 9);
      }),
      { seed: 203, numRuns: 200 },
    );
  });
});

describe("a pump kept to a demand", () => {
  const system = (lift: number, resistance: number) => (flow: number) => lift + resistance * flow ** 2;

  it("delivers the same by either control, and takes no more head at variable speed", () => {
    fc.assert(
      fc.property(
        curves,
        shares(0, 0.8),
        shares(0.001, 40),
        shares(0.1, 1.5),
        (points, lift, resistance, share) => {
          const curve = pumpCurve(points);
          const needs = system(lift * pumpHead(curve, 0), resistance);
          const demand = share * operatingPoint(curve, needs).flow;
          const onOff = pumpRun({ curve, control: "on-off" }, needs, demand);
          const variable = pumpRun({ curve, control: "variable-speed" }, needs, demand);
          expect(relativeGap(variable.delivered, onOff.delivered)).toBeLessThan(1e-9);
          expect(onOff.delivered).toBeLessThanOrEqual(demand);
          expect(variable.delivered * variable.point.head).toBeLessThanOrEqual(
            onOff.delivered * onOff.point.head * (1 + 1e-9),
          );
          expect(variable.speed).toBeLessThanOrEqual(1);
          if (share < 1) expect(variable.point).toEqual({ flow: demand, head: needs(demand) });
        },
      ),
      { seed: 204, numRuns: 300 },
    );
  });

  it("runs at its operating point, on and off, where it meets the demand with flow to spare", () => {
    // By hand: 40 - (10/1.44) Q2 = 10 + 5 Q2, of which half is asked.
    const curve = pumpCurve([{ flow: 1.2, head: 30 }]);
    const flow = Math.sqrt(30 / (10 / 1.44 + 5));
    const { delivered, point, speed } = pumpRun({ curve, control: "on-off" }, system(10, 5), flow / 2);
    expect([delivered, speed]).toEqual([flow / 2, 1]);
    expect(point).toEqual({ flow: expect.closeTo(flow, 12), head: expect.closeTo(10 + 5 * flow ** 2, 10) });
  });

  it("gives more head through a worse pipe and never more water", () => {
    fc.assert(
      fc.property(
        curves,
        shares(0.001, 20),
        shares(1, 30),
        shares(0.1, 1.2),
        (points, resistance, worse, share) => {
          const curve = pumpCurve(points);
          const lift = 0.3 * pumpHead(curve, 0);
          const demand = share * operatingPoint(curve, system(lift, resistance)).flow;
          for (const control of ["on-off", "variable-speed"] as const) {
            const clean = pumpRun({ curve, control }, system(lift, resistance), demand);
            const fouled = pumpRun({ curve, control }, system(lift, resistance * worse), demand);
            expect(fouled.delivered).toBeLessThanOrEqual(clean.delivered * (1 + 1e-9));
            expect(fouled.point.head).toBeGreaterThanOrEqual(clean.point.head * (1 - 1e-9));
          }
        },
      ),
      { seed: 205, numRuns: 200 },
    );
  });

  it("stands still without a demand", () => {
    const curve = pumpCurve([{ flow: 1, head: 10 }]);
    for (const control of ["on-off", "variable-speed"] as const) {
      expect(pumpRun({ curve, control }, system(3, 1), 0)).toMatchObject({
        delivered: 0,
        point: { flow: 0 },
      });
    }
  });
});
