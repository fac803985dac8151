import type { StudyDocument } from "../../study/format/schema.js";
import type { LevelSearch } from "../../study/levels/level-result.js";
import { safeJson } from "../print/chart-parts.js";
import { chartMonths, levelPoints, levelScales } from "../rack/levels-chart.js";
import { colours } from "../words/palette.js";
import type { ChartView } from "../words/view-types.js";
import { levelContext } from "./level-tables.js";
import { scheduleText } from "./level-words.js";

/** The present levels and those that cost least; absent where none costs less. */
export function searchedLevelsChart(levels: LevelSearch, document: StudyDocument): ChartView | undefined {
  const { best, daily } = levels;
  if (!best || !daily.best) return undefined;
  const context = levelContext(levels, document);
  const { format } = context;
  const title = `Least costly levels: ${scheduleText(best, context)}`;
  const line = (label: string, course: readonly number[], look: object) => ({
    ...{ label, data: levelPoints(course, format), pointRadius: 0 },
    ...look,
  });
  return {
    id: "chart-search-levels",
    title,
    alternative: `Line chart of the lake’s level over the year, as operated and least costly, down to ${format.quantity(best.lowest, "elevation")}. ${title}.`,
    source: "Mean of the possible operating years.",
    height: 260,
    tableId: "table-search-levels",
    json: safeJson({
      type: "line",
      data: {
        labels: chartMonths,
        datasets: [
          line("As operated", daily.present, { borderColor: colours.water, borderWidth: 2.5 }),
          line("Least costly", daily.best, {
            ...{ borderColor: colours.brick, borderWidth: 2, borderDash: [8, 4] },
          }),
        ],
      },
      options: { monthTicks: true, scales: levelScales(format) },
    }),
  };
}
