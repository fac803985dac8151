import { columnReader, QuantityError } from "../../units/quantity.js";

/** What columns of exports measure. */
type MeasuredDimension = "elevation" | "energy";

const longestName = 120;

/** The unit in a column's name: ft of "Elevation (feet above datum)", m of "Wasserstand [m]" or "level_m". */
export function headUnit(name: string, dimension: MeasuredDimension): string | undefined {
  if (name.length > longestName) return undefined;
  const bracketed = /[([]([^()[\]]*)[)\]]/.exec(name)?.[1];
  const candidates = [
    ...(bracketed === undefined ? [] : [bracketed, bracketed.trim().split(/\s+/)[0] ?? ""]),
    /,\s*(\S+)/.exec(name)?.[1] ?? "",
    /[_\s]([a-z]+)$/i.exec(name)?.[1] ?? "",
  ];
  return candidates.map((each) => each.trim()).find((each) => each !== "" && isUnitOf(each, dimension));
}

export function isUnitOf(unit: string, dimension: MeasuredDimension): boolean {
  try {
    columnReader(unit, dimension);
    return true;
  } catch (error) {
    if (!(error instanceof QuantityError)) throw error;
    return false;
  }
}
