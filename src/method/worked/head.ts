import { at } from "../../lists.js";
import { waterwayLoss } from "../../model/hydraulics/waterway.js";
import { monthlyMeans } from "../../model/lake/levels.js";
import type { Drive, IntakeCase, Outcome } from "./intake-case.js";
import type { Setting } from "./setting.js";
import type { Sheet } from "./sheet.js";
import { waterwaySteps } from "./waterway.js";

/**
 * A supply known by the head that it can spend: the head, and what is left of it or the flow that it still drives.
 * @returns symbols for what follows
 */
export function headSteps(sheet: Sheet, example: IntakeCase, drive: Drive, setting: Setting): Outcome {
  const { demand, cleanMonth, fouledMonth } = drive;
  const fallsShort = fouledMonth.delivered < demand;
  const isCleanShort = cleanMonth.delivered < demand;
  const available = availableHead(example, setting);
  availableStep(sheet, example, { value: available, isLargest: demand === example.pipe.flow });
  if (fallsShort) deliveredSteps(sheet, drive);
  else {
    const value = available - waterwayLoss(drive.fouled, demand, drive.viscosity);
    const name = "Head left to spare: the demand is met";
    sheet.step({ name, symbol: "H_s", is: "Ha − hf", value, unit: "m" });
  }
  if (isCleanShort) {
    const name = "Flow of the clean conduit, found by trial: it falls short by itself";
    sheet.step({ name, symbol: "Q_c", value: cleanMonth.delivered, unit: "m³/s" });
  }
  return {
    delivered: fallsShort ? "Qd" : "Q",
    cleanDelivered: isCleanShort ? "Qc" : "Q",
    extraHead: fallsShort ? "Ha − h" : "hf − h",
  };
}

function availableHead({ intake, pipe, month }: IntakeCase, { lake }: Setting): number {
  const { supply } = intake;
  if (supply.by === "pump") return pipe.clean.headLoss + (supply.marginHead ?? 0);
  const { outletElevation } = supply;
  if (outletElevation === undefined) return supply.availableHead ?? 0;
  return Math.max(0, at(monthlyMeans(lake.daily), month) - outletElevation);
}

/** The head to spend, where the sheet does not have it as entered. */
function availableStep(
  sheet: Sheet,
  { intake: { supply }, pipe }: IntakeCase,
  { value, isLargest }: { readonly value: number; readonly isLargest: boolean },
): void {
  const step = (name: string, is: string) => sheet.step({ name, symbol: "H_a", is, value, unit: "m" });
  if (supply.by === "pump" && isLargest) step("Head to spend: clean loss and the pump's margin", "h + M");
  else if (supply.by === "pump") {
    const name = "Head lost by the clean conduit at the largest demand, by the same steps";
    sheet.step({ name, symbol: "h_m", value: pipe.clean.headLoss, unit: "m" });
    step("Head to spend: that loss and the pump's margin", "hm + M");
  } else if (supply.outletElevation === undefined) return;
  else if (value > 0) step("Head to spend: the lake's level above the outlet", "z − zo");
  else sheet.step({ name: "Head to spend: the lake is below the outlet", symbol: "H_a", value, unit: "m" });
}

/** The flow that the head still drives, tried in the pipe's own relations. */
function deliveredSteps(sheet: Sheet, { fouled, fouledMonth, viscosity }: Drive): void {
  const flow = fouledMonth.delivered;
  const name = flow > 0 ? "Flow that this head drives, found by trial" : "Flow that this head drives: none";
  sheet.step({ name, symbol: "Q_d", value: flow, unit: "m³/s" });
  if (flow > 0) waterwaySteps(sheet, fouled, { flow, viscosity, wall: "f", mark: "d", flowSymbol: "Qd" });
}
