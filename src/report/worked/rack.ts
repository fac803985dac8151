import { gravity } from "../../model/hydraulics/friction.js";
import type { Rack } from "../../model/inputs.js";
import type { RackSummary } from "../../model/structures/hydraulic-summary.js";
import { rackState } from "../../model/structures/rack.js";
import type { Sheet } from "./sheet.js";

/** The loss of a rack by the formula that the costs use, clean and left to foul. */
export function rackSteps(
  sheet: Sheet,
  rack: Rack,
  { summary, thickness, barFactor }: { summary: RackSummary; thickness: number; barFactor: number },
): void {
  sheet.group("The trash rack");
  sheet.step({
    name: "Approach velocity",
    symbol: "V_r",
    is: "Q/(B Y)",
    value: summary.approachVelocity,
    unit: "m/s",
  });
  sheet.step({
    name: "Velocity head",
    symbol: "v",
    is: "Vr²/(2 g)",
    value: summary.approachVelocity ** 2 / (2 * gravity),
    unit: "m",
  });
  const clean = rackState(rack, 0, summary.flow, barFactor);
  sheet.step({
    name: "Blocked share, clean",
    symbol: "p",
    is: "1 − b/(s + b)",
    value: clean.blocked,
    unit: "",
  });
  sheet.step({
    name: "Head lost, clean, Meusburger",
    symbol: "h_r",
    is: "kF (p/(1 − p))^1.5 v sin α",
    value: clean.headLoss,
    unit: "m",
  });
  if (!summary.fouled) return;
  const fouled = rackState(rack, thickness, summary.flow, barFactor);
  sheet.step({
    name: "Blocked share, left to foul",
    symbol: "p_f",
    is: "1 − (b − 2 tr)/(s + b)",
    value: fouled.blocked,
    unit: "",
  });
  sheet.step({
    name: "Head lost, left to foul",
    symbol: "h_rf",
    is: "kF (pf/(1 − pf))^1.5 v sin α",
    value: fouled.headLoss,
    unit: "m",
  });
}
