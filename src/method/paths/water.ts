import { at } from "../../lists.js";
import { months } from "../../model/lake/calendar.js";
import type { LevelPoint } from "../../model/lake/lake.js";
import { bySpecies } from "../../model/mussels/surface.js";
import type { AssumptionId } from "../../model/register/register.js";
import { monthName } from "../../report/words/month-name.js";
import { giveAssumption, type Setting } from "../worked/setting.js";
import { levelText, newPath, type Path, type PathSheet } from "./path.js";

/** What all paths of one lake start from: its water, its levels, its mussels. */
export function waterOf(id: string, setting: Setting): Path {
  const { lake } = setting.lake;
  const { name } = setting.context.run.document.lake;
  const sheet = newPath(`water-${id}`);
  giveMussels(sheet, setting);
  sheet.table(
    "By month",
    ["Month", "Surface, °C", "Below the thermocline, °C", "Air, °C", "Humidity of the air", "Mean level, m"],
    months.map((month) => [
      monthName(month),
      at(lake.surfaceTemperature, month),
      at(lake.deepTemperature, month),
      at(lake.airTemperature, month),
      at(lake.humidity, month),
      levelText(at(setting.lake.monthlyLevels, month)),
    ]),
  );
  if (!lake.record) giveSchedule(sheet, lake.drawdown);
  return {
    title: `The water and the mussels of ${name}`,
    intro: "All paths of structures in this lake start from these values.",
    ...sheet,
  };
}

function giveSchedule(sheet: PathSheet, points: readonly LevelPoint[]): void {
  sheet.table(
    "Levels as entered; between them a straight line",
    ["Day of the year, 1 January is 0", "Level, m"],
    points.map(({ dayOfYear, elevation }) => [dayOfYear, levelText(elevation)]),
  );
}

function giveMussels(sheet: PathSheet, setting: Setting): void {
  const { lake, suitability } = setting.lake;
  const given = (symbol: string, meaning: string, id: AssumptionId, unit = "") =>
    giveAssumption(sheet, symbol, meaning, id, { ...setting, unit });
  const own = bySpecies[lake.species];
  const result = (symbol: string, meaning: string, value: number, unit: string, entered = "result") =>
    sheet.give({ symbol, meaning, entered, value, unit });
  result("w", "suitability of the water, the least of its weights", suitability.weight, "");
  result("y_t", "depth of the thermocline", lake.thermoclineDepth, "m", "entered");
  given("s_0", "share of capacity at establishment", "population.initial-share");
  given("p", "share of capacity at the peak", "population.peak-share");
  given("T", "years to the peak", yearsToPeak(setting), "yr");
  given("q", "later density over that at the peak", "population.later-over-peak");
  given("y_d", "years over which it declines", "population.decline-years", "yr");
  given("n", "settlers a month at capacity on a bare surface", "growth.settlers-per-month", "1/m²");
  given("m_1", "mortality in water that suits them", "growth.yearly-mortality", "1/yr");
  given("x", "exponent of mortality", "growth.mortality-exponent");
  given("c_max", "largest cover", "growth.cover-limit");
  given("L_0", "length of settlers", "shell.settlement-length", "mm");
  given("L_max", "largest length", "shell.maximum-length", "mm");
  given("k", "growth rate", "shell.growth-rate", "1/(°C·d)");
  given("T_b", "temperature from which shells grow", "shell.growth-base-temperature", "°C");
  given("a", "intercept of mass by length", "shell.mass-intercept");
  given("b", "slope of mass by length", "shell.mass-exponent");
  given("T_s", "surface temperature from which larvae settle", own.spawningTemperature, "°C");
  given("T_u", "highest at which they do", "settlement.upper-temperature", "°C");
  given("V_1", "velocity up to which settlement is full", "settlement.full-velocity", "m/s");
  given("V_0", "velocity at which there is none", "settlement.no-velocity", "m/s");
  given("d", "days that a day of running keeps water fresh", "settlement.standing-days", "d");
  given("y_1", "depth down to which settlement is full", own.fullDepth, "m");
  given("y_0", "depth at which there is none", own.noDepth, "m");
}

function yearsToPeak({ lake: { lake } }: Setting): AssumptionId {
  if (lake.species === "zebra") return "population.years-to-peak.zebra";
  return lake.depthType === "deep"
    ? "population.years-to-peak.quagga-deep"
    : "population.years-to-peak.quagga-shallow";
}
