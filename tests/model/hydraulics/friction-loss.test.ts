import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  flowAtHead,
  frictionFactor,
  gravity,
  type PipeFlow,
  pipeArea,
  pipeHeadLoss,
  regimeOf,
} from "../../../src/model/hydraulics/friction.js";
import { relativeGap } from "../near.js";

const metresPerFoot = 0.3048;

describe("published worked examples of pipe friction", () => {
  it("gives about 4.5 ft over 200 ft of 6-inch cast iron at 6 ft/s", () => {
    // White, Fluid Mechanics, Example 6.6: Re 2.7e5, e/d 0.0008, f about 0.02, loss about 4.5 ft (chart reading).
    const diameter = 0.5 * metresPerFoot;
    const velocity = 6 * metresPerFoot;
    const pipe = { length: 200 * metresPerFoot, diameter, roughness: 0.0008 * diameter, minorLoss: 0 };
    const viscosity = (velocity * diameter) / 2.7e5;
    const loss = pipeHeadLoss(pipe, velocity * pipeArea(diameter), viscosity) / metresPerFoot;
    // A chart gives the factor to two digits: 2 % is its accuracy.
    expect(relativeGap(loss, 4.5)).toBeLessThan(0.02);
    expect(relativeGap(frictionFactor(2.7e5, 0.0008), 0.02)).toBeLessThan(0.02);
  });

  it("gives 116 to 117 m for oil in 500 m of 200 mm cast iron", () => {
    // White, Fluid Mechanics, Example 6.7: nu 1e-5 m2/s, 0.2 m3/s, e/d 0.0013, Re 128,000 (rounded there), chart
    // f 0.0225 and 116-117 m. With Colebrook's f at that Re, 0.0227160738, the loss is 117.310 m (computed).
    const pipe = { length: 500, diameter: 0.2, roughness: 0.0013 * 0.2, minorLoss: 0 };
    const viscosity = (4 * 0.2) / (Math.PI * 0.2 * 128_000);
    expect(frictionFactor(128_000, 0.0013)).toBeCloseTo(0.0227160738, 9);
    expect(pipeHeadLoss(pipe, 0.2, viscosity)).toBeCloseTo(117.31, 2);
    expect(relativeGap(pipeHeadLoss(pipe, 0.2, 1e-5), 116.5)).toBeLessThan(0.01);
  });

  it("gives 27.3 ft and 461 W for water in 200 ft of 2-inch stainless steel", () => {
    // Cengel and Cimbala, Fluid Mechanics, chapter 8 (from memory): 0.2 ft3/s, Re 126,400, e/D 4.2e-5, f 0.0174,
    // loss 27.3 ft, 461 W. Their water: 62.36 lbm/ft3, 0.0007536 lbm/(ft s) (from memory).
    const diameter = (2 / 12) * metresPerFoot;
    const flow = 0.2 * metresPerFoot ** 3;
    const viscosity = (4 * flow) / (Math.PI * diameter * 126_400);
    const pipe = { length: 200 * metresPerFoot, diameter, roughness: 4.2e-5 * diameter, minorLoss: 0 };
    const loss = pipeHeadLoss(pipe, flow, viscosity);
    expect(frictionFactor(126_400, 4.2e-5)).toBeCloseTo(0.0174, 4);
    expect(loss / metresPerFoot).toBeCloseTo(27.3, 1);
    const densityOfTheExample = 62.36 * 16.01846;
    expect(relativeGap(densityOfTheExample * gravity * flow * loss, 461)).toBeLessThan(0.003);
  });
});

const pipes: fc.Arbitrary<PipeFlow> = fc
  .record({
    length: fc.double({ min: 5, max: 8000, noNaN: true }),
    diameter: fc.double({ min: 0.05, max: 4, noNaN: true }),
    relative: fc.double({ min: 1e-6, max: 0.06, noNaN: true }),
    minorLoss: fc.double({ min: 0, max: 20, noNaN: true }),
  })
  .map(({ relative, ...rest }) => ({ ...rest, roughness: relative * rest.diameter }));
const heads = fc.double({ min: 1e-3, max: 200, noNaN: true });
const viscosities = fc.double({ min: 1e-6, max: 1.6e-6, noNaN: true });

describe("flow and head loss", () => {
  it("are inverse to each other for any pipe, local losses included", () => {
    fc.assert(
      fc.property(pipes, heads, viscosities, (pipe, head, viscosity) => {
        const flow = flowAtHead(pipe, head, viscosity);
        expect(relativeGap(pipeHeadLoss(pipe, flow, viscosity), head)).toBeLessThan(1e-9);
      }),
      { seed: 11, numRuns: 500 },
    );
  });

  it("are inverse in laminar and transitional flow as well", () => {
    // Honey-slow water: Reynolds numbers below 4000.
    const thin = { length: 100, diameter: 0.02, roughness: 1e-5, minorLoss: 0 };
    for (const head of [1e-4, 1e-3, 1e-2, 5e-2, 0.1, 0.2]) {
      const flow = flowAtHead(thin, head, 1e-6);
      expect(relativeGap(pipeHeadLoss(thin, flow, 1e-6), head)).toBeLessThan(1e-9);
    }
    // Hagen-Poiseuille, Q = pi g h D^4/(128 nu L) (from memory), exact while Re stays below 2000.
    const poiseuille = (Math.PI * gravity * 1e-2 * 0.02 ** 4) / (128 * 1e-6 * 100);
    expect(relativeGap(flowAtHead(thin, 1e-2, 1e-6), poiseuille)).toBeLessThan(1e-9);
  });

  it("are inverse in slow water with local losses, smooth or rough, in each regime", () => {
    const met = new Set<string>();
    fc.assert(
      fc.property(
        fc.double({ min: 0.002, max: 0.03, noNaN: true }),
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: -6, max: 0, noNaN: true }),
        (diameter, relative, minorLoss, logHead) => {
          const thin = { length: 30, diameter, roughness: relative * diameter, minorLoss };
          const head = 10 ** logHead;
          const flow = flowAtHead(thin, head, 1e-6);
          met.add(regimeOf((4 * flow) / (Math.PI * diameter * 1e-6)));
          expect(relativeGap(pipeHeadLoss(thin, flow, 1e-6), head)).toBeLessThan(1e-9);
        },
      ),
      { seed: 13, numRuns: 500 },
    );
    expect([...met].sort()).toEqual(["laminar", "transitional", "turbulent"]);
  });

  it("agree with the closed form of the flow, which the iteration reaches as local losses vanish", () => {
    // Q = -2 A sqrt(2 g D S) log10((e/D)/3.7 + 2.51 nu/(D sqrt(2 g D S))), S = h/L: Darcy-Weisbach and
    // Colebrook-White solved for the flow (algebra). A local loss of 1e-9 keeps the iteration in use.
    fc.assert(
      fc.property(pipes, heads, viscosities, (pipe, head, viscosity) => {
        const speed = Math.sqrt((2 * 9.81 * pipe.diameter * head) / pipe.length);
        const argument = pipe.roughness / pipe.diameter / 3.7 + (2.51 * viscosity) / (pipe.diameter * speed);
        const closed = -2 * pipeArea(pipe.diameter) * speed * Math.log10(argument);
        const reynolds = (4 * closed) / (Math.PI * pipe.diameter * viscosity);
        fc.pre(reynolds > 4001); // the closed form knows turbulent flow only
        expect(relativeGap(flowAtHead({ ...pipe, minorLoss: 0 }, head, viscosity), closed)).toBeLessThan(
          1e-12,
        );
        expect(relativeGap(flowAtHead({ ...pipe, minorLoss: 1e-9 }, head, viscosity), closed)).toBeLessThan(
          1e-6,
        );
      }),
      { seed: 12, numRuns: 400 },
    );
  });

  it("stay inverse where shells nearly meet across the pipe, and a closed pipe passes nothing", () => {
    for (const relative of [0.1, 0.3, 0.49]) {
      const choked = { length: 60, diameter: 0.05, roughness: 0.05 * relative, minorLoss: 8 };
      const flow = flowAtHead(choked, 4, 1e-6);
      expect(relativeGap(pipeHeadLoss(choked, flow, 1e-6), 4)).toBeLessThan(1e-9);
    }
    expect(pipeHeadLoss({ length: 60, diameter: 0, roughness: 0.02, minorLoss: 0 }, 0.1, 1e-6)).toBe(
      Number.POSITIVE_INFINITY,
    );
  });

  it("come to an end in a pipe without length, whose local loss alone is left: Q = A √(2gh/K)", () => {
    const opening = { length: 0, diameter: 8.78, roughness: 0, minorLoss: 0.00104 };
    const closed = pipeArea(opening.diameter) * Math.sqrt((2 * gravity * 272.6) / opening.minorLoss);
    expect(relativeGap(flowAtHead(opening, 272.6, 1e-6), closed)).toBeLessThan(1e-3);
  });

  it("never let a rougher pipe pass more or lose less, even where the roughness exceeds the bore", () => {
    let flowBefore = Number.POSITIVE_INFINITY;
    let lossBefore = 0;
    for (const roughness of [0.001, 0.005, 0.02, 0.05, 0.15, 0.19, 0.3, 0.6]) {
      const pipe = { length: 60, diameter: 0.05, roughness, minorLoss: 1 };
      const flow = flowAtHead(pipe, 4, 1e-6);
      const loss = pipeHeadLoss(pipe, 0.001, 1e-6);
      expect(flow).toBeLessThanOrEqual(flowBefore);
      expect(loss).toBeGreaterThanOrEqual(lossBefore);
      expect(relativeGap(pipeHeadLoss(pipe, flow, 1e-6), 4)).toBeLessThan(1e-9);
      [flowBefore, lossBefore] = [flow, loss];
    }
  });

  it("split the loss into friction and local losses", () => {
    // Local losses are K V^2/2g, so the loss is linear in K with that slope (from the definition).
    const pipe = { length: 640, diameter: 0.25, roughness: 1e-4, minorLoss: 0 };
    const velocity = 0.028 / pipeArea(0.25);
    const added = pipeHeadLoss({ ...pipe, minorLoss: 3 }, 0.028, 1e-6) - pipeHeadLoss(pipe, 0.028, 1e-6);
    expect(relativeGap(added, (3 * velocity ** 2) / (2 * 9.81))).toBeLessThan(1e-12);
  });

  it("hold local losses between laminar and turbulent flow", () => {
    // By hand at Re 3000: f half way between 64/2000 and Colebrook-White's 0.03990701 at Re 4000 (smooth), 0.0359535;
    // V = 3000 x 1e-6/0.02 = 0.15 m/s; h = (f 30/0.02 + 20) V^2/2g = 73.93026 x 0.0011467890 = 0.0847824 m.
    const thin = { length: 30, diameter: 0.02, roughness: 0, minorLoss: 20 };
    const head = ((((0.032 + 0.03990701) / 2) * 30) / 0.02 + 20) * (0.15 ** 2 / 19.62);
    expect(head).toBeCloseTo(0.0847824, 6);
    expect(relativeGap(flowAtHead(thin, head, 1e-6), 0.15 * pipeArea(0.02))).toBeLessThan(1e-7);
  });

  it("are none where the head falls the other way: nothing is told of flow backwards", () => {
    expect(flowAtHead({ length: 100, diameter: 0.3, roughness: 1e-4, minorLoss: 2 }, -1, 1e-6)).toBe(0);
  });

  it("vanish together", () => {
    const pipe = { length: 100, diameter: 0.3, roughness: 1e-4, minorLoss: 2 };
    expect(pipeHeadLoss(pipe, 0, 1e-6)).toBe(0);
    expect(flowAtHead(pipe, 0, 1e-6)).toBe(0);
    expect(flowAtHead({ ...pipe, diameter: 0 }, 5, 1e-6)).toBe(0);
  });
});
