import { type RoughnessParameters, roughnessRatio } from "../../model/hydraulics/fouled-pipe.js";
import { frictionFactor, type PipeFlow, pipeArea, pipeHeadLoss } from "../../model/hydraulics/friction.js";
import type { Layer } from "../../model/mussels/layer.js";
import type { Sheet } from "./sheet.js";

/**
 * Marks of a state on its symbols: none for the clean pipe, `f` fouled, `d` at the flow still delivered, `p` and `pf`
 * at the flow that a pump drives through the clean and through the fouled pipe.
 */
type Mark = "" | "f" | "d" | "p" | "pf";

export const marked = (symbol: string, mark: Mark) => (mark === "" ? symbol : `${symbol}_${mark}`);
export const plain = (symbol: string, mark: Mark) => `${symbol}${mark}`;

const laminarLimit = 2000;
const turbulentLimit = 4000;

/**
 * From flow to head lost in one state of a pipe. The sheet knows the bore, the roughness, the flow, the length, the
 * local losses, the viscosity and g.
 * @param wall mark on bore and roughness
 * @param mark mark on flow and on what the steps give
 */
export function pipeSteps(
  sheet: Sheet,
  pipe: PipeFlow,
  { flow, viscosity, wall, mark, flowSymbol, lossName, lossSymbol }: PipeCase & LossNames,
): void {
  const velocity = flow / pipeArea(pipe.diameter);
  const reynolds = (velocity * pipe.diameter) / viscosity;
  const relative = pipe.roughness / pipe.diameter;
  const bore = plain("D", wall);
  const speed = plain("V", mark);
  speedSteps(sheet, { velocity, reynolds, wall, mark, flowSymbol });
  frictionSteps(sheet, { reynolds, relative, wall, mark });
  sheet.step({
    name: lossName ?? "Head lost, Darcy–Weisbach",
    symbol: lossSymbol ?? marked("h", mark),
    is: `(${plain("f", mark)} L/${bore} + ΣK) ${speed}²/(2 g)`,
    value: pipeHeadLoss(pipe, flow, viscosity),
    unit: "m",
  });
}

/** Set where the loss is not yet the pipe's. */
interface LossNames {
  readonly lossName?: string;
  readonly lossSymbol?: string;
}

/** Velocity and Reynolds number. */
export function speedSteps(sheet: Sheet, { velocity, reynolds, wall, mark, flowSymbol }: SpeedCase): void {
  const bore = plain("D", wall);
  sheet.step({
    name: "Velocity",
    symbol: marked("V", mark),
    is: `4 ${flowSymbol}/(π ${bore}²)`,
    value: velocity,
    unit: "m/s",
  });
  sheet.step({
    name: "Reynolds number",
    symbol: marked("Re", mark),
    is: `${plain("V", mark)} ${bore}/ν`,
    value: reynolds,
    unit: "",
  });
}

interface SpeedCase extends Pick<PipeCase, "wall" | "mark" | "flowSymbol"> {
  readonly velocity: number;
  readonly reynolds: number;
}

export interface PipeCase {
  readonly flow: number;
  readonly viscosity: number;
  readonly wall: Mark;
  readonly mark: Mark;
  /** Symbol of the flow without underscore. */
  readonly flowSymbol: string;
}

interface FrictionCase {
  readonly reynolds: number;
  readonly relative: number;
  readonly wall: Mark;
  readonly mark: Mark;
}

function frictionSteps(sheet: Sheet, { reynolds, relative, wall, mark }: FrictionCase): void {
  const factor = frictionFactor(reynolds, relative);
  const symbol = marked("f", mark);
  const re = plain("Re", mark);
  if (reynolds <= laminarLimit) {
    sheet.step({ name: "Friction factor, laminar", symbol, is: `64/${re}`, value: factor, unit: "" });
    return;
  }
  const used = Math.min(relative, 1 / 2);
  sheet.step({
    name: relative > used ? "Relative roughness, at most a half" : "Relative roughness",
    symbol: marked("r", mark),
    is: relative > used ? "1/2" : `${plain("e", wall)}/${plain("D", wall)}`,
    value: used,
    unit: "",
  });
  if (reynolds < turbulentLimit) transitionSteps(sheet, { reynolds, relative, wall, mark });
  else turbulentSteps(sheet, factor, mark);
}

/** The printed friction factor in both sides of Colebrook–White. */
function turbulentSteps(sheet: Sheet, factor: number, mark: Mark): void {
  const f = plain("f", mark);
  const inverseRoot = 1 / Math.sqrt(factor);
  sheet.step({ name: "Friction factor, found by trial", symbol: marked("f", mark), value: factor, unit: "" });
  sheet.step({ name: "Colebrook–White, left side", is: `1/√${f}`, value: inverseRoot, unit: "" });
  sheet.step({
    name: "Colebrook–White, right side: the same",
    is: `−2 log₁₀(${plain("r", mark)}/3.7 + 2.51/(${plain("Re", mark)} √${f}))`,
    value: inverseRoot,
    unit: "",
  });
}

/** Between laminar and turbulent flow: a straight line in the Reynolds number. */
function transitionSteps(sheet: Sheet, { reynolds, relative, mark }: FrictionCase): void {
  sheet.step({
    name: "Share of the way to turbulent flow",
    symbol: marked("x", mark),
    is: `(${plain("Re", mark)} − ${laminarLimit})/(${turbulentLimit} − ${laminarLimit})`,
    value: (reynolds - laminarLimit) / (turbulentLimit - laminarLimit),
    unit: "",
  });
  sheet.step({
    name: `Friction factor at a Reynolds number of ${turbulentLimit}`,
    symbol: `f_4${mark}`,
    value: frictionFactor(turbulentLimit, relative),
    unit: "",
  });
  sheet.step({
    name: "Friction factor",
    symbol: marked("f", mark),
    is: `(1 − ${plain("x", mark)}) 64/${laminarLimit} + ${plain("x", mark)} f4${mark}`,
    value: frictionFactor(reynolds, relative),
    unit: "",
  });
}

/** The layer's cover, the roughness of its shells and the bore that it leaves. */
export function layerSteps(
  sheet: Sheet,
  layer: Layer,
  { clean, fouled, parameters }: { clean: PipeFlow; fouled: PipeFlow; parameters: RoughnessParameters },
): void {
  sheet.step({ name: "Cover", symbol: "c", is: "N λ²", value: layer.cover, unit: "" });
  ratioStep(sheet, layer.cover, parameters);
  const isSmootherThanWall = fouled.roughness === clean.roughness;
  sheet.step({
    name: isSmootherThanWall ? "Sand roughness: the clean wall's" : "Sand roughness of the shells",
    symbol: "e_f",
    is: isSmootherThanWall ? "e" : "κ λ",
    value: fouled.roughness,
    unit: "m",
  });
  sheet.step({
    name: "Bore less twice the layer",
    symbol: "D_f",
    is: "D − 2 t",
    value: fouled.diameter,
    unit: "m",
  });
}

function ratioStep(sheet: Sheet, cover: number, parameters: RoughnessParameters): void {
  const { closedCover, openCover } = parameters;
  const middle = (openCover + closedCover) / 2;
  const isHalfOpen = cover > openCover && cover < closedCover;
  if (isHalfOpen) {
    const is = "(c0 + c1)/2";
    sheet.step({ name: "Middle of half-open cover", symbol: "c_m", is, value: middle, unit: "" });
  }
  const distance = cover < middle ? "(cm − c)" : "(c − cm)";
  const whole = cover >= closedCover ? "κ1" : "κ1 c/c0";
  sheet.step({
    name: `Roughness over shell length, ${coverName(cover, parameters)}`,
    symbol: "κ",
    is: isHalfOpen ? `κ2 − (κ2 − κ1) ${distance}/(cm − c0)` : whole,
    value: roughnessRatio(cover, parameters),
    unit: "",
  });
}

function coverName(cover: number, { closedCover, openCover }: RoughnessParameters): string {
  if (cover >= closedCover) return "closed layer";
  return cover <= openCover ? "single shells" : "half open";
}
