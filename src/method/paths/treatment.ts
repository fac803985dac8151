import { at, sumOf } from "../../lists.js";
import { daysOf, months, secondsPerDay } from "../../model/lake/calendar.js";
import { algaeFurthered, algaeSeason } from "../../model/structures/deliveries/taste-and-odour.js";
import type { TreatmentPlant } from "../../model/structures/kinds/treatment-plant.js";
import type { StructureResult } from "../../model/structures/structure.js";
import { monthName } from "../../report/words/month-name.js";
import type { Setting } from "../worked/setting.js";
import { givers } from "./givers.js";
import { firstGreatYear, lineStep, sumStep, type YearLine, yearWords } from "./line.js";
import { newPath, type Path, type PathSheet } from "./path.js";

const what = "powdered carbon against taste and odour";

/** Carbon against tastes, dose and price typical. */
export function treatmentPath(result: StructureResult, setting: Setting): Path | undefined {
  const { structure } = result;
  const line = firstGreatYear(result, what);
  if (structure.kind !== "treatment-plant" || !line) return undefined;
  const { dose, carbonPrice, totalPhosphorus } = structure.tasteAndOdour ?? {};
  if (dose || carbonPrice !== undefined || totalPhosphorus === undefined) return undefined;
  const { currency } = setting.context.run.document.money;
  const sheet = newPath(`path-${structure.id}`);
  giveTaste(sheet, totalPhosphorus, setting);
  const water = waterTable(sheet, structure, line, setting);
  sheet.group("Carbon");
  furtheredStep(sheet, totalPhosphorus, setting);
  sumStep(sheet, "w D V over the months below", water, "m³");
  sheet.step({ name: "Carbon", symbol: "q", is: "d φ S/1000", value: line.line.quantity, unit: "kg" });
  lineStep(sheet, line, currency);
  return {
    title: structure.name,
    intro: `From the water treated to the line “${what}” in ${yearWords(line)}.`,
    ...sheet,
  };
}

/** @returns water treated in the year, weighed by algae and density, m³ */
function waterTable(
  sheet: PathSheet,
  { treated }: TreatmentPlant,
  { year }: YearLine,
  { assumed, lake: { density, lake } }: Setting,
): number {
  const season = {
    from: assumed("taste-odour.from-temperature"),
    full: assumed("taste-odour.full-temperature"),
  };
  const rows = months.map((month) => {
    const volume = at(treated, month) * daysOf(month) * secondsPerDay;
    const algae = algaeSeason(at(lake.surfaceTemperature, month), season);
    const share = at(density, year * 12 + month);
    return { month, volume, algae, share, weighed: algae * share * volume };
  });
  sheet.table(
    "By month of the year",
    ["Month", "Flow treated, m³/s", "Volume V, m³", "Algae w", "Density D", "w D V, m³"],
    rows.map(({ month, volume, algae, share, weighed }) => [
      monthName(month),
      at(treated, month),
      volume,
      algae,
      share,
      weighed,
    ]),
  );
  return sumOf(rows.map(({ weighed }) => weighed));
}

function furtheredStep(sheet: PathSheet, totalPhosphorus: number, { assumed }: Setting): void {
  const value = algaeFurthered(totalPhosphorus, {
    full: assumed("taste-odour.phosphorus-full"),
    none: assumed("taste-odour.phosphorus-none"),
  });
  const step = { name: "How far mussels promote algae", symbol: "φ", value, unit: "" };
  sheet.step(value > 0 && value < 1 ? { ...step, is: "(P0 − P)/(P0 − P1)" } : step);
}

function giveTaste(sheet: PathSheet, totalPhosphorus: number, setting: Setting): void {
  const { entered, assumed, money } = givers(sheet, setting);
  const full = "phosphorus up to which mussels promote algae in full";
  entered("P", "phosphorus of the lake", totalPhosphorus, "mg/L");
  assumed("P_1", full, "taste-odour.phosphorus-full", "mg/L");
  assumed("P_0", "from which not at all", "taste-odour.phosphorus-none", "mg/L");
  assumed("T_0", "surface temperature from which algae grow", "taste-odour.from-temperature", "°C");
  assumed("T_1", "from which they grow in full", "taste-odour.full-temperature", "°C");
  assumed("d", "dose in a mature infestation", "taste-odour.dose", "mg/L");
  assumed("u", "price of carbon", "taste-odour.carbon-price", money("kg"));
}
