import { Project, Workspace } from "epanet-js";
import { beforeAll, describe, expect, it } from "vitest";
import { pipeHeadLoss } from "../../../src/model/hydraulics/friction.js";
import { hazenWilliamsLoss } from "../../../src/model/hydraulics/hazen-williams.js";
import { relativeGap } from "../near.js";

// The model against an independent hydraulic engine, EPANET 2.3.5, one reservoir, one pipe, one demand.
// EPANET's kinematic viscosity is 1.1e-5 ft2/s = 1.02193e-6 m2/s.
const engineViscosity = 1.02193e-6;

/** Codes of the EPANET 2.3 toolkit, as its header numbers them. */
const code = {
  litresPerSecond: 5,
  hazenWilliams: 0,
  darcyWeisbach: 1,
  reservoir: 1,
  junction: 0,
  pipe: 1,
  elevation: 0,
  headLoss: 10,
  accuracy: 1,
} as const;
type Law = typeof code.hazenWilliams | typeof code.darcyWeisbach;

interface RandomPipe {
  readonly length: number;
  readonly diameter: number;
  readonly roughness: number;
  readonly minorLoss: number;
  readonly flow: number;
  readonly c: number;
}

/** Park and Miller's minimal generator (1988, from memory): the same pipes on every run. */
function uniform(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

function randomPipes(count: number, seed: number, smallest = { diameter: 0.1, velocity: 0.6 }): RandomPipe[] {
  const next = uniform(seed);
  const between = (low: number, high: number) => low + (high - low) * next();
  return Array.from({ length: count }, () => {
    const diameter = between(smallest.diameter, 2.5);
    const velocity = between(smallest.velocity, 3);
    return {
      length: between(100, 6000),
      diameter,
      roughness: diameter * 10 ** between(-5, Math.log10(0.04)),
      minorLoss: between(0, 8),
      flow: (velocity * Math.PI * diameter ** 2) / 4,
      c: between(60, 150),
    };
  });
}

const workspace = new Workspace();
beforeAll(() => workspace.loadModule());

function engineLoss(pipe: RandomPipe, law: Law, coefficient: number, minorLoss: number): number {
  const project = new Project(workspace);
  project.init("report.rpt", "out.bin", code.litresPerSecond, law);
  const reservoir = project.addNode("R", code.reservoir);
  project.setNodeValue(reservoir, code.elevation, 1000);
  const tap = project.addNode("J", code.junction);
  project.setJunctionData(tap, 0, pipe.flow * 1000, "");
  const link = project.addLink("P", code.pipe, "R", "J");
  project.setPipeData(link, pipe.length, pipe.diameter * 1000, coefficient, minorLoss);
  project.setOption(code.accuracy, 1e-5);
  project.solveH();
  const loss = project.getLinkValue(link, code.headLoss);
  project.close();
  return loss;
}

describe("an independent hydraulic engine", () => {
  it("loses the same head within 1.1 % in 80 pipes by Darcy-Weisbach", () => {
    // EPANET uses Swamee-Jain's explicit factor, within 1 % of Colebrook-White over these pipes (Re 6e4 to 8e6,
    // e/D 1e-5 to 0.04), and g = 32.2 ft/s2, which lowers the loss by 0.05 %.
    for (const pipe of randomPipes(80, 2001)) {
      const expected = engineLoss(pipe, code.darcyWeisbach, pipe.roughness * 1000, pipe.minorLoss);
      expect(relativeGap(pipeHeadLoss(pipe, pipe.flow, engineViscosity), expected)).toBeLessThan(0.011);
    }
  });

  it("loses the same head within 0.2 % in 40 wide pipes as rough as shells make them", () => {
    // At e/D above 0.02 and Re above 1e6 the viscous term of both formulas is below 0.5 % of the rough one, and
    // the factors differ by less than 0.1 %; g adds 0.05 %.
    for (const pipe of randomPipes(40, 77, { diameter: 1, velocity: 1.1 })) {
      const shells = { ...pipe, roughness: pipe.diameter * (0.02 + pipe.roughness / pipe.diameter) };
      const expected = engineLoss(shells, code.darcyWeisbach, shells.roughness * 1000, shells.minorLoss);
      expect(relativeGap(pipeHeadLoss(shells, shells.flow, engineViscosity), expected)).toBeLessThan(0.002);
    }
  });

  it("loses the same head within 0.1 % in 80 pipes by Hazen-Williams", () => {
    // EPANET's form is 4.727 L Q^1.852/(C^1.852 d^4.871) in feet; the variants in use differ by about 0.1 %
    // between 50 mm and 2.5 m.
    for (const pipe of randomPipes(80, 1906)) {
      const expected = engineLoss(pipe, code.hazenWilliams, pipe.c, 0);
      expect(relativeGap(hazenWilliamsLoss(pipe, pipe.flow, pipe.c), expected)).toBeLessThan(0.001);
    }
  });

  it("returns its own printed losses, so that the comparison above is with the engine that is meant", () => {
    // EPANET 2.3.5 for 1000 m, 300 mm, 100 L/s: 6.758329 m at e 0.26 mm, 6.426141 m at C 130.
    const pipe = { length: 1000, diameter: 0.3, roughness: 0.00026, minorLoss: 0, flow: 0.1, c: 130 };
    expect(relativeGap(engineLoss(pipe, code.darcyWeisbach, 0.26, 0), 6.758329)).toBeLessThan(1e-6);
    expect(relativeGap(engineLoss(pipe, code.hazenWilliams, 130, 0), 6.426141)).toBeLessThan(1e-6);
    // Colebrook-White, nu 1e-6 and g 9.81: 6.712769 m (computed from the stated equations).
    expect(pipeHeadLoss(pipe, 0.1, 1e-6)).toBeCloseTo(6.712769, 5);
  });
});
