import { pipeArea } from "../../model/hydraulics/friction.js";
import { months } from "../../model/lake/calendar.js";
import type { ServiceLine } from "../../model/structures/kinds/service-line.js";
import type { StructureResult } from "../../model/structures/structure.js";
import type { Setting } from "../worked/setting.js";
import { givers } from "./givers.js";
import { lastCleaned, lineIn, lineStep, type Shown, type YearLine, yearWords } from "./line.js";
import { boreStep, conditionsTable, layersTable, type PartCourse, partCourse } from "./part-course.js";
import { newPath, type Path, type PathSheet } from "./path.js";

const part = "service line";
const what = `${part}: disposal of shells and mussels`;

/** Service lines that die off while another is used: the shells that are carted away. */
export function serviceLinePath(result: StructureResult, setting: Setting): Path | undefined {
  const { structure } = result;
  if (structure.kind !== "service-line") return undefined;
  const course = partCourse(result, part, setting);
  const shown = course && lastCleaned(course.cleaned);
  const line = shown && lineIn(result, what, shown.year);
  if (!course || !shown || !line || course.plan.entry.measure !== "second-line") return undefined;
  const sheet = newPath(`path-${structure.id}`);
  giveLine(sheet, structure, setting);
  conditionsTable(
    sheet,
    course,
    months.map(() => structure.requiredFlow),
  );
  layersTable(sheet, course, shown);
  shellSteps(sheet, structure, { course, shown, line }, setting);
  return {
    title: `${structure.name}, ${part}`,
    intro: `From the required flow to the line “${what}” in ${yearWords(line)}, under the plan “${course.plan.label}”.`,
    ...sheet,
  };
}

function giveLine(sheet: PathSheet, line: ServiceLine, setting: Setting): void {
  const { entered, elevation, assumed, money } = givers(sheet, setting);
  elevation("z_e", "elevation of the inlet", line.elevation);
  entered("ℓ", "length of a line", line.length, "m");
  entered("D", "bore", line.diameter, "m");
  entered("n_L", "lines", line.count);
  assumed("σ", "shell over live wet mass", "shell.shell-share");
  assumed("c_D", "price of the dump", "disposal.tipping-fee", money("kg"));
  assumed("p_D", "price of the haul", "disposal.haulage", money("kg"));
}

function shellSteps(
  sheet: PathSheet,
  { diameter }: ServiceLine,
  { course, shown, line }: { course: PartCourse; shown: Shown; line: YearLine },
  setting: Setting,
): void {
  const { currency } = setting.context.run.document.money;
  sheet.group("The walls");
  boreStep(sheet, pipeArea(diameter));
  const step = (name: string, symbol: string, is: string, value: number, unit: string) =>
    sheet.step({ name, symbol, is, value, unit });
  step("Walls of all lines", "A", "π D ℓ nL", course.component.wettedArea, "m²");
  sheet.group("What is carted away");
  const mass = course.cleaned
    .filter((month) => month >= shown.from)
    .reduce((sum, month) => sum + course.layerIn(month).mass, 0);
  const name = "Sum of the masses in the months below in which a line is cleaned bare";
  sheet.step({ name, symbol: "M", value: mass, unit: "kg/m²" });
  step("Shells", "q", "M A σ", line.line.quantity, "kg");
  step("Rate", "u", "cD + pD", line.line.unitRate, `${currency}/kg`);
  lineStep(sheet, line, currency);
}
