import { fouledPipe } from "../../model/hydraulics/fouled-pipe.js";
import { pumpPower } from "../../model/hydraulics/power.js";
import type { Intake } from "../../model/inputs.js";
import { at, daysOf, hoursPerDay, secondsPerDay } from "../../model/lake/calendar.js";
import type { Layer } from "../../model/mussels/layer.js";
import type { PipeSummary } from "../../model/structures/hydraulic-summary.js";
import { type ConduitState, conduitState } from "../../model/structures/intake.js";
import type { StructureResult } from "../../model/structures/structure.js";
import { monthNames } from "../../study/fields.js";
import type { StudyDocument } from "../../study/schema.js";
import { layerSteps, pipeSteps } from "./pipe.js";
import { rackSteps } from "./rack.js";
import { givePipe, giveQuantity, giveRack, type Setting, untouchedLayer } from "./setting.js";
import { newSheet, type Sheet } from "./sheet.js";

export type EnteredIntake = Extract<StudyDocument["structures"][number], { kind: "intake" }>;

export interface IntakeCase {
  readonly intake: Intake;
  readonly entered: EnteredIntake;
  readonly result: StructureResult;
  readonly layer: Layer;
  readonly pipe: PipeSummary;
  readonly month: number;
}

/** An intake's conduit at the month of largest demand with the layer of a mature infestation that nobody cleans. */
export function intakeSheet(example: IntakeCase, setting: Setting): Sheet {
  const { intake, entered, layer, month, result, pipe } = example;
  const sheet = newSheet();
  giveQuantity(sheet, "Q", "demand of the month", entered.demand[at(monthNames, month)], "m³/s");
  givePipe(sheet, entered.conduit, intake.conduit, layer, setting);
  giveSupply(sheet, example, setting);
  const rackLayer = untouchedLayer(result, "trash rack");
  const onRack = rackLayer && giveRack(sheet, entered.rack, intake.rack, rackLayer.thickness, setting);
  const { viscosity } = setting;
  const flow = at(intake.demand, month);
  sheet.group("The conduit, clean");
  pipeSteps(sheet, intake.conduit, { flow, viscosity, wall: "", mark: "", flowSymbol: "Q" });
  const fouled = fouledPipe(intake.conduit, layer, setting.roughness);
  sheet.group("The layer");
  layerSteps(sheet, layer, { clean: intake.conduit, fouled, parameters: setting.roughness });
  if (pipe.fouled) {
    sheet.group("The same flow through the conduit left to foul");
    pipeSteps(sheet, fouled, { flow, viscosity, wall: "f", mark: "f", flowSymbol: "Q" });
    consequences(sheet, example, setting);
  }
  const summary = result.hydraulics.racks[0];
  if (onRack && summary) rackSteps(sheet, intake.rack, { summary, ...onRack });
  return sheet;
}

function giveSupply(sheet: Sheet, { entered, month }: IntakeCase, { context }: Setting): void {
  const { currency } = context.run.document.money;
  if (entered.supply.by === "gravity") {
    giveQuantity(sheet, "H_a", "head to spend", entered.supply.availableHead, "m");
  } else {
    giveQuantity(sheet, "η", "efficiency of the pump", entered.supply.efficiency, "");
    giveQuantity(sheet, "M", "head that the pump has to spare", entered.supply.marginHead, "m");
    giveQuantity(sheet, "u", "price of energy", entered.supply.energyPrice, `${currency}/kWh`);
  }
  giveQuantity(sheet, "w", "price of water from elsewhere", entered.alternativeWater, `${currency}/m³`);
  sheet.give({
    symbol: "n",
    meaning: "days in the month",
    entered: "calendar",
    value: daysOf(month),
    unit: "d",
  });
}

/** What the head lost to the layer costs in the month: energy, and water where the head runs out. */
function consequences(sheet: Sheet, { intake, layer, month, pipe }: IntakeCase, setting: Setting): void {
  const demand = at(intake.demand, month);
  const state = conduitState(intake, layer, demand, setting);
  const cost = setting.context.run.document.money.currency;
  sheet.group("What it costs in the month");
  if (intake.supply.by === "pump") {
    sheet.step({
      name: "Head to spend: clean loss and the pump's margin",
      symbol: "H_a",
      is: "h + M",
      value: pipe.clean.headLoss + intake.supply.marginHead,
      unit: "m",
    });
  }
  const fallsShort = state.delivered < demand;
  if (fallsShort) deliveredSteps(sheet, { intake, layer, state }, setting);
  else spareStep(sheet, intake, pipe);
  if (intake.supply.by === "pump") energySteps(sheet, intake, { state, month, fallsShort, cost });
  waterSteps(sheet, intake, { state, month, demand, cost });
}

/** The demand is met: what is left of the head. */
function spareStep(sheet: Sheet, { supply }: Intake, { clean, fouled }: PipeSummary): void {
  if (!fouled) return;
  const available = supply.by === "gravity" ? supply.availableHead : clean.headLoss + supply.marginHead;
  sheet.step({
    name: "Head left to spare: the demand is met",
    symbol: "H_s",
    is: "Ha − hf",
    value: available - fouled.headLoss,
    unit: "m",
  });
}

/** The flow that the head still drives, tried in the pipe's own relations. */
function deliveredSteps(
  sheet: Sheet,
  { intake, layer, state }: { intake: Intake; layer: Layer; state: ConduitState },
  { roughness, viscosity }: Setting,
): void {
  sheet.step({
    name: "Flow that this head drives, found by trial",
    symbol: "Q_d",
    value: state.delivered,
    unit: "m³/s",
  });
  pipeSteps(sheet, fouledPipe(intake.conduit, layer, roughness), {
    flow: state.delivered,
    viscosity,
    wall: "f",
    mark: "d",
    flowSymbol: "Qd",
  });
}

interface MonthCase {
  readonly state: ConduitState;
  readonly month: number;
  readonly cost: string;
}

function energySteps(
  sheet: Sheet,
  intake: Intake,
  { state, month, fallsShort, cost }: MonthCase & { fallsShort: boolean },
): void {
  if (intake.supply.by !== "pump") return;
  const { efficiency, energyPrice } = intake.supply;
  const extra = Math.max(0, state.fouledLoss - state.cleanLoss);
  const power = pumpPower(state.delivered, extra, efficiency);
  const energy = power * daysOf(month) * hoursPerDay;
  const step = (name: string, symbol: string, is: string, value: number, unit: string) =>
    sheet.step({ name, symbol, is, value, unit });
  step("Extra head pumped", "Δh", fallsShort ? "Ha − h" : "hf − h", extra, "m");
  step("Extra power", "P", `ρ g ${fallsShort ? "Qd" : "Q"} Δh/(1000 η)`, power, "kW");
  step("Extra energy of the month", "E", "24 n P", energy, "kWh");
  step("Its cost", "C_E", "u E", energy * energyPrice, cost);
}

function waterSteps(
  sheet: Sheet,
  intake: Intake,
  { state, month, demand, cost }: MonthCase & { demand: number },
): void {
  const shortfall = Math.max(0, state.cleanDelivered - state.delivered);
  if (shortfall === 0) return;
  const isCleanShort = state.cleanDelivered < demand;
  if (isCleanShort) {
    sheet.step({
      name: "Flow of the clean conduit, found by trial: it falls short by itself",
      symbol: "Q_c",
      value: state.cleanDelivered,
      unit: "m³/s",
    });
  }
  const volume = shortfall * daysOf(month) * secondsPerDay;
  const is = `86,400 n (${isCleanShort ? "Qc" : "Q"} − Qd)`;
  sheet.step({ name: "Water that is missing", symbol: "W", is, value: volume, unit: "m³" });
  sheet.step({
    name: "Its cost",
    symbol: "C_W",
    is: "w W",
    value: volume * intake.alternativeWater,
    unit: cost,
  });
}
