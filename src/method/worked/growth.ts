import { at } from "../../lists.js";
import { daysOf } from "../../model/lake/calendar.js";
import { wettedShares } from "../../model/lake/levels.js";
import { waterTemperature } from "../../model/lake/temperature.js";
import {
  bySpecies,
  depthFactor,
  depthOf,
  freshnessFactor,
  settlementParameters,
  velocityFactor,
} from "../../model/mussels/surface.js";
import type { AssumptionId } from "../../model/register/register.js";
import { cohortsOfMonth, type MonthOfCohorts } from "./cohorts-of-month.js";
import type { PlannedLayer } from "./plan-layer.js";
import { giveAssumption, type Setting } from "./setting.js";
import { newSheet, type Sheet } from "./sheet.js";

/** A month's growth of one surface, from what stood there at the end of the month before. */
export function growthSheet(
  planned: PlannedLayer,
  setting: Setting,
): { readonly sheet: Sheet; readonly cohorts: MonthOfCohorts } {
  const sheet = newSheet(setting.context.run.document.study.units);
  const cohorts = cohortsOfMonth(planned);
  giveShells(sheet, setting);
  settlingSteps(sheet, planned, setting);
  if (cohorts.moved.length > 0) livingSteps(sheet, planned, cohorts);
  layerSteps(sheet, planned, cohorts);
  return { sheet, cohorts };
}

/** To ten figures, as a pocket calculator has it. */
const e = "2.718281828";

function giveShells(sheet: Sheet, setting: Setting): void {
  const taken = (symbol: string, meaning: string, id: AssumptionId, unit = "") =>
    giveAssumption(sheet, symbol, meaning, id, { ...setting, unit });
  taken("n", "settlers a month on a bare surface at capacity", "growth.settlers-per-month", "1/m²");
  taken("L_s", "length of a mussel as it settles", "shell.settlement-length", "mm");
  taken("L_M", "length of a full-grown shell", "shell.maximum-length", "mm");
  taken("k", "growth rate by warmth", "shell.growth-rate", "1/(°C d)");
  taken("a", "ln of the mass in g of a shell of 1 mm", "shell.mass-intercept");
  taken("b", "exponent of mass by length", "shell.mass-exponent");
  taken("c_M", "cover at which mussels are shed", "growth.cover-limit");
  taken("ρ_b", "mass of a layer by its volume", "growth.bulk-density", "kg/m³");
  taken("T_b", "water temperature from which shells grow", "shell.growth-base-temperature", "°C");
}

/** Water at the surface and what the place lets on, each told as the model has it. */
function conditionsOf({ part, month, density }: PlannedLayer) {
  const { context, component, surface } = part;
  const monthOfYear = month % 12;
  const parameters = settlementParameters(context.lake, context.assumed);
  const { place, velocity, running } = component.surface;
  const depth = depthOf(place, at(context.monthlyLevels, monthOfYear));
  return {
    ...{ monthOfYear, parameters, depth },
    top: at(context.lake.surfaceTemperature, monthOfYear),
    water: waterTemperature(context.lake, monthOfYear, depth),
    speed: Math.abs(at(velocity, monthOfYear)),
    runs: running?.[monthOfYear] ?? 1,
    wetted: place.at === "elevation" ? at(wettedShares(context.daily, place.elevation), monthOfYear) : 1,
    density: at(density, month),
    settling: at(surface.months, monthOfYear),
  };
}

function settlingSteps(sheet: Sheet, planned: PlannedLayer, setting: Setting): void {
  const { monthOfYear, parameters, depth, top, water, speed, runs, wetted, density, settling } =
    conditionsOf(planned);
  const own = bySpecies[planned.part.context.lake.species];
  const result = (symbol: string, meaning: string, value: number, unit = "") =>
    sheet.give({ symbol, meaning, entered: "result", value, unit });
  const taken = (symbol: string, meaning: string, id: AssumptionId, unit = "") =>
    giveAssumption(sheet, symbol, meaning, id, { ...setting, unit });
  result("D", "density over capacity, with suitability and what the plan lets on", density);
  result("T_0", "water temperature at the lake's surface in the month", top, "°C");
  result("T_w", "water temperature where the surface lies", water, "°C");
  taken("T_1", "water temperature from which mussels settle", own.spawningTemperature, "°C");
  taken("T_2", "water temperature above which none settle", "settlement.upper-temperature", "°C");
  result("y", "depth of the surface below the month's mean level", depth, "m");
  taken("y_1", "depth of full settlement", own.fullDepth, "m");
  taken("y_0", "depth that mussels do not pass", own.noDepth, "m");
  result("V", "water velocity along the surface", speed, "m/s");
  taken("V_1", "velocity up to which settlement is full", "settlement.full-velocity", "m/s");
  taken("V_0", "velocity above which none settle", "settlement.no-velocity", "m/s");
  result("r", "share of the month in which water runs", runs);
  taken("d_S", "days that standing water stays fresh", "settlement.standing-days", "d");
  result("φ_w", "share of the month under water", wetted);
  sheet.group("What settles in the month");
  const inSeason = top >= parameters.spawningTemperature && top <= parameters.upperTemperature;
  sheet.step({
    name: inSeason
      ? "Season: the surface is between T₁ and T₂"
      : "Season: the surface is not between T₁ and T₂",
    symbol: "φ_T",
    value: inSeason ? 1 : 0,
    unit: "",
  });
  factorStep(sheet, "Factor of depth", "φ_y", "(y0 − y)/(y0 − y1)", depthFactor(depth, parameters));
  factorStep(sheet, "Factor of velocity", "φ_V", "(V0 − V)/(V0 − V1)", velocityFactor(speed, parameters));
  factorStep(sheet, "Factor of fresh water", "φ_S", "r dS", freshnessFactor(runs, parameters.standingDays));
  sheet.step({
    name: "Share of the lake's settlers",
    symbol: "s",
    is: "φT φy φV φS φw",
    value: settling.settlement,
    unit: "",
  });
  const warmth = `${daysOf(monthOfYear)} (Tw − Tb) φS φw`;
  sheet.step({
    name: settling.degreeDays > 0 ? "Warmth of the month" : "Warmth of the month: none above the base",
    symbol: "d",
    ...(settling.degreeDays > 0 ? { is: warmth } : {}),
    value: settling.degreeDays,
    unit: "°C d",
  });
}

/** A share that is held to 0 and 1: taken at either end. */
function factorStep(sheet: Sheet, name: string, symbol: string, is: string, value: number): void {
  if (value > 0 && value < 1) sheet.step({ name, symbol, is, value, unit: "" });
  else sheet.step({ name: `${name}: ${value === 1 ? "full" : "none"}`, symbol, value, unit: "" });
}

/** What lives on, with the cohort that covers most worked by itself. */
function livingSteps(sheet: Sheet, { part }: PlannedLayer, { moved, largest }: MonthOfCohorts): void {
  const { yearlyMortality } = part.context.growth;
  const result = (symbol: string, meaning: string, value: number, unit = "") =>
    sheet.give({ symbol, meaning, entered: "result", value, unit });
  result("m", "deaths over the living in a year, in this water", yearlyMortality, "1/yr");
  result("N_0", `mussels of ${largest.ageMonths} months at the month's start`, largest.before, "1/m²");
  result("L_0", "their shell length then", largest.lengthBefore, "mm");
  if (largest.outlives < 1) result("q_d", "share of them that survives the exposed days", largest.outlives);
  sheet.group(`What lives on: the cohort of ${largest.ageMonths} months, which covers most`);
  const step = (name: string, symbol: string, is: string, value: number, unit = "") =>
    sheet.step({ name, symbol, is, value, unit });
  step("Share that lives on", "q", `${e}^(−m/12)`, Math.exp(-yearlyMortality / 12));
  const dried = largest.outlives < 1 ? "qd " : "";
  step("Its mussels at the month's end", "N_c", `q ${dried}N0`, largest.number, "1/m²");
  if (largest.length === largest.lengthBefore) {
    sheet.step({
      name: "Its shell length: as before",
      symbol: "L",
      is: "L0",
      value: largest.length,
      unit: "mm",
    });
  } else step("Its shell length", "L", `LM − (LM − L0) ${e}^(−k d)`, largest.length, "mm");
  step("Mass of one", "W", `${e}^(a + b ln(L))/1000`, largest.mass, "kg");
  step("Ground that it covers", "C", "Nc L²/1,000,000", (largest.number * largest.length ** 2) / 1e6);
  sheet.group("What lives on: all cohorts, the sums of their table");
  const sums = moved.reduce(
    (sum, { number, length, mass }) => ({
      number: sum.number + number,
      cover: sum.cover + (number * length ** 2) / 1e6,
      mass: sum.mass + number * mass,
    }),
    { number: 0, cover: 0, mass: 0 },
  );
  sheet.step({ name: "Mussels", symbol: "N_1", value: sums.number, unit: "1/m²" });
  sheet.step({ name: "Cover, the sum of N L²", symbol: "c_1", value: sums.cover, unit: "" });
  sheet.step({ name: "Mass, the sum of N W", symbol: "M_1", value: sums.mass, unit: "kg/m²" });
}

/** Settlers in the room that is left, or what crowding sheds; then the layer. */
function layerSteps(
  sheet: Sheet,
  { layer }: PlannedLayer,
  { moved, settlers, crowded }: MonthOfCohorts,
): void {
  const step = (name: string, symbol: string, is: string, value: number, unit = "") =>
    sheet.step({ name, symbol, is, value, unit });
  sheet.group("The layer at the month's end");
  const lives = moved.length > 0;
  if (!crowded) {
    step(
      "Settlers in the room that is left",
      "S",
      lives ? "n D s (1 − c1/cM)" : "n D s",
      settlers.number,
      "1/m²",
    );
    step("Mass of one settler", "W_s", `${e}^(a + b ln(Ls))/1000`, settlers.mass, "kg");
  }
  const [number, cover, mass] = crowded
    ? ["N1 cM/c1", "cM", "M1 cM/c1"]
    : [lives ? "N1 + S" : "S", `${lives ? "c1 + " : ""}S Ls²/1,000,000`, `${lives ? "M1 + " : ""}S Ws`];
  step(crowded ? "Mussels, after crowding has shed the rest" : "Mussels", "N", number, layer.number, "1/m²");
  if (layer.number === 0) return;
  step("Cover", "c", cover, layer.cover);
  step("Mass", "M", mass, layer.mass, "kg/m²");
  step("Thickness", "t", "M/ρb", layer.thickness, "m");
  step("Mean shell length", "λ", "1000 √(c/N)", layer.lengthMm, "mm");
}
