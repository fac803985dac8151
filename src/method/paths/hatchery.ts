import { sumOf } from "../../lists.js";
import { pipeArea } from "../../model/hydraulics/friction.js";
import type { Layer } from "../../model/mussels/layer.js";
import { type Hatchery, lineName } from "../../model/structures/deliveries/hatchery.js";
import type { StructureResult } from "../../model/structures/structure.js";
import type { Setting } from "../worked/setting.js";
import { givers } from "./givers.js";
import { firstGreatYear, lineStep, sumStep, wholeYear, yearWords } from "./line.js";
import { boreStep, conditionsTable, layersTable, partCourse } from "./part-course.js";
import { newPath, type Path, type PathSheet } from "./path.js";

const what = `${lineName}: more cleaning of the filters`;

/** A hatchery's line that nobody cleans: what breaks off in it, at the filters. */
export function hatcheryPath(result: StructureResult, setting: Setting): Path | undefined {
  const { structure } = result;
  const course = partCourse(result, lineName, setting);
  const line = firstGreatYear(result, what);
  if (structure.kind !== "hatchery" || !course || !line || course.cleaned.length > 0) return undefined;
  const sheet = newPath(`path-${structure.id}`);
  giveHatchery(sheet, structure, setting);
  const closed = ({ cover }: Layer) => Math.min(1, cover / setting.assumed("hydraulics.closed-cover"));
  const shown = wholeYear(line);
  conditionsTable(sheet, course, structure.requiredFlow);
  layersTable(sheet, course, shown, [{ head: "min(1, c/c1)", cell: closed }]);
  sheet.group("The line");
  boreStep(sheet, pipeArea(structure.line.diameter));
  sheet.group("At the filters");
  const shares = structure.requiredFlow.map((flow, month) =>
    flow > 0 ? closed(course.layerIn(shown.from + month)) : 0,
  );
  sumStep(sheet, "min(1, c/c1) over the months below that need water", sumOf(shares));
  sheet.step({ name: "Hours", symbol: "q", is: "nF nC h S", value: line.line.quantity, unit: "h" });
  lineStep(sheet, line, setting.context.run.document.money.currency);
  return {
    title: `${structure.name}, ${lineName}`,
    intro: `From the required flow to the line “${what}” in ${yearWords(line)}; nobody cleans, so that the layer grows from the first month on.`,
    ...sheet,
  };
}

function giveHatchery(sheet: PathSheet, hatchery: Hatchery, setting: Setting): void {
  const { entered, elevation, assumed, money } = givers(sheet, setting);
  elevation("z_e", "elevation of the mouth", hatchery.elevation);
  entered("D", "bore of the line", hatchery.line.diameter, "m");
  entered("n_F", "filters", hatchery.filters);
  assumed("n_C", "more cleanings a month of each at a closed layer", "hatchery.filter-cleanings");
  assumed("h", "time for one", "hatchery.filter-time", "h");
  assumed("c_1", "cover of a closed layer", "hydraulics.closed-cover");
  assumed("u", "an hour's work", "labour.maintenance-rate", money("h"));
}
