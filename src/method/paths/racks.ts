import { barSurfaceRatio, blockedShare, rackFace } from "../../model/hydraulics/rack.js";
import type { Rack } from "../../model/structures/inputs.js";
import { plantRunning } from "../../model/structures/plant/running.js";
import type { StructureResult } from "../../model/structures/structure.js";
import type { Setting } from "../worked/setting.js";
import { givers } from "./givers.js";
import { lastCleaned, lineIn, lineStep, yearWords } from "./line.js";
import { conditionsTable, layersTable, partCourse } from "./part-course.js";
import { newPath, type Path, type PathSheet } from "./path.js";

const part = "trash rack";
const what = `${part}: taking mussels off the rack`;

/** An intake's or a plant's rack that divers clean: what they take off it, by its mass. */
export function rackPath(result: StructureResult, setting: Setting): Path | undefined {
  const { structure } = result;
  if ((structure.kind !== "intake" && structure.kind !== "hydropower") || !structure.rack) return undefined;
  const course = partCourse(result, part, setting);
  const shown = course && lastCleaned(course.cleaned);
  const line = shown && lineIn(result, what, shown.year);
  if (!course || !shown || !line) return undefined;
  const flow = structure.kind === "intake" ? structure.demand : plantRunning(structure).flow;
  const sheet = newPath(`path-${structure.id}`);
  giveRack(sheet, structure.rack, structure.elevation, setting);
  const count = structure.kind === "hydropower" ? structure.units : 1;
  givers(sheet, setting).entered("n_U", "racks alike", count);
  conditionsTable(sheet, course, flow);
  layersTable(sheet, course, shown);
  steelSteps(sheet, structure.rack);
  sheet.group("What is taken off");
  const mass = course.layerIn(shown.to - 1).mass;
  const name = "Mass of the last month of the table below";
  sheet.step({ name, symbol: "M", value: mass, unit: "kg/m²" });
  sheet.step({ name: "Taken off", symbol: "q", is: "M A nU", value: line.line.quantity, unit: "kg" });
  lineStep(sheet, line, setting.context.run.document.money.currency);
  return {
    title: `${structure.name}, ${part}`,
    intro: `From the flow to the line “${what}” in ${yearWords(line)}, under the plan “${course.plan.label}”.`,
    ...sheet,
  };
}

function giveRack(sheet: PathSheet, rack: Rack, inlet: number, setting: Setting): void {
  const { entered, elevation, assumed, money } = givers(sheet, setting);
  elevation("z_e", "elevation of the inlet", inlet);
  entered("w_R", "width of the rack", rack.width, "m");
  entered("h_R", "height of the rack", rack.height, "m");
  entered("s_b", "thickness of a bar", rack.barThickness, "m");
  entered("b_b", "clear spacing", rack.clearSpacing, "m");
  entered("d_b", "depth of a bar", rack.barDepth, "m");
  assumed("u", "price of taking mussels off", "cleaning.rack.removal", money("kg"));
}

function steelSteps(sheet: PathSheet, rack: Rack): void {
  const face = rackFace(rack);
  const area = (name: string, symbol: string, is: string, value: number) =>
    sheet.step({ name, symbol, is, value, unit: "m²" });
  sheet.group("The bars");
  area("Face of the rack", "F", "wR hR", face);
  const open = face * (1 - blockedShare(rack, 0));
  area("Open area of the clean rack, to which the velocity V = Q/B belongs", "B", "F bb/(sb + bb)", open);
  area("Steel that mussels cover", "A", "2 F (sb + db)/(sb + bb)", face * barSurfaceRatio(rack));
}
