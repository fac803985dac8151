import { at } from "../../lists.js";
import { fouledPipe } from "../../model/hydraulics/fouled-pipe.js";
import { daysOf } from "../../model/lake/calendar.js";
import { rackSummary } from "../../model/structures/hydraulic-summary.js";
import { fouledConveyance, pumpedSupply, supplyOf } from "../../model/structures/supply.js";
import { monthNames } from "../../study/format/month-names.js";
import { energySteps, waterSteps } from "./consequences.js";
import { headSteps } from "./head.js";
import type { Drive, IntakeCase } from "./intake-case.js";
import { layerSteps } from "./pipe.js";
import { givePumpCurve, pumpedOutcome, pumpSteps } from "./pump.js";
import { giveRack, rackSteps } from "./rack.js";
import { giveLevel, givePipe, giveQuantity, type Setting } from "./setting.js";
import { newSheet, type Sheet } from "./sheet.js";
import { equivalentRoughnessSteps, waterwaySteps } from "./waterway.js";

function driveOf({ intake, layer, month }: IntakeCase, { lake }: Setting): Drive {
  const supply = supplyOf(intake, lake);
  return {
    demand: at(intake.demand, month),
    viscosity: lake.viscosity,
    supply,
    pumped: pumpedSupply(intake, lake),
    fouled: fouledPipe(supply.clean, layer, lake.roughness),
    cleanMonth: at(supply.cleanYear, month),
    fouledMonth: fouledConveyance(supply, layer, month, lake),
  };
}

/** An intake's conduit at the month of largest demand with the layer of a mature infestation that nobody cleans. */
export function intakeSheet(example: IntakeCase, setting: Setting): Sheet {
  const { intake, entered, layer, month, onRack } = example;
  const sheet = newSheet(setting.context.run.document.study.units);
  giveQuantity(sheet, "Q", "demand of the month", entered.demand[at(monthNames, month)], "m³/s");
  givePipe(sheet, entered.conduit, intake.conduit, layer, setting);
  giveSupply(sheet, example, setting);
  const rack =
    onRack &&
    rackSummary(
      { structure: intake.name, rack: intake.rack, flow: at(intake.demand, month) },
      onRack,
      setting.lake,
    );
  if (rack && onRack) {
    const { formula } = rack;
    giveRack(sheet, entered.rack, intake.rack, { formula, thickness: onRack.thickness, setting });
  }
  const drive = driveOf(example, setting);
  const { demand: flow, viscosity, fouled } = drive;
  const { clean } = drive.supply;
  sheet.group("The conduit, clean");
  waterwaySteps(sheet, clean, { flow, viscosity, wall: "", mark: "", flowSymbol: "Q" });
  if (drive.pumped) pumpSteps(sheet, example, drive, "clean");
  const isOpen = fouled.diameter > 0;
  if (layer.thickness > 0) {
    sheet.group("The layer");
    if (isOpen) equivalentRoughnessSteps(sheet, clean, { flow, largest: example.pipe.flow });
    layerSteps(sheet, layer, { clean, fouled, parameters: setting.lake.roughness });
  }
  if (isOpen && layer.thickness > 0) {
    sheet.group(`The same flow through the conduit ${setting.state}`);
    waterwaySteps(sheet, fouled, { flow, viscosity, wall: "f", mark: "f", flowSymbol: "Q" });
    if (drive.pumped) pumpSteps(sheet, example, drive, setting.state);
    consequences(sheet, example, drive, setting);
  }
  if (rack && onRack) rackSteps(sheet, rack, setting.state);
  return sheet;
}

function giveSupply(sheet: Sheet, { entered, month }: IntakeCase, setting: Setting): void {
  const { currency } = setting.context.run.document.money;
  const { supply } = entered;
  if (supply.by === "gravity") {
    if (supply.availableHead) giveQuantity(sheet, "H_a", "head to spend", supply.availableHead, "m");
    if (supply.outletElevation) {
      giveLevel(sheet, month, setting);
      giveQuantity(sheet, "z_o", "elevation of the outlet", supply.outletElevation, "m");
    }
  } else {
    giveQuantity(sheet, "η", "efficiency of the pump", supply.efficiency, "");
    if (supply.marginHead) {
      giveQuantity(sheet, "M", "head that the pump has to spare", supply.marginHead, "m");
    }
    if (supply.curve) givePumpCurve(sheet, supply, month, setting);
    giveQuantity(sheet, "u", "price of energy", supply.energyPrice, `${currency}/kWh`);
  }
  giveQuantity(sheet, "w", "price of water from elsewhere", entered.alternativeWater, `${currency}/m³`);
  const value = daysOf(month);
  sheet.give({ symbol: "n", meaning: "days in the month", entered: "calendar", value, unit: "d" });
}

/** What the layer costs in the month: energy, and water where the head runs out. */
function consequences(sheet: Sheet, example: IntakeCase, drive: Drive, setting: Setting): void {
  const { intake, month } = example;
  const { currency } = setting.context.run.document.money;
  sheet.group("What it costs in the month");
  const outcome = drive.pumped ? pumpedOutcome(drive) : headSteps(sheet, example, drive, setting);
  energySteps(sheet, intake, { ...drive, outcome, month, currency });
  waterSteps(sheet, intake, { ...drive, outcome, month, currency });
}
