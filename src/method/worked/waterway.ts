import { gravity, pipeArea, pipeHeadLoss } from "../../model/hydraulics/friction.js";
import { hazenWilliamsLoss } from "../../model/hydraulics/hazen-williams.js";
import { type Waterway, waterwayLoss } from "../../model/hydraulics/waterway.js";
import { marked, type PipeCase, pipeSteps, plain, speedSteps } from "./pipe.js";
import type { Sheet } from "./sheet.js";

/** From flow to head lost by the law of the pipe's wall: Hazen–Williams where it is clean and known by its C. */
export function waterwaySteps(sheet: Sheet, waterway: Waterway, pipeCase: PipeCase): void {
  const { clean, hazenWilliamsC } = waterway;
  if (hazenWilliamsC !== undefined) {
    hazenSteps(sheet, waterway, hazenWilliamsC, pipeCase);
    return;
  }
  const { flow, viscosity, mark } = pipeCase;
  const cleanLoss = clean ? waterwayLoss(clean, flow, viscosity) : 0;
  if (cleanLoss <= pipeHeadLoss(waterway, flow, viscosity)) {
    pipeSteps(sheet, waterway, pipeCase);
    return;
  }
  const lossName = "Head lost by Darcy–Weisbach, below that of the clean pipe";
  pipeSteps(sheet, waterway, { ...pipeCase, lossName, lossSymbol: `h_w${mark}` });
  sheet.step({
    name: "Head lost, that of the clean pipe at this flow",
    symbol: marked("h", mark),
    is: `${hazenTerm(pipeCase.flowSymbol)} + ΣK (4 ${pipeCase.flowSymbol}/(π D²))²/(2 g)`,
    value: cleanLoss,
    unit: "m",
  });
}

const hazenTerm = (flow: string) => `10.67 L ${flow}^1.852/(C^1.852 D^4.8704)`;

function hazenSteps(sheet: Sheet, waterway: Waterway, c: number, pipeCase: PipeCase): void {
  const { flow, viscosity, mark, flowSymbol } = pipeCase;
  const velocity = flow / pipeArea(waterway.diameter);
  const reynolds = (velocity * waterway.diameter) / viscosity;
  speedSteps(sheet, { ...pipeCase, velocity, reynolds });
  sheet.step({
    name: "Friction loss, Hazen–Williams",
    symbol: `h_C${mark}`,
    is: hazenTerm(flowSymbol),
    value: hazenWilliamsLoss(waterway, flow, c),
    unit: "m",
  });
  sheet.step({
    name: "Head lost with local losses",
    symbol: marked("h", mark),
    is: `hC${mark} + ΣK ${plain("V", mark)}²/(2 g)`,
    value: waterwayLoss(waterway, flow, viscosity),
    unit: "m",
  });
}

/** The sand roughness that stands for a wall known by its C once it fouls; nothing where roughness is given. */
export function equivalentRoughnessSteps(
  sheet: Sheet,
  waterway: Waterway,
  { flow, largest }: { readonly flow: number; readonly largest: number },
): void {
  const { length, diameter, roughness, hazenWilliamsC } = waterway;
  if (hazenWilliamsC === undefined) return;
  if (flow !== largest) {
    const found = "Equivalent sand roughness of the clean wall, found at the largest flow";
    sheet.step({ name: found, symbol: "e", value: roughness, unit: "m" });
    return;
  }
  const velocityHead = (flow / pipeArea(diameter)) ** 2 / (2 * gravity);
  const loss = hazenWilliamsLoss(waterway, flow, hazenWilliamsC);
  const factor = (loss * diameter) / (length * velocityHead);
  const step = (name: string, symbol: string, is: string, value: number, unit = "") =>
    sheet.step({ name, symbol, is, value, unit });
  step("Friction factor of the same loss, clean", "f_C", "2 g D hC/(L V²)", factor);
  step("Its inverse root", "X", "1/√fC", 1 / Math.sqrt(factor));
  if (roughness > 0) {
    step("Equivalent sand roughness of the clean wall", "e", "3.7 D (10^(−X/2) − 2.51 X/Re)", roughness, "m");
    return;
  }
  const name = "Equivalent sand roughness: none, the wall is smoother than a smooth pipe's";
  sheet.step({ name, symbol: "e", value: 0, unit: "m" });
}
