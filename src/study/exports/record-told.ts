import { counted } from "../../counted.js";
import { toDisplay } from "../../units/quantity.js";
import type { LevelReading } from "../reading/levels/level-record.js";

/** What a study makes of a record, in sentences: years that count, years left out, gaps joined, floods. */
export function recordTold(reading: LevelReading, system: "us" | "si"): string[] {
  if (!reading.record) return [];
  const { years, leftOut, filled, above } = reading.record;
  const labels = years.map(({ label }) => label);
  const days = filled.reduce((sum, each) => sum + each.days, 0);
  const unit = system === "us" ? "ft" : "m";
  return [
    `${counted(years.length, "year")} can be used: ${ranges(labels)}.`,
    ...(leftOut.length > 0 ? [`Left out: ${leftOut.join(", ")}.`] : []),
    ...(days > 0
      ? [
          `Joined across, having no level: ${counted(days, "day")}, in ${filled.map(({ label }) => label).join(", ")}.`,
        ]
      : []),
    ...(above
      ? [
          `Above full pool, and kept: ${counted(above.days, "day")}, the highest in ${above.label} at ${toDisplay(above.highest, "elevation", system).toFixed(2)} ${unit}.`,
        ]
      : []),
  ];
}

/** "2004 to 2009, 2011" for years one after the other. */
function ranges(labels: readonly string[]): string {
  const runs: [string, string][] = [];
  for (const label of labels) {
    const last = runs.at(-1);
    if (last && Number(label) === Number(last[1]) + 1) last[1] = label;
    else runs.push([label, label]);
  }
  return runs.map(([first, last]) => (first === last ? first : `${first} to ${last}`)).join(", ");
}
