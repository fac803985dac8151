import type { AssumptionId } from "../../model/register/register.js";
import { giveAssumption, type Setting } from "../worked/setting.js";
import { levelText, type PathSheet } from "./path.js";

/** Ways to give a path what it starts from. */
export interface Givers {
  /** As the study has it. */
  readonly entered: (symbol: string, meaning: string, value: number, unit?: string) => void;
  readonly elevation: (symbol: string, meaning: string, value: number, origin?: string) => void;
  readonly assumed: (symbol: string, meaning: string, id: AssumptionId, unit?: string) => void;
  /** A currency, by a unit. */
  readonly money: (by: string) => string;
}

export function givers(sheet: PathSheet, setting: Setting): Givers {
  const { currency } = setting.context.run.document.money;
  return {
    entered: (symbol, meaning, value, unit = "") =>
      sheet.give({ symbol, meaning, entered: "entered", value, unit }),
    elevation: (symbol, meaning, value, origin = "entered") =>
      sheet.give({ symbol, meaning, entered: `${origin}: ${levelText(value)} m`, value, unit: "m" }),
    assumed: (symbol, meaning, id, unit = "") =>
      giveAssumption(sheet, symbol, meaning, id, { ...setting, unit }),
    money: (by) => `${currency}/${by}`,
  };
}
