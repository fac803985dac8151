import { at } from "../../lists.js";
import type { PumpCurve, PumpRun } from "../../model/hydraulics/pump.js";
import type { Waterway } from "../../model/hydraulics/waterway.js";
import type { Intake } from "../../model/structures/inputs.js";
import type { PumpedSupply } from "../../model/structures/supply.js";
import type { Drive, EnteredIntake, IntakeCase, Outcome } from "./intake-case.js";
import { type FouledState, giveLevel, giveQuantity, type Setting } from "./setting.js";
import type { Sheet } from "./sheet.js";
import { waterwaySteps } from "./waterway.js";

type EnteredPump = Extract<EnteredIntake["supply"], { by: "pump" }>;

/** The points of a pump's curve and the levels between which it lifts. */
export function givePumpCurve(sheet: Sheet, entered: EnteredPump, month: number, setting: Setting): void {
  giveLevel(sheet, month, setting);
  const { deliveryElevation, curve = [] } = entered;
  if (deliveryElevation)
    giveQuantity(sheet, "z_d", "level that the pump delivers to", deliveryElevation, "m");
  curve.forEach(({ flow, head }, index) => {
    giveQuantity(sheet, `Q_${index + 1}`, `flow of point ${index + 1} of the pump's curve`, flow, "m³/s");
    giveQuantity(sheet, `H_${index + 1}`, `head of point ${index + 1}`, head, "m");
  });
}

type State = "clean" | FouledState;

/** The pump against one state of the conduit: curve and system give the same head at the printed flow. */
export function pumpSteps(sheet: Sheet, { intake, month }: IntakeCase, drive: Drive, state: State): void {
  const { pumped, supply } = drive;
  if (!pumped) return;
  sheet.group(`The pump with the conduit ${state}`);
  if (state === "clean") {
    const value = at(pumped.lift, month);
    sheet.step({ name: "Lift", symbol: "H_l", is: "zd − z", value, unit: "m" });
    curveSteps(sheet, pumped.pump.curve, intake);
  }
  const waterway = state === "clean" ? supply.clean : drive.fouled;
  const run = pumped.run(waterway, month);
  const mark = state === "clean" ? "p" : "pf";
  if (run.speed < 1) throttledSteps(sheet, pumped, run, mark);
  else operatingSteps(sheet, { pumped, waterway, run, mark, viscosity: drive.viscosity });
}

/** Head at no flow, coefficient and exponent of a curve by one point or by three from no flow. */
function curveSteps(sheet: Sheet, curve: PumpCurve, { supply }: Intake): void {
  if (curve.form === "lines" || supply.by !== "pump") return;
  const { shutOffHead, coefficient, exponent } = curve;
  const through = supply.curve?.length === 3;
  const step = (name: string, symbol: string, is: string, value: number, unit: string) =>
    sheet.step({ name, symbol, is, value, unit });
  step("Head at no flow", "H_0", through ? "H1" : "4 H1/3", shutOffHead, "m");
  const power = through ? "ln((H0 − H3)/(H0 − H2))/ln(Q3/Q2)" : "ln(H0/(H0 − H1))/ln(2)";
  step("Exponent of the curve", "β", power, exponent, "");
  const scale = through ? "(H0 − H2)/Q2^β" : "(H0 − H1)/Q1^β";
  step("Coefficient of the curve", "a", scale, coefficient, "in m, m³/s");
}

interface OperatingCase {
  readonly pumped: PumpedSupply;
  readonly waterway: Waterway;
  readonly run: PumpRun;
  readonly mark: "p" | "pf";
  readonly viscosity: number;
}

/** At full speed: the flow at which curve and system meet. */
function operatingSteps(sheet: Sheet, { pumped, waterway, run, mark, viscosity }: OperatingCase): void {
  const { flow, head } = run.point;
  const name = flow > 0 ? "Flow at full speed, found by trial" : "Flow at full speed: none";
  sheet.step({ name, symbol: `Q_${mark}`, value: flow, unit: "m³/s" });
  if (flow === 0 || head === 0) {
    sheet.step({ name: "Head of the pump", symbol: `H_${mark}`, value: head, unit: "m" });
    return;
  }
  const wall = mark === "p" ? "" : "f";
  waterwaySteps(sheet, waterway, { flow, viscosity, wall, mark, flowSymbol: `Q${mark}` });
  const is = `Hl + h${mark}`;
  sheet.step({ name: "Head that the system needs", symbol: `H_${mark}`, is, value: head, unit: "m" });
  const curve = pumpFormula(pumped.pump.curve, flow, `Q${mark}`);
  sheet.step({ name: "Head that the pump gives: the same", is: curve, value: head, unit: "m" });
}

/** Below full speed: the head that the demand needs, and the speed at which the pump gives it. */
function throttledSteps(
  sheet: Sheet,
  { pump }: PumpedSupply,
  { point, speed }: PumpRun,
  mark: "p" | "pf",
): void {
  const is = mark === "p" ? "Hl + h" : "Hl + hf";
  if (point.head === 0) {
    sheet.step({ name: "Head that the system needs: none", symbol: `H_${mark}`, value: 0, unit: "m" });
    return;
  }
  sheet.step({ name: "Head that the system needs", symbol: `H_${mark}`, is, value: point.head, unit: "m" });
  const symbol = `ω_${mark}`;
  sheet.step({ name: "Speed over full speed, found by trial", symbol, value: speed, unit: "" });
  const flow = `(Q/ω${mark})`;
  const curve = `ω${mark}² (${pumpFormula(pump.curve, point.flow / speed, flow)})`;
  sheet.step({ name: "Head that the pump gives: the same", is: curve, value: point.head, unit: "m" });
}

/** The curve in symbols of the sheet, with the segment that a flow falls on where it is straight lines. */
function pumpFormula(curve: PumpCurve, flow: number, symbol: string): string {
  if (curve.form === "power") return `H0 − a ${symbol}^β`;
  const { points } = curve;
  const beyond = points.findIndex((point) => point.flow >= flow);
  const end = Math.max(1, beyond === -1 ? points.length - 1 : beyond) + 1;
  const start = end - 1;
  return `H${start} + (H${end} − H${start}) (${symbol} − Q${start})/(Q${end} − Q${start})`;
}

/** What the month is reckoned from: the heads of the two runs, and the flows where the pump cannot meet the demand. */
export function pumpedOutcome({ demand, cleanMonth, fouledMonth }: Drive): Outcome {
  return {
    delivered: fouledMonth.delivered < demand ? "Qpf" : "Q",
    cleanDelivered: cleanMonth.delivered < demand ? "Qp" : "Q",
    extraHead: "Hpf − Hp",
  };
}
