import type { AssumptionId } from "../../model/register/register.js";
import { giveAssumption, type Setting } from "../worked/setting.js";
import type { PathSheet } from "./path.js";

const ofAll: ReadonlyArray<readonly [symbol: string, meaning: string, id: AssumptionId, unit: string]> = [
  ["h_0", "half-life in the reference air", "drying.reference-hours", "h"],
  ["L_r", "reference length", "drying.reference-length", "mm"],
  ["T_r", "reference temperature", "drying.reference-temperature", "°C"],
  ["H_r", "reference humidity", "drying.reference-humidity", ""],
  ["κ", "steepness", "drying.steepness", ""],
  ["x_L", "exponent of length", "drying.length-exponent", ""],
  ["L_min", "length below which it no longer counts", "drying.smallest-length", "mm"],
  ["β", "loss without a deficit", "drying.base-deficit", "kPa"],
  ["Q", "its rise by 10 °C", "drying.base-deficit-q10", ""],
  ["h_1", "hours of frost that kill at 0 °C", "drying.frost-hours.minus-0", "h"],
  ["h_2", "at −1.5 °C", "drying.frost-hours.minus-1.5", "h"],
  ["h_3", "at −3 °C", "drying.frost-hours.minus-3", "h"],
  ["h_4", "at −10 °C", "drying.frost-hours.minus-10", "h"],
  ["u_F", "factor of clusters", "drying.cluster-factor", ""],
  ["σ_F", "alive at the hours that kill", "drying.frost-survival", ""],
];

/** What a path needs beside its lake's values where a surface dries. */
export function giveDrying(sheet: PathSheet, setting: Setting): void {
  for (const [symbol, meaning, id, unit] of ofAll)
    giveAssumption(sheet, symbol, meaning, id, { ...setting, unit });
  if (setting.lake.lake.species === "zebra") {
    sheet.give({ symbol: "q_s", meaning: "factor of the species", entered: "zebra", value: 1, unit: "" });
  } else {
    giveAssumption(sheet, "q_s", "factor of the species", "drying.quagga-factor", setting);
  }
}
