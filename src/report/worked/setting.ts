import { assumedFrom } from "../../assumptions/override.js";
import type { Assumed } from "../../model/assumed.js";
import { type RoughnessParameters, roughnessParameters } from "../../model/hydraulics/fouled-pipe.js";
import { gravity, waterDensity } from "../../model/hydraulics/friction.js";
import type { Pipe, Rack } from "../../model/inputs.js";
import type { Layer } from "../../model/mussels/layer.js";
import type { StructureResult } from "../../model/structures/structure.js";
import type { Quantity } from "../../units/quantity.js";
import type { ReportContext } from "../context.js";
import type { Sheet } from "./sheet.js";

/** What the examples of one report share. */
export interface Setting {
  readonly context: ReportContext;
  readonly assumed: Assumed;
  readonly roughness: RoughnessParameters;
  readonly viscosity: number;
}

export function settingOf(context: ReportContext): Setting {
  const { assumptions, overrides, document } = context.run;
  const assumed = assumedFrom(assumptions, overrides, document.money.exchangeRate);
  return {
    context,
    assumed,
    roughness: roughnessParameters(assumed),
    viscosity: assumed("hydraulics.viscosity"),
  };
}

/** The thickest layer of a part in a mature infestation if nobody cleans it. */
export function untouchedLayer({ components }: StructureResult, part: string): Layer | undefined {
  const layer = components.find(({ name }) => name === part)?.untouchedLayer;
  return layer && layer.thickness > 0 ? layer : undefined;
}

export function giveQuantity(
  sheet: Sheet,
  symbol: string,
  meaning: string,
  { text, value }: Quantity,
  unit: string,
): void {
  sheet.give({ symbol, meaning, entered: text, value, unit });
}

export function giveAssumption(
  sheet: Sheet,
  symbol: string,
  meaning: string,
  id: string,
  { context, assumed, unit = "" }: Pick<Setting, "context" | "assumed"> & { unit?: string },
): void {
  sheet.give({ symbol, meaning, entered: context.assumptionNumber(id), value: assumed(id), unit });
}

/** What every pipe example starts from: the pipe as entered, the water, the layer of the results. */
export function givePipe(
  sheet: Sheet,
  entered: Readonly<Record<"length" | "diameter" | "roughness", Quantity>>,
  pipe: Pipe,
  layer: Layer,
  setting: Setting,
): void {
  giveQuantity(sheet, "L", "length", entered.length, "m");
  giveQuantity(sheet, "D", "bore", entered.diameter, "m");
  giveQuantity(sheet, "e", "sand roughness, clean", entered.roughness, "m");
  sheet.give({
    symbol: "ΣK",
    meaning: "local losses",
    entered: String(pipe.minorLoss),
    value: pipe.minorLoss,
    unit: "",
  });
  giveAssumption(sheet, "ν", "viscosity of water", "hydraulics.viscosity", { ...setting, unit: "m²/s" });
  sheet.give({ symbol: "g", meaning: "gravity", entered: "constant", value: gravity, unit: "m/s²" });
  sheet.give({
    symbol: "ρ",
    meaning: "density of water",
    entered: "constant",
    value: waterDensity,
    unit: "kg/m³",
  });
  giveLayer(sheet, layer, setting);
}

const metresPerMm = 1e-3;

function giveLayer(sheet: Sheet, layer: Layer, setting: Setting): void {
  const result = (symbol: string, meaning: string, value: number, unit: string) =>
    sheet.give({ symbol, meaning, entered: "result", value, unit });
  result("N", "mussels on the wall", layer.number, "1/m²");
  result("λ", "their shell length", layer.lengthMm * metresPerMm, "m");
  result("t", "thickness of the layer", layer.thickness, "m");
  const ratio = (symbol: string, meaning: string, id: string) =>
    giveAssumption(sheet, symbol, meaning, `hydraulics.${id}`, setting);
  ratio("κ_1", "roughness over shell length, closed layer", "closed-roughness-ratio");
  ratio("κ_2", "its largest value", "largest-roughness-ratio");
  ratio("c_1", "cover of a closed layer", "closed-cover");
  ratio("c_0", "cover of single shells", "open-cover");
}

/** The rack as entered and the layer on it. @returns thickness of that layer and the bar's shape factor */
export function giveRack(
  sheet: Sheet,
  entered: Readonly<Record<"width" | "height" | "barThickness" | "clearSpacing" | "angle", Quantity>>,
  rack: Rack,
  thickness: number,
  setting: Setting,
): { thickness: number; barFactor: number } {
  giveQuantity(sheet, "B", "width of the rack", entered.width, "m");
  giveQuantity(sheet, "Y", "its height", entered.height, "m");
  giveQuantity(sheet, "s", "bar thickness", entered.barThickness, "m");
  giveQuantity(sheet, "b", "clear spacing", entered.clearSpacing, "m");
  giveQuantity(sheet, "α", "angle of the rack", entered.angle, "°");
  const id = `hydraulics.bar-shape.${rack.barShape}`;
  giveAssumption(sheet, "k_F", "factor of the bar's shape", id, setting);
  sheet.give({ symbol: "t_r", meaning: "layer on the rack", entered: "result", value: thickness, unit: "m" });
  return { thickness, barFactor: setting.assumed(id) };
}
