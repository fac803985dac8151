import { at } from "../../lists.js";
import { fouledPipe } from "../../model/hydraulics/fouled-pipe.js";
import { hydroPower } from "../../model/hydraulics/power.js";
import { waterwayLoss } from "../../model/hydraulics/waterway.js";
import { type OperatingYear, operatingYear } from "../../model/structures/hydropower.js";
import { plantRunning } from "../../model/structures/plant/running.js";
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
  const sheet = newSheet(setting.context.run.document.study.units);
  const { viscosity, roughness } = setting.lake;
  const flow = giveRunning(sheet, example);
  givePlant(sheet, example, setting);
  givePipe(sheet, entered.penstock, plant.penstock, layer, setting);
  const year = operatingYear(plant, setting.lake);
  const { penstock } = year;
  sheet.group("The penstock, clean");
  waterwaySteps(sheet, penstock, { flow, viscosity, wall: "", mark: "", flowSymbol: "Q" });
  makingSteps(sheet, example, year, setting);
  const fouled = fouledPipe(penstock, layer, roughness);
  if (fouled.diameter === 0 || layer.thickness === 0) return sheet;
  sheet.group(`The penstock, ${setting.state}`);
  equivalentRoughnessSteps(sheet, penstock, { flow, largest: pipe.flow });
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
}

/** The flow while the unit runs and its hours, each as entered or worked out of the monthly mean. */
function giveRunning(sheet: Sheet, { plant, entered, month }: UnitCase): number {
  const running = plantRunning(plant);
  const flow = at(running.flow, month);
  const inMonth = (values: MonthlyEntry | undefined) =>
    values && ("all" in values ? values.all : values[at(monthNames, month)]);
  const flowText = inMonth(entered.running?.flow ?? entered.flow)?.text ?? "";
  const rated = running.from === "rated flow" ? "the turbine's rated flow" : flowText;
  sheet.give({
    symbol: "Q",
    meaning: "flow of one unit while it runs",
    entered: rated,
    value: flow,
    unit: "m³/s",
  });
  const hoursText = {
    entry: inMonth(entered.running?.hours ?? entered.running?.units)?.text ?? "",
    "rated flow": `mean flow ${flowText} over the rated flow`,
    "monthly mean": "calendar",
  }[running.from];
  sheet.give({
    symbol: "τ",
    meaning: "hours that it runs in the month",
    entered: hoursText,
    value: at(running.hours, month),
    unit: "h",
  });
  return flow;
}

type MonthlyEntry = NonNullable<UnitCase["entered"]["running"]>["flow"];

function makingSteps(sheet: Sheet, example: UnitCase, year: OperatingYear, setting: Setting): void {
  const { month } = example;
  const netHead = at(year.netHead, month);
  sheet.group("What the unit makes");
  sheet.step({ name: "Net head", symbol: "H_n", is: "z − zt − h", value: netHead, unit: "m" });
  turbineSteps(sheet, example, setting);
  sheet.step({
    name: "Power",
    symbol: "P",
    is: "η ρ g Q Hn/1000",
    value: hydroPower(at(year.running.flow, month), netHead, at(year.efficiency, month)),
    unit: "kW",
  });
  sheet.step({
    name: "Energy of the month",
    symbol: "E",
    is: "τ P",
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
  const power = hydroPower(at(year.running.flow, month), head, at(year.efficiency, month));
  const energy = power * at(year.running.hours, month);
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
  sheet.step({ name: "Energy lost in the month", symbol: "E_f", is: "τ Pf", value: energy, unit: "kWh" });
  sheet.step({
    name: "Its price, one unit",
    symbol: "C",
    is: "u Ef",
    value: energy * at(plant.energyPrice, month),
    unit: currency,
  });
}
