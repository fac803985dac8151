import { at } from "../../lists.js";
import { exposedBand } from "../../model/lake/levels.js";
import type { Ramp } from "../../model/structures/kinds/ramp.js";
import type { StructureResult } from "../../model/structures/structure.js";
import type { Setting } from "../worked/setting.js";
import { giveDrying } from "./drying.js";
import { givers } from "./givers.js";
import { firstGreatYear, lineStep, type YearLine, yearWords } from "./line.js";
import { newPath, type Path, type PathSheet } from "./path.js";

const what = "sweeping";

/** A ramp that is swept: from what each drawdown kills on it. */
export function rampPath(result: StructureResult, setting: Setting): Path | undefined {
  const { structure } = result;
  const line = firstGreatYear(result, what);
  if (structure.kind !== "ramp" || !line || setting.lake.lake.record) return undefined;
  const { currency } = setting.context.run.document.money;
  const sheet = newPath(`path-${structure.id}`);
  giveRamp(sheet, structure, setting);
  giveDrying(sheet, setting);
  const ground = structure.width * Math.sqrt(1 + structure.slope ** -2);
  const last = yearsTable(sheet, { structure, line, ground }, setting);
  sheet.group("Sweeping");
  const name = "Ground for each metre of height";
  sheet.step({ name, symbol: "G", is: "bR √(1 + 1/mR²)", value: ground, unit: "m" });
  sheet.step({ name: "Height of the last year below", symbol: "H", value: last.height, unit: "m" });
  sheet.step({ name: "Sweeps of that year", symbol: "s", value: last.sweeps, unit: "" });
  sheet.step({ name: "Ground swept", symbol: "q", is: "s H G", value: line.line.quantity, unit: "m²" });
  lineStep(sheet, line, currency);
  return {
    title: structure.name,
    intro: `From the levels of the lake to the line “${what}” in ${yearWords(line)}. The band between the lowest and the highest level is cut into cells as the relation “Mussels killed on drained ground” says.`,
    ...sheet,
  };
}

interface RampYear {
  readonly structure: Ramp;
  readonly line: YearLine;
  readonly ground: number;
}

/** Each year up to that of the line; what lies there after it is carried over. */
function yearsTable(sheet: PathSheet, { structure, line, ground }: RampYear, { lake, assumed }: Setting) {
  const { killed, height } = lake.killedBetween({
    from: structure.bottomElevation,
    to: structure.topElevation,
  });
  const kept = assumed("shell.shell-share") * assumed("ramp.gathering");
  const tolerated = assumed("ramp.litter-tolerance");
  const shellDensity = assumed("ramp.shell-density");
  let left = 0;
  let last = { height: 0, sweeps: 0 };
  const rows = Array.from({ length: line.year + 1 }, (_, year) => {
    const area = at(height, year) * ground;
    const mass = at(killed, year) * ground * kept;
    const thickness = area > 0 ? mass / area / shellDensity : 0;
    const sweeps = Math.floor((left + thickness) / tolerated);
    left += thickness - sweeps * tolerated;
    last = { height: at(height, year), sweeps };
    return [year + 1, at(killed, year), at(height, year), mass, thickness, sweeps, left];
  });
  sheet.table(
    "What the drawdown of each year leaves on the ramp",
    [
      "Year",
      "Killed K, kg/m",
      "Height H, m",
      "Shells M = K G σ g, kg",
      "Thickness t = M/(H G ρ), m",
      "Sweeps s",
      "Left after them, m",
    ],
    rows,
  );
  return last;
}

function giveRamp(sheet: PathSheet, ramp: Ramp, setting: Setting): void {
  const { lowest, highest } = exposedBand(setting.lake.daily);
  const { entered, elevation, assumed, money } = givers(sheet, setting);
  entered("b_R", "width of the ramp", ramp.width, "m");
  entered("m_R", "slope, rise over run", ramp.slope);
  elevation("z_b", "elevation of its bottom", ramp.bottomElevation);
  elevation("z_t", "elevation of its top", ramp.topElevation);
  elevation("z_l", "lowest level of the year", lowest, "result");
  elevation("z_h", "highest level of the year", highest, "result");
  assumed("σ", "shell over live wet mass", "shell.shell-share");
  assumed("g", "ground from which shells wash onto the ramp, over its own", "ramp.gathering");
  assumed("ρ", "density of shells that lie", "ramp.shell-density", "kg/m³");
  assumed("t_0", "thickness at which it is swept", "ramp.litter-tolerance", "m");
  assumed("u", "price of sweeping", "ramp.sweeping-rate", money("m²"));
}
