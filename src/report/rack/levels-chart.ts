import { at } from "../../lists.js";
import { daysInYear } from "../../model/lake/calendar.js";
import type { ReportContext } from "../document/context.js";
import { axis, safeJson } from "../print/chart-parts.js";
import { type Formatter, listedWithin } from "../words/format.js";
import { colours, dashes } from "../words/palette.js";
import { fixedPlaces, type Place } from "../words/places.js";
import type { ChartView } from "../words/view-types.js";
import { levelsSource, monthLabels } from "./levels-view.js";

const stepDays = 5;

/** More lines of structures than this hide the water. */
const mostPlaces = 8;
const mostNames = 3;

/** The lake's year with the band that it lays bare and the elevations of fixed structures. */
export function levelsChart(context: ReportContext): ChartView {
  const { comparison, format } = context;
  const { band, years } = comparison.lake;
  const places = fixedPlaces(context);
  const title = levelsTitle(context, places);
  const drawn = places.length > mostPlaces ? ` ${mostPlaces} of ${places.length} elevations are drawn.` : "";
  const each = years.length > 1 ? ` Mean, lowest and highest of ${years.length} years.` : "";
  return {
    id: "chart-levels",
    title,
    alternative: `Line chart of the lake's level over the year between ${format.quantity(band.highest, "elevation")} and ${format.quantity(band.lowest, "elevation")}, with the elevations of structures. ${title}.`,
    source: `${levelsSource(context)}${each}${drawn}`,
    height: 300,
    tableId: "table-levels",
    json: safeJson({
      type: "line",
      data: {
        labels: chartMonths,
        datasets: [
          ...waterLines(context),
          {
            ...flatLine("Exposed band", band.highest, context),
            borderColor: colours.band,
            borderWidth: 1,
            fill: "+1",
            backgroundColor: colours.bandFill,
          },
          {
            ...flatLine("Lowest level", band.lowest, context),
            borderColor: colours.band,
            borderWidth: 1,
            hideLegend: true,
          },
          ...placeLines(places, context),
        ],
      },
      options: { monthTicks: true, scales: levelScales(context.format) },
    }),
  };
}

const chartDays = Array.from({ length: Math.ceil(daysInYear / stepDays) }, (_, index) => index * stepDays);

export const chartMonths = chartDays.map((day) =>
  at(monthLabels, Math.min(11, Math.floor((day / daysInYear) * 12))),
);

/** Points of a line of levels over the year. */
export function levelPoints(daily: readonly number[], format: Formatter): number[] {
  return chartDays.map((day) => Number(format.display(at(daily, day), "elevation").toFixed(2)));
}

export const levelScales = (format: Formatter) => ({
  x: axis("Month"),
  y: axis(`Elevation, ${format.unit("elevation")}`),
});

function waterLines(context: ReportContext) {
  const { daily, years } = context.comparison.lake;
  const mean = {
    label: years.length > 1 ? "Water level, mean of the years" : "Water level",
    data: levelPoints(daily, context.format),
    borderColor: colours.water,
    borderWidth: 2.5,
    pointRadius: 0,
  };
  if (years.length === 1) return [mean];
  const onDay = (pick: (...levels: number[]) => number) =>
    daily.map((_, day) => pick(...years.map((year) => at(year.daily, day))));
  const edge = { borderColor: colours.water, borderWidth: 0.8, pointRadius: 0 };
  return [
    mean,
    {
      ...edge,
      label: "Lowest to highest year",
      data: levelPoints(onDay(Math.max), context.format),
      fill: "+1",
      backgroundColor: colours.waterFill,
    },
    { ...edge, label: "Lowest year", data: levelPoints(onDay(Math.min), context.format), hideLegend: true },
  ];
}

function flatLine(label: string, elevation: number, context: ReportContext) {
  const level = Number(context.format.display(elevation, "elevation").toFixed(2));
  return { label, data: chartDays.map(() => level), pointRadius: 0 };
}

/** A flat line for each elevation at which structures stand. */
export function placeLines(places: readonly Place[], context: ReportContext) {
  return places.slice(0, mostPlaces).map(({ names, elevation }, index) => ({
    ...flatLine(listedWithin(names, 1), elevation, context),
    borderColor: index % 2 === 0 ? colours.shell : colours.ink,
    borderDash: at(dashes, (index + 1) % dashes.length),
    borderWidth: 1.4,
  }));
}

function levelsTitle({ comparison }: ReportContext, places: readonly Place[]): string {
  const { lowest } = comparison.lake.band;
  const namesOf = (list: readonly Place[]) => list.flatMap(({ names }) => names);
  const dry = namesOf(places.filter(({ elevation }) => elevation > lowest));
  const wet = namesOf(places.filter(({ elevation }) => elevation <= lowest));
  const when = comparison.lake.years.length > 1 ? "at times" : "part of the year";
  const parts = [
    dry.length > 0 ? `${listedWithin(dry, mostNames)} hang${dry.length === 1 ? "s" : ""} dry ${when}` : "",
    wet.length > 0
      ? `${listedWithin(wet, mostNames)} stay${wet.length === 1 ? "s" : ""} under water all year`
      : "",
  ].filter(Boolean);
  return parts.length > 0 ? parts.join("; ") : "The year's water level";
}
