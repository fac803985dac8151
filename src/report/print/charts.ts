import { counted } from "../../counted.js";
import { at } from "../../lists.js";
import { appendixLetter } from "../../study/format/report-schema.js";
import { allOptions, type ReportContext } from "../document/context.js";
import { levelsChart } from "../rack/levels-chart.js";
import { colours, dashes, optionColours } from "../words/palette.js";
import type { ChartView } from "../words/view-types.js";
import { axis, safeJson } from "./chart-parts.js";

export interface ChartsView {
  readonly levels: ChartView;
  readonly yearly: ChartView;
}

export function chartsView(context: ReportContext): ChartsView {
  return {
    levels: levelsChart(context),
    yearly: yearlyChart(context),
  };
}

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
    alternative: `Line chart of expected yearly cost for ${options.length} options over ${counted(context.horizon, "year")}. ${title}. The figures are in the table of yearly cost.`,
    source: `Computed from the lines of appendix ${appendixLetter("cost-lines")} and the chances of the yearly table.`,
    height: 235,
    tableId: "table-yearly",
    json: safeJson({
      type: "line",
      data: lines(labels, series),
      options: {
        scales: {
          x: axis("Year", { ticks: { maxRotation: 0, maxTicksLimit: 10, color: colours.ink } }),
          y: axis(moneyAxis(context), { beginAtZero: true }),
        },
      },
    }),
  };
}

const moneyAxis = ({ run, priceYear }: ReportContext) =>
  `${run.document.money.currency} a year, prices of ${priceYear}`;

function yearlyTitle({ comparison, requested, run, infestedSince, format }: ReportContext): string {
  if (infestedSince !== undefined) {
    return `Upkeep and losses go on at about ${format.money(comparison.baseline.equivalentYearly.infestation)} a year`;
  }
  const crossing = comparison.baseline.expectedByYear.findIndex(({ total }, year) =>
    total.greaterThan(at(requested.result.expectedByYear, year).total),
  );
  const name = requested.result.option.name;
  return crossing === -1
    ? `In no year does doing nothing cost more than “${name}”`
    : `From ${run.document.money.startYear + crossing} on, doing nothing is expected to cost more each year than “${name}”`;
}
