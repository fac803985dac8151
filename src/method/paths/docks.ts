import { sumOf } from "../../lists.js";
import type { Dock } from "../../model/structures/kinds/dock.js";
import type { StructureResult } from "../../model/structures/structure.js";
import type { Setting } from "../worked/setting.js";
import { givers } from "./givers.js";
import { firstGreatYear, lineStep, sumStep, wholeYear, yearWords } from "./line.js";
import { conditionsTable, layersTable, partCourse } from "./part-course.js";
import { newPath, type Path, type PathSheet } from "./path.js";

const part = "wetted surface";
const what = `${part}: early replacement`;

/** Floating docks that nobody cleans: how much sooner they are replaced. */
export function dockPath(result: StructureResult, setting: Setting): Path | undefined {
  const { structure } = result;
  const course = partCourse(result, part, setting);
  const line = firstGreatYear(result, what);
  if (structure.kind !== "dock" || !structure.floating || !course || !line) return undefined;
  if (course.cleaned.length > 0) return undefined;
  const { currency } = setting.context.run.document.money;
  const sheet = newPath(`path-${structure.id}`);
  giveDock(sheet, structure, setting);
  const heavy = (mass: number) => Math.min(1, mass / setting.assumed("dock.wear-mass"));
  const shown = wholeYear(line);
  conditionsTable(sheet, course);
  layersTable(sheet, course, shown, [{ head: "min(1, M/M₀)", cell: ({ mass }) => heavy(mass) }]);
  sheet.group("Early replacement");
  const shares = Array.from({ length: 12 }, (_, index) => heavy(course.layerIn(shown.from + index).mass));
  sumStep(sheet, "min(1, M/M₀) over the twelve months below", sumOf(shares));
  const unit = `${currency}/dock`;
  sheet.step({ name: "Rate of the year", symbol: "u", is: "wD R S/12", value: line.line.unitRate, unit });
  lineStep(sheet, line, currency);
  return {
    title: `${structure.name}, ${part}`,
    intro: `To the line “${what}” in ${yearWords(line)}; nobody cleans, so that the layer grows from the first month on.`,
    ...sheet,
  };
}

function giveDock(sheet: PathSheet, dock: Dock, setting: Setting): void {
  const { entered, assumed } = givers(sheet, setting);
  entered("y", "depth of the wetted surface", dock.depth ?? 0, "m");
  entered("q", "docks", dock.count);
  entered("R", "replacement cost of one", dock.replacementCost, setting.context.run.document.money.currency);
  assumed("w_D", "part of it in a year under a heavy layer", "dock.extra-wear", "1/yr");
  assumed("M_0", "mass from which it counts in full", "dock.wear-mass", "kg/m²");
}
