import { at, daysInYear } from "../model/lake/calendar.js";
import { cumulativePresentValues } from "./comparison-view.js";
import type { ReportContext } from "./context.js";
import { percent } from "./format.js";
import { structureCosts } from "./infestation-view.js";
import { monthLabels } from "./lake-view.js";
import { colours, dashes, optionColours } from "./palette.js";
import { allOptions } from "./program-view.js";
import type { ChartView } from "./view-types.js";

export interface ChartsView {
  readonly levels: ChartView;
  readonly structures: ChartView;
  readonly yearly: ChartView;
  readonly cumulative: ChartView;
}

export function chartsView(context: ReportContext): ChartsView {
  return {
    levels: levelsChart(context),
    structures: structuresChart(context),
    yearly: yearlyChart(context),
    cumulative: cumulativeChart(context),
  };
}

/** JSON that cannot close the script element it stands in. */
const safeJson = (value: unknown) => JSON.stringify(value).replaceAll("<", "\\u003c");

const axis = (title: string, extra: object = {}) => ({
  title: { display: true, text: title, color: colours.ink },
  ticks: { color: colours.ink },
  grid: { color: colours.grid },
  ...extra,
});

function lines(labels: readonly string[], series: ReadonlyArray<{ label: string; data: readonly number[] }>) {
  return {
    labels,
    datasets: series.map(({ label, data }, index) => ({
      label,
      data,
      borderColor: optionColours[index % optionColours.length],
      borderDash: dashes[index % dashes.length],
      borderWidth: 2.25,
      pointRadius: 0,
      tension: 0,
    })),
  };
}

function yearlyChart(context: ReportContext): ChartView {
  const options = allOptions(context);
  const labels = context.comparison.discountFactors.map((_, year) =>
    String(context.run.document.money.startYear + year),
  );
  const series = options.map(({ option, expectedByYear }) => ({
    label: option.name,
    data: expectedByYear.map(({ total }) => total.toNumber()),
  }));
  const title = yearlyTitle(context);
  return {
    id: "chart-yearly",
    title,
    alternative: `Line chart of expected yearly cost for ${options.length} options over ${context.horizon} years. ${title}. The figures are in the table of yearly cost.`,
    source: "Computed from the lines of appendix A and the chances of the yearly table.",
    height: 280,
    tableId: "table-yearly",
    json: safeJson({
      type: "line",
      data: lines(labels, series),
      options: { scales: { x: axis("Year"), y: axis(moneyAxis(context), { beginAtZero: true }) } },
    }),
  };
}

const moneyAxis = ({ run, priceYear }: ReportContext) =>
  `${run.document.money.currency} a year, prices of ${priceYear}`;

function yearlyTitle({ comparison, requested, run }: ReportContext): string {
  const crossing = comparison.baseline.expectedByYear.findIndex(({ total }, year) =>
    total.greaterThan(at(requested.result.expectedByYear, year).total),
  );
  const name = requested.result.option.name;
  return crossing === -1
    ? `In no year does doing nothing cost more than “${name}”`
    : `From ${run.document.money.startYear + crossing} on, doing nothing is expected to cost more each year than “${name}”`;
}

function cumulativeChart(context: ReportContext): ChartView {
  const { comparison, requested, format, horizon, run } = context;
  const options = allOptions(context);
  const sums = cumulativePresentValues(context);
  const labels = comparison.discountFactors.map((_, year) => String(run.document.money.startYear + year));
  const title = `Over ${horizon} years “${requested.result.option.name}” comes to ${format.money(requested.result.presentValue.total)} in present value, doing nothing to ${format.money(comparison.baseline.presentValue.total)}`;
  return {
    id: "chart-cumulative",
    title,
    alternative: `Line chart of cumulative present value for ${options.length} options. ${title}. The figures are in the table of cumulative present value.`,
    source: "Yearly table times discount factor, summed.",
    height: 280,
    tableId: "table-cumulative",
    json: safeJson({
      type: "line",
      data: lines(
        labels,
        options.map(({ option }, index) => ({ label: option.name, data: at(sums, index) })),
      ),
      options: {
        scales: {
          x: axis("Year"),
          y: axis(`${run.document.money.currency}, present value so far`, { beginAtZero: true }),
        },
      },
    }),
  };
}

const mostBars = 12;

function structuresChart(context: ReportContext): ChartView {
  const { run, format } = context;
  const rows = structureCosts(context).filter(({ matureMean }) => matureMean > 0);
  const shown = [...rows].sort((a, b) => b.matureMean - a.matureMean).slice(0, mostBars);
  const total = rows.reduce((sum, each) => sum + each.matureMean, 0);
  const largest = shown[0];
  const title = largest
    ? `${largest.name} would carry ${percent(largest.matureMean / total)} of the yearly cost of a mature infestation`
    : "No structure would cost anything";
  return {
    id: "chart-structures",
    title,
    alternative: `Bar chart of yearly cost by structure. ${shown.map(({ name, matureMean }) => `${name} ${format.money(matureMean)}`).join(", ")}.`,
    source: "Means of five mature years; lines in appendix A.",
    height: 70 + shown.length * 26,
    tableId: "table-structures",
    json: safeJson({
      type: "bar",
      data: {
        labels: shown.map(({ name }) => name),
        datasets: [
          { label: "A year, mature", data: shown.map(({ matureMean }) => matureMean), hatch: colours.shell },
        ],
      },
      options: {
        indexAxis: "y",
        plugins: { legend: { display: false } },
        scales: {
          x: axis(`${run.document.money.currency} a year, prices of ${context.priceYear}`, {
            beginAtZero: true,
          }),
          y: axis("", { grid: { display: false } }),
        },
      },
    }),
  };
}

const stepDays = 5;

function levelsChart(context: ReportContext): ChartView {
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
