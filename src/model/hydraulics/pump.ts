import { at } from "../../lists.js";
import { withLater } from "../computed-once.js";
import { bracketedRoot, type Point } from "../root-search.js";

export interface PumpPoint {
  readonly flow: number;
  readonly head: number;
}

/** Head over flow at full speed, falling: H = H₀ − a Q^b, or straight lines between points. */
export type PumpCurve =
  | {
      readonly form: "power";
      readonly shutOffHead: number;
      readonly coefficient: number;
      readonly exponent: number;
    }
  | { readonly form: "lines"; readonly points: readonly PumpPoint[] };

/**
 * The curve through a pump's points, by EPANET's rules (Rossman 2000, "Pump curves"): H = H0 − a Q^b. One point:
 * H0 = 4 H1/3, and no head at 2 Q1, so that b = ln(H0/(H0 − H1))/ln 2 and a = (H0 − H1)/Q1^b. Three points from zero
 * flow: b = ln((H0 − H3)/(H0 − H2))/ln(Q3/Q2) and a = (H0 − H2)/Q2^b with H0 = H1. Any others: straight lines, the end
 * ones produced.
 * @param points by rising flow and falling head
 */
export function pumpCurve(points: readonly PumpPoint[]): PumpCurve {
  const first = at(points, 0);
  if (points.length === 1) {
    return powerCurve((first.head * 4) / 3, first, { flow: 2 * first.flow, head: 0 });
  }
  if (points.length !== 3 || first.flow > 0) return { form: "lines", points };
  return powerCurve(first.head, at(points, 1), at(points, 2));
}

function powerCurve(shutOffHead: number, middle: PumpPoint, last: PumpPoint): PumpCurve {
  const exponent =
    Math.log((shutOffHead - last.head) / (shutOffHead - middle.head)) / Math.log(last.flow / middle.flow);
  return {
    form: "power",
    shutOffHead,
    coefficient: (shutOffHead - middle.head) / middle.flow ** exponent,
    exponent,
  };
}

/** Head at full speed, m; below zero past the flow of `largestFlow`. */
export function pumpHead(curve: PumpCurve, flow: number): number {
  if (curve.form === "power") return curve.shutOffHead - curve.coefficient * flow ** curve.exponent;
  const next = curve.points.findIndex((point) => point.flow >= flow);
  const [start, end] = segment(curve.points, next === -1 ? curve.points.length - 1 : next);
  return start.head + ((end.head - start.head) * (flow - start.flow)) / (end.flow - start.flow);
}

const segment = (points: readonly PumpPoint[], endIndex: number): readonly [PumpPoint, PumpPoint] => {
  const end = Math.max(1, endIndex);
  return [at(points, end - 1), at(points, end)];
};

/** Flow at which the pump has no head left at full speed, m³/s. */
export function largestFlow(curve: PumpCurve): number {
  if (curve.form === "power") return (curve.shutOffHead / curve.coefficient) ** (1 / curve.exponent);
  const [start, end] = segment(curve.points, curve.points.length - 1);
  return start.flow + (start.head * (end.flow - start.flow)) / (start.head - end.head);
}

/** Head that a flow needs, m: lift and pipe loss. Rises with the flow. */
type SystemHead = (flow: number) => number;

/**
 * Where the curve at full speed meets the system, H(Q) = zd − z + h(Q): no flow if the lift is above the shut-off head or the pipe is
 * closed. Where the system needs no head even at the pump's largest flow, that flow at no head.
 */
export function operatingPoint(curve: PumpCurve, system: SystemHead): PumpPoint {
  const end = largestFlow(curve);
  const shutOff = pumpHead(curve, 0);
  const start = { x: 0, y: system(0) - shutOff };
  const lacking = (flow: number) => system(flow) - pumpHead(curve, flow);
  const close = flowNear(lacking, start.y, end);
  if (close !== undefined) return { flow: close, head: pumpHead(curve, close) };
  const atEnd = system(end);
  if (atEnd === Infinity) return { flow: 0, head: shutOff };
  if (atEnd <= 0) return { flow: end, head: 0 };
  const flow = risingRoot(lacking, start, { x: end, y: atEnd });
  return { flow, head: pumpHead(curve, flow) };
}

const mostSecants = 12;
/** The next change is below a twentieth of the product of this one and the one before: lost in the last digit. */
const lastRelativeChange = 1e-9;

/**
 * Flow at which a function that rises with it is zero, by the secant in Q², in which what pumps give and pipes need is
 * nearly straight; undefined where it does not close in, or leaves the flows up to the end, past which a flat curve falls
 * so steeply that a next change tells nothing.
 */
function flowNear(rising: (flow: number) => number, atNoFlow: number, end: number): number | undefined {
  const guess = end / 2;
  let before = 0;
  let valueBefore = atNoFlow;
  let square = guess * guess;
  const most = end * end;
  for (let step = 0; step < mostSecants; step++) {
    const value = rising(Math.sqrt(square));
    const change = (value * (square - before)) / (value - valueBefore);
    before = square;
    valueBefore = value;
    square -= change;
    if (!(square > 0 && square <= most)) return undefined;
    if (Math.abs(change) <= lastRelativeChange * square) return Math.sqrt(square);
  }
  return undefined;
}

export interface PumpRun {
  /** Mean flow over the month, m³/s: the demand, or what the pump manages. */
  readonly delivered: number;
  /** Flow and head while the pump runs. */
  readonly point: PumpPoint;
  /** Speed over full speed while it runs; worked out when asked for. */
  readonly speed: number;
}

export interface Pump {
  readonly curve: PumpCurve;
  readonly control: "on-off" | "variable-speed";
}

/**
 * How a pump meets a demand; delivered, min(Qd, Q). On-off: it runs at its operating point and stops when the demand is
 * met. Variable
 * speed: it gives the head that the demand needs, as long as full speed suffices, and then runs at full speed.
 */
export function pumpRun({ curve, control }: Pump, system: SystemHead, demand: number): PumpRun {
  if (demand === 0) return { delivered: 0, point: { flow: 0, head: 0 }, speed: 0 };
  if (control === "variable-speed") {
    const needed = system(demand);
    if (pumpHead(curve, demand) >= needed) {
      const point = { flow: demand, head: Math.max(0, needed) };
      return withLater({ delivered: demand, point }, { speed: () => relativeSpeed(curve, point) });
    }
  }
  const point = operatingPoint(curve, system);
  return { delivered: Math.min(demand, point.flow), point, speed: 1 };
}

/**
 * Speed over full speed at which the curve passes through a point below it, by the affinity laws: flow with the
 * speed n, head with its square, so that n² H(Q/n) = hn is the head.
 */
export function relativeSpeed(curve: PumpCurve, { flow, head }: PumpPoint): number {
  const slowest = flow / largestFlow(curve);
  const above = (speed: number) => speed ** 2 * pumpHead(curve, flow / speed) - head;
  return risingRoot(above, { x: slowest, y: above(slowest) }, { x: 1, y: above(1) });
}

const narrowest = 1e-13;

/** Root of a rising function between two ends; an end if the root is beyond it. */
function risingRoot(rising: (at: number) => number, start: Point, finish: Point): number {
  if (start.y >= 0) return start.x;
  if (finish.y <= 0) return finish.x;
  return bracketedRoot(rising, [start, finish], narrowest * finish.x);
}
