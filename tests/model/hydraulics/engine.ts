import { Project, Workspace } from "epanet-js";

// An independent hydraulic engine, EPANET 2.3.5. Its kinematic viscosity is 1.1e-5 ft2/s = 1.02193e-6 m2/s.
export const engineViscosity = 1.02193e-6;

/** Codes of the EPANET 2.3 toolkit, as its header numbers them. */
export const code = {
  litresPerSecond: 5,
  hazenWilliams: 0,
  darcyWeisbach: 1,
  reservoir: 1,
  junction: 0,
  pipe: 1,
  pump: 2,
  elevation: 0,
  flow: 8,
  headLoss: 10,
  initialSpeed: 5,
  accuracy: 1,
} as const;
export type Law = typeof code.hazenWilliams | typeof code.darcyWeisbach;

const workspace = new Workspace();
export const loadEngine = () => workspace.loadModule();

/** Park and Miller's minimal generator (1988, from memory): the same numbers on every run. */
export function uniform(seed: number): (low: number, high: number) => number {
  let state = seed;
  return (low, high) => {
    state = (state * 48_271) % 2_147_483_647;
    return low + ((high - low) * state) / 2_147_483_647;
  };
}

/** A pipe for the engine; its coefficient is the roughness in mm or Hazen–Williams' C. */
export interface EnginePipe {
  readonly length: number;
  readonly diameter: number;
  readonly minorLoss: number;
  readonly coefficient: number;
}

function project(law: Law): Project {
  const made = new Project(workspace);
  made.init("report.rpt", "out.bin", code.litresPerSecond, law);
  made.setOption(code.accuracy, 1e-7);
  return made;
}

function addPipe(made: Project, pipe: EnginePipe, from: string, to: string): number {
  const link = made.addLink("P", code.pipe, from, to);
  made.setPipeData(link, pipe.length, pipe.diameter * 1000, pipe.coefficient, pipe.minorLoss);
  return link;
}

function addReservoir(made: Project, id: string, level: number): void {
  made.setNodeValue(made.addNode(id, code.reservoir), code.elevation, level);
}

/** Head lost between a reservoir and a tap, m. */
export function engineLoss(pipe: EnginePipe, flow: number, law: Law): number {
  const made = project(law);
  addReservoir(made, "R", 1000);
  made.setJunctionData(made.addNode("J", code.junction), 0, flow * 1000, "");
  const link = addPipe(made, pipe, "R", "J");
  made.solveH();
  const loss = made.getLinkValue(link, code.headLoss);
  made.close();
  return loss;
}

/** Flow and head of a pump that lifts from one reservoir through a pipe to another. */
export function engineOperatingPoint(
  points: ReadonlyArray<{ flow: number; head: number }>,
  system: { lift: number; pipe: EnginePipe; law: Law; speed?: number },
): { flow: number; head: number } {
  const made = project(system.law);
  addReservoir(made, "A", 50);
  made.setJunctionData(made.addNode("J", code.junction), 0, 0, "");
  addReservoir(made, "B", 50 + system.lift);
  const pump = made.addLink("U", code.pump, "A", "J");
  addPipe(made, system.pipe, "J", "B");
  made.addCurve("C");
  const curve = made.getCurveIndex("C");
  made.setCurve(
    curve,
    points.map(({ flow }) => flow * 1000),
    points.map(({ head }) => head),
  );
  made.setHeadCurveIndex(pump, curve);
  made.setLinkValue(pump, code.initialSpeed, system.speed ?? 1);
  made.solveH();
  const found = {
    flow: made.getLinkValue(pump, code.flow) / 1000,
    head: -made.getLinkValue(pump, code.headLoss),
  };
  made.close();
  return found;
}
