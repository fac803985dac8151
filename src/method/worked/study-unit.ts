import { typeset } from "../../report/words/typeset.js";
import { conversionBetween } from "../../units/unit-conversion.js";
import { printed } from "./number.js";

/** US units for those of the sheets, as the converter has them and as they are printed. */
const usUnits: ReadonlyMap<string, readonly [from: string, to: string, label: string]> = new Map([
  ["m", ["m", "ft", "ft"]],
  ["mm", ["mm", "in", "in"]],
  ["m/s", ["m/s", "ft/s", "ft/s"]],
  ["m³/s", ["m3/s", "ft3/s", "cfs"]],
  ["m²/s", ["m2/s", "ft2/s", "ft²/s"]],
  ["m³", ["m3", "acre*ft", "acre-ft"]],
  ["kg/m³", ["kg/m3", "lb/ft3", "lb/ft³"]],
  ["kg/m²", ["kg/m2", "lb/ft2", "lb/ft²"]],
  ["1/m²", ["1/m2", "1/ft2", "per ft²"]],
  ["kg", ["kg", "lb", "lb"]],
  ["°C", ["degC", "degF", "°F"]],
]);

/** HTML of a value of a sheet in the units of a study that are not SI; empty where they are, or where the unit is the same. */
export function inUnitsOf(system: "us" | "si", value: number, unit: string): string {
  const [from, to, label] = (system === "us" ? usUnits.get(unit) : undefined) ?? [];
  const convert = from === undefined || to === undefined ? undefined : conversionBetween(from, to);
  return convert ? `${typeset(printed(convert(value)), [])} ${label}` : "";
}
