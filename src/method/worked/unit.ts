import { at } from "../../lists.js";
import { fouledPipe } from "../../model/hydraulics/fouled-pipe.js";
import { hydroPower } from "../../model/hydraulics/power.js";
import { waterwayLoss } from "../../model/hydraulics/waterway.js";
import { daysOf, hoursPerDay } from "../../model/lake/calendar.js";
import { type OperatingYear, operatingYear } from "../../model/structures/hydropower.js";
import { monthNames } from "../../study/format/month-names.js";
import { layerSteps } from "./pipe.js";
import { giveLevel, givePipe, giveQuantity, type Setting } from "./setting.js";
import { newSheet, type Sheet } from "./sheet.js";
import { giveTurbine, turbineSteps } from "./turbine.js";
import type { UnitCase } from "./unit-case.js";
import { equivalentRoughnessSteps, waterwaySteps } from "./waterway.js";

/** One unit at its largest flow: what it makes, and what the layer in its penstock takes of it. */
export function unitSheet(example: UnitCase, setting: Setting): Sheet {
  const { plant, entered, layer, month, pipe } = example;
  const sheet = newSheet();
  const flow = at(plant.flow, month);
  const { viscosity, roughness } = setting.lake;
  giveQuantity(sheet, "Q", "flow of one unit", entered.flow[at(monthNames, month)], "m³/s");
  givePlant(sheet, example, setting);
  givePipe(sheet, entered.penstock, plant.penstock, layer, setting);
  const year = operatingYear(plant, setting.lake);
  const { penstock } = year;
  sheet.group("The penstock, clean");
  waterwaySteps(sheet, penstock, { flow, viscosity, wall: "", mark: "", flowSymbol: "Q" });
  makingSteps(sheet, example, year, setting);
  if (!pipe.fouled) return sheet;
  const fouled = fouledPipe(penstock, layer, roughness);
  sheet.group("The penstock, left to foul");
  equivalentRoughnessSteps(sheet, penstock, flow);
  layerSteps(sheet, layer, { clean: penstock, fouled, parameters: roughness });
  waterwaySteps(sheet, fouled, { flow, viscosity, wall: "f", mark: "f", flowSymbol: "Q" });
  const extra = waterwayLoss(fouled, flow, viscosity) - at(year.cleanPenstockLoss, month);
  lostSteps(sheet, example, { extra, year, setting });
  return sheet;
}

function givePlant(sheet: Sheet, example: UnitCase, setting: Setting): void {
  const { entered, month } = example;
  const price = entered.energyPrice;
  giveLevel(sheet, month, setting);
  giveQuantity(sheet, "z_t", "tailwater", entered.tailwaterElevation, "m");
  if (entered.efficiency) giveQuantity(sheet, "η", "efficiency of the unit", entered.efficiency, "");
  giveTurbine(sheet, example, setting);
  giveQuantity(
    sheet,
    "u",
    "price of energy",
    "all" in price ? price.all : price[at(monthNames, month)],
    `${setting.context.run.document.money.currency}/kWh`,
  );
  sheet.give({
    symbol: "n",
    meaning: "days in the month",
    entered: "calendar",
    value: daysOf(month),
    unit: "d",
  });
}

function makingSteps(sheet: Sheet, example: UnitCase, year: OperatingYear, setting: Setting): void {
  const { plant, month } = example;
  const netHead = at(year.netHead, month);
  sheet.group("What the unit makes");
  sheet.step({ name: "Net head", symbol: "H_n", is: "z − zt − h", value: netHead, unit: "m" });
  turbineSteps(sheet, example, setting);
  sheet.step({
    name: "Power",
    symbol: "P",
    is: "η ρ g Q Hn/1000",
    value: hydroPower(at(plant.flow, month), netHead, at(year.efficiency, month)),
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
  { extra, year, setting }: { extra: number; year: OperatingYear; setting: Setting },
): void {
  const netHead = at(year.netHead, month);
  const isAllLost = extra > netHead;
  const head = Math.max(0, Math.min(extra, netHead));
  const power = hydroPower(at(plant.flow, month), head, at(year.efficiency, month));
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
