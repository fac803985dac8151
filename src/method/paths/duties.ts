import type { StructureResult } from "../../model/structures/structure.js";
import type { Setting } from "../worked/setting.js";
import { lineIn, lineStep, yearWords } from "./line.js";
import { newPath, type Path } from "./path.js";

/** A duty of the whole lake. */
export function dutyPath(result: StructureResult, setting: Setting): Path | undefined {
  const { structure } = result;
  if (structure.kind !== "lake-wide") return undefined;
  const [item] = structure.items;
  const line = item && lineIn(result, item.name, item.fromYear - 1);
  if (!item || !line) return undefined;
  const { currency } = setting.context.run.document.money;
  const sheet = newPath(`path-${structure.id}`);
  sheet.give({
    symbol: "u",
    meaning: item.name,
    entered: "entered",
    value: item.cost,
    unit: `${currency}/yr`,
  });
  sheet.group("The duty");
  sheet.step({ name: "Years", symbol: "q", value: line.line.quantity, unit: "yr" });
  lineStep(sheet, line, currency);
  return {
    title: structure.name,
    intro: `To the line “${item.name}” in ${yearWords(line)}, the first in which the duty is there.`,
    ...sheet,
  };
}
