import { fouledPipe } from "../../model/hydraulics/fouled-pipe.js";
import { pipeHeadLoss } from "../../model/hydraulics/friction.js";
import { hydroPower } from "../../model/hydraulics/power.js";
import type { Hydropower } from "../../model/inputs.js";
import { at, daysOf, hoursPerDay } from "../../model/lake/calendar.js";
import { monthlyMeans } from "../../model/lake/levels.js";
import type { Layer } from "../../model/mussels/layer.js";
import type { PipeSummary } from "../../model/structures/hydraulic-summary.js";
import { type OperatingYear, operatingYear } from "../../model/structures/hydropower.js";
import { monthNames } from "../../study/fields.js";
import type { StudyDocument } from "../../study/schema.js";
import { layerSteps, pipeSteps } from "./pipe.js";
import { givePipe, giveQuantity, type Setting } from "./setting.js";
import { newSheet, type Sheet } from "./sheet.js";

export type EnteredPlant = Extract<StudyDocument["structures"][number], { kind: "hydropower" }>;

export interface UnitCase {
  readonly plant: Hydropower;
  readonly entered: EnteredPlant;
  readonly layer: Layer;
  readonly pipe: PipeSummary;
  readonly month: number;
}

/** One unit at its largest flow: what it makes, and what the layer in its penstock takes of it. */
export function unitSheet(example: UnitCase, setting: Setting): Sheet {
  const { plant, entered, layer, month, pipe } = example;
  const sheet = newSheet();
  const flow = at(plant.flow, month);
  const { viscosity } = setting;
  giveQuantity(sheet, "Q", "flow of one unit", entered.flow[at(monthNames, month)], "m³/s");
  givePlant(sheet, example, setting);
  givePipe(sheet, entered.penstock, plant.penstock, layer, setting);
  sheet.group("The penstock, clean");
  pipeSteps(sheet, plant.penstock, { flow, viscosity, wall: "", mark: "", flowSymbol: "Q" });
  const year = operatingYear(plant, { daily: setting.context.comparison.lake.daily, viscosity });
  makingSteps(sheet, example, year);
  if (!pipe.fouled) return sheet;
  const fouled = fouledPipe(plant.penstock, layer, setting.roughness);
  sheet.group("The penstock, left to foul");
  layerSteps(sheet, layer, { clean: plant.penstock, fouled, parameters: setting.roughness });
  pipeSteps(sheet, fouled, { flow, viscosity, wall: "f", mark: "f", flowSymbol: "Q" });
  const loss = pipeHeadLoss(fouled, flow, viscosity) - pipe.clean.headLoss;
  lostSteps(sheet, example, { extra: loss, netHead: at(year.netHead, month), setting });
  return sheet;
}

function givePlant(sheet: Sheet, { entered, month }: UnitCase, { context }: Setting): void {
  const { comparison, run } = context;
  const price = entered.energyPrice;
  const level = at(monthlyMeans(comparison.lake.daily), month);
  sheet.give({ symbol: "z", meaning: "mean level of the lake", entered: "result", value: level, unit: "m" });
  giveQuantity(sheet, "z_t", "tailwater", entered.tailwaterElevation, "m");
  giveQuantity(sheet, "η", "efficiency of the unit", entered.efficiency, "");
  giveQuantity(
    sheet,
    "u",
    "price of energy",
    "all" in price ? price.all : price[at(monthNames, month)],
    `${run.document.money.currency}/kWh`,
  );
  sheet.give({
    symbol: "n",
    meaning: "days in the month",
    entered: "calendar",
    value: daysOf(month),
    unit: "d",
  });
}

function makingSteps(sheet: Sheet, { plant, month }: UnitCase, year: OperatingYear): void {
  const netHead = at(year.netHead, month);
  sheet.group("What the unit makes");
  sheet.step({ name: "Net head", symbol: "H_n", is: "z − zt − h", value: netHead, unit: "m" });
  sheet.step({
    name: "Power",
    symbol: "P",
    is: "η ρ g Q Hn/1000",
    value: hydroPower(at(plant.flow, month), netHead, plant.efficiency),
    unit: "kW",
  });
  sheet.step({
    name: "Energy of the month",
    symbol: "E",
    is: "24 n P",
    value: at(year.energy, month),
    unit: "kWh",
  });
}

function lostSteps(
  sheet: Sheet,
  { plant, month }: UnitCase,
  { extra, netHead, setting }: { extra: number; netHead: number; setting: Setting },
): void {
  const isAllLost = extra > netHead;
  const head = Math.max(0, Math.min(extra, netHead));
  const power = hydroPower(at(plant.flow, month), head, plant.efficiency);
  const energy = power * daysOf(month) * hoursPerDay;
  const { currency } = setting.context.run.document.money;
  sheet.group("What the layer takes");
  sheet.step({
    name: isAllLost ? "Extra head lost: all there is" : "Extra head lost",
    symbol: "Δh",
    is: isAllLost ? "Hn" : "hf − h",
    value: head,
    unit: "m",
  });
  sheet.step({ name: "Power lost", symbol: "P_f", is: "η ρ g Q Δh/1000", value: power, unit: "kW" });
  sheet.step({ name: "Energy lost in the month", symbol: "E_f", is: "24 n Pf", value: energy, unit: "kWh" });
  sheet.step({
    name: "Its price, one unit",
    symbol: "C",
    is: "u Ef",
    value: energy * at(plant.energyPrice, month),
    unit: currency,
  });
}
