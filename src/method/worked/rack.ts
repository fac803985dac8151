import { gravity } from "../../model/hydraulics/friction.js";
import type { RackLosses, RackSummary } from "../../model/structures/hydraulic-summary.js";
import type { Rack, RackFormula } from "../../model/structures/inputs.js";
import { barFactorIds } from "../../model/structures/rack.js";
import { formulaNames } from "../../report/words/rack-formulas.js";
import type { Quantity } from "../../units/quantity.js";
import { type FouledState, giveAssumption, giveQuantity, type Setting } from "./setting.js";
import type { Sheet } from "./sheet.js";

/** The rack as entered, the layer on it and the factor of its bars in the formula in use. */
export function giveRack(
  sheet: Sheet,
  entered: Readonly<Record<"width" | "height" | "barThickness" | "clearSpacing" | "angle", Quantity>>,
  rack: Rack,
  about: { formula: RackFormula; thickness: number; setting: Setting },
): void {
  const { formula, thickness, setting } = about;
  const factors = barFactorIds[rack.barShape];
  giveQuantity(sheet, "B", "width of the rack", entered.width, "m");
  giveQuantity(sheet, "Y", "its height", entered.height, "m");
  giveQuantity(sheet, "s", "bar thickness", entered.barThickness, "m");
  giveQuantity(sheet, "b", "clear spacing", entered.clearSpacing, "m");
  if (formula === "meusburger" || formula === "kirschmer") {
    giveQuantity(sheet, "α", "angle of the rack", entered.angle, "°");
    giveAssumption(sheet, "k_F", "factor of the bar's shape", factors.shape, setting);
  }
  if (formula === "clark") {
    giveAssumption(sheet, "η_c", "Clark's factor of the bar's shape", factors.clark, setting);
  }
  sheet.give({ symbol: "t_r", meaning: "layer on the rack", entered: "result", value: thickness, unit: "m" });
}

/** The loss of a rack by the formula that the costs use, clean and left to foul. */
export function rackSteps(
  sheet: Sheet,
  { approachVelocity, formula, clean, fouled }: RackSummary,
  state: FouledState,
): void {
  sheet.group(`The trash rack, by ${formulaNames[formula]}`);
  sheet.step({
    name: "Approach velocity",
    symbol: "V_r",
    is: "Q/(B Y)",
    value: approachVelocity,
    unit: "m/s",
  });
  const velocityHead = approachVelocity ** 2 / (2 * gravity);
  sheet.step({ name: "Velocity head", symbol: "v", is: "Vr²/(2 g)", value: velocityHead, unit: "m" });
  stateSteps(sheet, formula, clean, { state: "clean", mark: "", gap: "b", bar: "s" });
  if (!fouled) return;
  const gap = "(b − 2 tr)";
  stateSteps(sheet, formula, fouled, { state, mark: "f", gap, bar: "(s + 2 tr)" });
}

interface StateNames {
  readonly state: string;
  readonly mark: "" | "f";
  /** What is left between the bars, and the bar with what sits on it. */
  readonly gap: string;
  readonly bar: string;
}

function stateSteps(sheet: Sheet, formula: RackFormula, losses: RackLosses, names: StateNames): void {
  const { state, mark, gap } = names;
  const indexed = (symbol: string) => (mark === "" ? symbol : `${symbol}_${mark}`);
  const blocked = losses.blocked;
  const is = `1 − ${gap}/(s + b)`;
  sheet.step({ name: `Blocked share, ${state}`, symbol: indexed("p"), is, value: blocked, unit: "" });
  if (formula === "reclamation") {
    const [open, factor] = [indexed("R"), indexed("K")];
    const left = 1 - blocked;
    sheet.step({ name: "Net over gross area", symbol: open, is: `1 − p${mark}`, value: left, unit: "" });
    const value = 1.45 - 0.45 * left - left ** 2;
    const coefficient = `1.45 − 0.45 R${mark} − R${mark}²`;
    sheet.step({ name: "Loss coefficient", symbol: factor, is: coefficient, value, unit: "" });
  }
  sheet.step({
    name: `Head lost, ${state}`,
    symbol: `h_r${mark}`,
    is: lossFormula(formula, names),
    value: losses[formula],
    unit: "m",
  });
}

function lossFormula(formula: RackFormula, { mark, gap, bar }: StateNames): string {
  const p = `p${mark}`;
  switch (formula) {
    case "meusburger":
      return `kF (${p}/(1 − ${p}))^1.5 v sin α`;
    case "kirschmer":
      return `kF (${bar}/${gap})^(4/3) v sin α`;
    case "reclamation":
      return `K${mark} v/R${mark}²`;
    case "clark":
      return `7.43 ηc ${p}² v`;
  }
}
