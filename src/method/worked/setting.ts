import { assumedFrom } from "../../assumptions/override.js";
import { at } from "../../lists.js";
import type { Assumed } from "../../model/assumed.js";
import { gravity, waterDensity } from "../../model/hydraulics/friction.js";
import { monthlyMeans } from "../../model/lake/levels.js";
import type { Layer } from "../../model/mussels/layer.js";
import type { AssumptionId } from "../../model/register/register.js";
import type { LakeContext } from "../../model/structures/context.js";
import type { Pipe } from "../../model/structures/inputs.js";
import type { StructureResult } from "../../model/structures/structure.js";
import type { ReportContext } from "../../report/document/context.js";
import type { Quantity } from "../../units/quantity.js";
import type { Sheet } from "./sheet.js";

/** What the examples of one report share. */
export interface Setting {
  readonly context: ReportContext;
  readonly assumed: Assumed;
  /** The lake under its own levels; of a record its first year, as in the tables of hydraulics. */
  readonly lake: LakeContext;
  readonly state: FouledState;
}

/** How the fouled parts are named: as they are if nobody cleans, or under the plan that costs follow. */
export type FouledState = "left to foul" | "under its plan";

export function settingOf(context: ReportContext, { under }: Pick<Asked, "under">): Setting {
  const { assumptions, overrides, prices } = context.run;
  const assumed = assumedFrom(assumptions, overrides, prices.factorOf);
  const state = under === "plan" ? "under its plan" : "left to foul";
  return { context, assumed, lake: context.comparison.schedules[0].contexts[0], state };
}

/** What is asked to be worked; the layer is that of the plan which costs follow, or of a surface that nobody cleans. */
export interface Asked {
  readonly structure?: string | undefined;
  /** Of the year, from 0; that of the largest flow or of the thickest layer if left out. */
  readonly month?: number | undefined;
  readonly under: "plan" | "nothing";
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
  id: AssumptionId,
  { context, assumed, unit = "" }: Pick<Setting, "context" | "assumed"> & { unit?: string },
): void {
  sheet.give({ symbol, meaning, entered: context.assumptionNumber(id), value: assumed(id), unit });
}

/** The mean level of the lake in the month. */
export function giveLevel(sheet: Sheet, month: number, { lake }: Setting): void {
  sheet.give({
    symbol: "z",
    meaning: `mean level of the lake in the month${lake.levelLabel && `,${lake.levelLabel}`}`,
    entered: "result",
    value: at(monthlyMeans(lake.daily), month),
    unit: "m",
  });
}

type EnteredPipe = Readonly<Record<"length" | "diameter", Quantity>> & {
  readonly roughness?: Quantity | undefined;
};

/** What every pipe example starts from: the pipe as entered, the water, the layer of the results. */
export function givePipe(
  sheet: Sheet,
  entered: EnteredPipe,
  pipe: Pipe,
  layer: Layer,
  setting: Setting,
): void {
  giveQuantity(sheet, "L", "length", entered.length, "m");
  giveQuantity(sheet, "D", "bore", entered.diameter, "m");
  if (entered.roughness) giveQuantity(sheet, "e", "sand roughness, clean", entered.roughness, "m");
  const pure = (symbol: string, meaning: string, value: number) =>
    sheet.give({ symbol, meaning, entered: String(value), value, unit: "" });
  if (pipe.hazenWilliamsC !== undefined) pure("C", "Hazen–Williams C, clean", pipe.hazenWilliamsC);
  pure("ΣK", "local losses", pipe.minorLoss);
  giveAssumption(sheet, "ν", "viscosity of water", "hydraulics.viscosity", { ...setting, unit: "m²/s" });
  sheet.give({ symbol: "g", meaning: "gravity", entered: "constant", value: gravity, unit: "m/s²" });
  sheet.give({
    symbol: "ρ",
    meaning: "density of water",
    entered: "constant",
    value: waterDensity,
    unit: "kg/m³",
  });
  if (layer.thickness > 0) giveLayer(sheet, layer, setting);
}

const metresPerMm = 1e-3;

function giveLayer(sheet: Sheet, layer: Layer, setting: Setting): void {
  const result = (symbol: string, meaning: string, value: number, unit: string) =>
    sheet.give({ symbol, meaning, entered: "result", value, unit });
  result("N", "mussels on the wall", layer.number, "1/m²");
  result("λ", "their shell length", layer.lengthMm * metresPerMm, "m");
  result("t", "thickness of the layer", layer.thickness, "m");
  const ratio = (symbol: string, meaning: string, id: AssumptionId) =>
    giveAssumption(sheet, symbol, meaning, id, setting);
  ratio("κ_1", "roughness over shell length, closed layer", "hydraulics.closed-roughness-ratio");
  ratio("κ_2", "its largest value", "hydraulics.largest-roughness-ratio");
  ratio("c_1", "cover of a closed layer", "hydraulics.closed-cover");
  ratio("c_0", "cover of single shells", "hydraulics.open-cover");
}
