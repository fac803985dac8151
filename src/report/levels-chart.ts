import { at, daysInYear } from "../model/lake/calendar.js";
import { axis, safeJson } from "./chart-parts.js";
import type { ReportContext } from "./context.js";
import { monthLabels } from "./lake-view.js";
import { colours, dashes } from "./palette.js";
import type { ChartView } from "./view-types.js";

const stepDays = 5;

/** The lake's year with the band that it lays bare and the elevations of fixed structures. */
export function levelsChart(context: ReportContext): ChartView {
  const { comparison, format, run } = context;
  const { daily, band } = comparison.lake;
  const days = Array.from({ length: Math.ceil(daysInYear / stepDays) }, (_, index) => index * stepDays);
  const shownLevel = (elevation: number) => Number(format.display(elevation, "elevation").toFixed(2));
  const flat = (elevation: number) => days.map(() => shownLevel(elevation));
  const fixed = fixedStructures(context);
  const title = levelsTitle(context, fixed);
  return {
    id: "chart-levels",
    title,
    alternative: `Line chart of the lake's level over the year between ${format.quantity(band.lowest, "elevation")} and ${format.quantity(band.highest, "elevation")}, with the elevations of structures. ${title}.`,
    source: "Drawdown schedule of the study.",
    height: 300,
    tableId: "table-levels",
    json: safeJson({
      type: "line",
      data: {
        labels: days.map((day) => at(monthLabels, Math.min(11, Math.floor((day / daysInYear) * 12)))),
        datasets: [
          {
            label: "Water level",
            data: days.map((day) => shownLevel(at(daily, day))),
            borderColor: colours.water,
            borderWidth: 2.5,
            pointRadius: 0,
          },
          {
            label: "Exposed band",
            data: flat(band.highest),
            borderColor: colours.band,
            borderWidth: 1,
            pointRadius: 0,
            fill: "+1",
            backgroundColor: colours.bandFill,
          },
          {
            label: "Lowest level",
            data: flat(band.lowest),
            borderColor: colours.band,
            borderWidth: 1,
            pointRadius: 0,
            hideLegend: true,
          },
          ...fixed.map(({ name, elevation }, index) => ({
            label: name,
            data: flat(elevation),
            borderColor: index % 2 === 0 ? colours.shell : colours.ink,
            borderDash: at(dashes, (index + 1) % dashes.length),
            borderWidth: 1.4,
            pointRadius: 0,
          })),
        ],
      },
      options: {
        monthTicks: true,
        scales: {
          x: axis("Month"),
          y: axis(`Elevation, ${format.unit("elevation")} (${run.document.lake.name})`),
        },
      },
    }),
  };
}

interface FixedStructure {
  readonly name: string;
  readonly elevation: number;
}

function fixedStructures({ comparison }: ReportContext): FixedStructure[] {
  return comparison.input.structures.flatMap((structure) => {
    if (structure.kind === "intake" || structure.kind === "hydropower") return [structure];
    if (structure.kind === "dock" && !structure.floating && structure.elevation !== undefined) {
      return [{ name: structure.name, elevation: structure.elevation }];
    }
    return [];
  });
}

function levelsTitle({ comparison }: ReportContext, fixed: readonly FixedStructure[]): string {
  const { lowest } = comparison.lake.band;
  const dry = fixed.filter(({ elevation }) => elevation > lowest).map(({ name }) => name);
  const wet = fixed.filter(({ elevation }) => elevation <= lowest).map(({ name }) => name);
  const parts = [
    dry.length > 0 ? `${listed(dry)} hang${dry.length === 1 ? "s" : ""} dry part of the year` : "",
    wet.length > 0 ? `${listed(wet)} stay${wet.length === 1 ? "s" : ""} under water all year` : "",
  ].filter(Boolean);
  return parts.length > 0 ? parts.join("; ") : "The year's water level";
}

const listed = (names: readonly string[]) => new Intl.ListFormat("en", { type: "conjunction" }).format(names);
