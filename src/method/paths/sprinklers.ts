import { at, sumOf } from "../../lists.js";
import { pipeArea } from "../../model/hydraulics/friction.js";
import type { Layer } from "../../model/mussels/layer.js";
import { type Laterals, meanFlows } from "../../model/structures/deliveries/distribution.js";
import type { PumpingPlant } from "../../model/structures/deliveries/pumping-plant.js";
import { pluggedNozzles } from "../../model/structures/deliveries/sprinklers.js";
import type { StructureResult } from "../../model/structures/structure.js";
import type { Setting } from "../worked/setting.js";
import { giveDrying } from "./drying.js";
import { givers } from "./givers.js";
import { firstGreatYear, lineStep, sumStep, wholeYear, type YearLine, yearWords } from "./line.js";
import { boreStep, conditionsTable, layersTable, partCourse } from "./part-course.js";
import { newPath, type Path, type PathSheet } from "./path.js";

const part = "laterals";
const what = `${part}: clearing plugged sprinklers`;

/** Laterals that nobody cleans: the nozzles that their shells plug. */
export function sprinklerPath(result: StructureResult, setting: Setting): Path | undefined {
  const { structure } = result;
  const course = partCourse(result, part, setting);
  const line = firstGreatYear(result, what);
  if (structure.kind !== "pumping-plant" || !structure.laterals || !course || !line) return undefined;
  if (structure.sprinklerCount !== undefined || course.cleaned.length > 0) return undefined;
  const { laterals, delivered } = structure;
  const sheet = newPath(`path-${structure.id}`);
  givePlant(sheet, structure, laterals, setting);
  giveDrying(sheet, setting);
  const shown = wholeYear(line);
  const plugged = pluggedIn(structure, setting);
  conditionsTable(
    sheet,
    course,
    meanFlows(delivered).map((flow) => flow / laterals.count),
  );
  layersTable(sheet, course, shown, [
    { head: "Length L, mm", cell: ({ lengthMm }) => lengthMm },
    { head: "Plugged p", cell: plugged },
  ]);
  const sum = sumOf(delivered.map((_, month) => plugged(course.layerIn(shown.from + month), month)));
  nozzleSteps(sheet, { plant: structure, laterals, sum, line }, setting);
  return {
    title: `${structure.name}, ${part}`,
    intro: `From the water delivered to the line “${what}” in ${yearWords(line)}. In months without water the laterals are ${structure.drainedWhenIdle ? "empty, and what is in them dries" : "full of water that stands"}; nobody cleans.`,
    ...sheet,
  };
}

/** Share of nozzles plugged in a month, none where no water runs. */
function pluggedIn({ delivered, nozzleBore }: PumpingPlant, { assumed }: Setting) {
  const nozzle = {
    share: assumed("irrigation.plugged-share"),
    closedCover: assumed("hydraulics.closed-cover"),
    bore: nozzleBore ?? assumed("irrigation.nozzle-bore"),
  };
  return (layer: Layer, month: number) => (at(delivered, month) > 0 ? pluggedNozzles(layer, nozzle) : 0);
}

function nozzleSteps(
  sheet: PathSheet,
  { plant, laterals, sum, line }: { plant: PumpingPlant; laterals: Laterals; sum: number; line: YearLine },
  { assumed, context }: Setting,
): void {
  sheet.group("The laterals");
  boreStep(sheet, pipeArea(laterals.diameter));
  sheet.group("At the nozzles");
  const count = plant.area / assumed("irrigation.area-per-sprinkler");
  sheet.step({ name: "Sprinklers", symbol: "N_S", is: "A/a", value: count, unit: "" });
  sumStep(sheet, "p = p1 min(1, c/c1) min(1, L/bN) over the months below", sum);
  sheet.step({ name: "Hours", symbol: "q", is: "NS S h", value: line.line.quantity, unit: "h" });
  lineStep(sheet, line, context.run.document.money.currency);
}

function givePlant(sheet: PathSheet, plant: PumpingPlant, laterals: Laterals, setting: Setting): void {
  const { entered, elevation, assumed, money } = givers(sheet, setting);
  elevation("z_e", "elevation of the plant", plant.elevation);
  entered("n_L", "laterals", laterals.count);
  entered("D", "bore of a lateral", laterals.diameter, "m");
  entered("A", "land irrigated", plant.area, "m²");
  assumed("a", "land that one sprinkler waters", "irrigation.area-per-sprinkler", "m²");
  if (plant.nozzleBore === undefined) assumed("b_N", "bore of a nozzle", "irrigation.nozzle-bore", "m");
  else entered("b_N", "bore of a nozzle", plant.nozzleBore, "m");
  assumed("p_1", "share of nozzles plugged in a month, closed layer", "irrigation.plugged-share");
  assumed("c_1", "cover of a closed layer", "hydraulics.closed-cover");
  assumed("h", "time to clear one", "irrigation.nozzle-time", "h");
  assumed("u", "an hour's work", "labour.maintenance-rate", money("h"));
}
