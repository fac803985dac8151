import { at } from "../../lists.js";
import { turbineCurve, turbineEfficiency } from "../../model/hydraulics/turbine.js";
import { turbineAssumptions } from "../../model/hydraulics/turbine-ids.js";
import type { AssumptionId } from "../../model/register/register.js";
import type { TurbineType } from "../../model/structures/inputs.js";
import { plantRunning } from "../../model/structures/plant/running.js";
import { giveAssumption, giveQuantity, type Setting } from "./setting.js";
import type { Sheet } from "./sheet.js";
import type { UnitCase } from "./unit-case.js";

/** Shares of the rated flow, percent, between which the month's flow lies; 0 stands for no flow at no efficiency. */
const percentStep = 20;
const whole = 100;

const typeNames: Readonly<Record<TurbineType, string>> = {
  francis: "Francis",
  kaplan: "Kaplan",
  propeller: "propeller",
  crossflow: "crossflow",
  pelton: "Pelton",
};

function bracketOf({ plant, month }: UnitCase): { before: number; after: number; share: number } {
  const share = Math.min(1, at(plantRunning(plant).flow, month) / (plant.turbine?.ratedFlow ?? 1));
  const before = Math.min(Math.floor((share * whole) / percentStep) * percentStep, whole - percentStep);
  return { before, after: before + percentStep, share };
}

/** The turbine as entered and its efficiency about the month's flow; nothing where one efficiency is given. */
export function giveTurbine(sheet: Sheet, example: UnitCase, setting: Setting): void {
  const { turbine } = example.entered;
  if (!turbine) return;
  const { before, after } = bracketOf(example);
  const ids = turbineAssumptions[turbine.type];
  const ofType = (symbol: string, meaning: string, id: AssumptionId) =>
    giveAssumption(sheet, symbol, meaning, id, setting);
  const relativeAt = (percent: number) => at(ids.relative, percent / percentStep - 1);
  giveQuantity(sheet, "Q_r", "rated flow of the turbine", turbine.ratedFlow, "m³/s");
  giveQuantity(sheet, "η_g", "efficiency of generator and transformer", turbine.generatorEfficiency, "");
  ofType("η_m", `largest efficiency of a ${typeNames[turbine.type]} turbine`, ids.peakEfficiency);
  if (before > 0) ofType("y_1", `efficiency over it at ${before}% of the rated flow`, relativeAt(before));
  ofType("y_2", `the same at ${after}%`, relativeAt(after));
  ofType("φ_0", "smallest share of the rated flow", ids.minimumShare);
}

/** The unit's efficiency at the month's share of the rated flow. */
export function turbineSteps(sheet: Sheet, example: UnitCase, { assumed }: Setting): void {
  const { turbine } = example.plant;
  if (!turbine) return;
  const { before, after, share } = bracketOf(example);
  const curve = turbineCurve(turbine.type, assumed);
  const efficiency = turbineEfficiency(curve, share);
  const step = (name: string, symbol: string, is: string, value: number) =>
    sheet.step({ name, symbol, is, value, unit: "" });
  step("Share of the rated flow", "φ", "Q/Qr", share);
  if (efficiency === 0) {
    const name = "Efficiency: none below the smallest share";
    sheet.step({ name, symbol: "η", value: 0, unit: "" });
    return;
  }
  const way = `(100 φ − ${before})/(${after} − ${before})`;
  const line = before > 0 ? `y1 + (y2 − y1) ${way}` : `y2 ${way}`;
  step("Efficiency over its largest, on a straight line", "y", line, efficiency / curve.peakEfficiency);
  const unit = efficiency * turbine.generatorEfficiency;
  step("Efficiency of the unit", "η", "ηm y ηg", unit);
}
