import { at } from "../../lists.js";
import type { FanYear, Odds, OptionOdds } from "../../study/odds/odds.js";
import type { ReportContext } from "../document/context.js";
import { axis, safeJson } from "../print/chart-parts.js";
import { type MoneyScale, moneyScale } from "../words/format.js";
import { colours, dashes } from "../words/palette.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import { type ChartWithTable, halfHeight, mostText } from "./exceedance-chart.js";
import { baselineOdds, requestedOdds } from "./odds-words.js";

/** Cost of each year of the requested option beside doing nothing: band from P10 to P90, median and mean. */
export function fan(odds: Odds, context: ReportContext): ChartWithTable {
  const [without, withIt] = [baselineOdds(odds), requestedOdds(odds)];
  const { currency } = context.run.document.money;
  const scale = moneyScale(
    Math.max(...[...without.fan, ...withIt.fan].map(({ p90, mean }) => Math.max(p90, mean))),
    currency,
  );
  const title = fanTitle([without, withIt], scale);
  return {
    chart: {
      id: "chart-fan",
      title,
      alternative: `Line chart of the cost of each year of “${withIt.name}” beside “${without.name}”: bands from the 10th to the 90th percentile, medians and means. ${title}.`,
      source: "Not discounted. Bands: 10th to 90th percentile.",
      height: halfHeight,
      tableId: "table-fan",
      json: safeJson({
        type: "line",
        data: {
          labels: without.fan.map(({ year }) => String(year)),
          datasets: [
            ...lines(withIt, scale, programLook),
            ...lines(without, scale, nothingLook),
            ...band(withIt, scale, programLook),
            ...band(without, scale, nothingLook),
          ],
        },
        options: {
          scales: {
            x: axis("Year", {
              title: { display: false },
              ticks: { maxRotation: 0, maxTicksLimit: 7, color: colours.ink },
            }),
            y: axis(`${scale.unit} a year`, { beginAtZero: true }),
          },
        },
      }),
    },
    table: fanTable([without, withIt], scale, context),
  };
}

interface Look {
  readonly colour: string;
  readonly fill: string;
  readonly median: readonly number[];
  readonly mean: readonly number[];
}

/** Told apart by dashes as well, for print in grey. */
const programLook: Look = {
  colour: colours.water,
  fill: colours.waterFill,
  median: at(dashes, 0),
  mean: at(dashes, 2),
};
const nothingLook: Look = {
  colour: colours.shell,
  fill: colours.bandFill,
  median: at(dashes, 1),
  mean: at(dashes, 3),
};

function line({ fan: years }: OptionOdds, scale: MoneyScale, of: (year: FanYear) => number, style: object) {
  return { ...style, data: years.map((year) => scale.scaled(of(year))), pointRadius: 0 };
}

function lines(option: OptionOdds, scale: MoneyScale, { colour, median, mean }: Look) {
  const style = (label: string) => ({ label: `${option.name}: ${label}`, borderColor: colour });
  return [
    line(option, scale, ({ p50 }) => p50, { ...style("median"), borderWidth: 2.5, borderDash: median }),
    line(option, scale, (year) => year.mean, { ...style("mean"), borderWidth: 1.8, borderDash: mean }),
  ];
}

function band(option: OptionOdds, scale: MoneyScale, { colour, fill, median }: Look) {
  const edge = (label: string) => ({
    label: `${option.name}, ${label}`,
    borderColor: colour,
    borderWidth: 0.9,
    borderDash: median,
    hideLegend: true,
  });
  return [
    line(option, scale, ({ p90 }) => p90, { ...edge("90th percentile"), fill: "+1", backgroundColor: fill }),
    line(option, scale, ({ p10 }) => p10, edge("10th percentile")),
  ];
}

function fanTitle(pair: readonly [OptionOdds, OptionOdds], scale: MoneyScale): string {
  const last = ({ fan: years }: OptionOdds) => at(years, years.length - 1);
  return `In 9 of 10 simulated outcomes ${mostText(pair, (option) => last(option).p90, scale)} in ${last(pair[0]).year}`;
}

function fanTable(
  options: readonly OptionOdds[],
  scale: MoneyScale,
  { priceYear }: ReportContext,
): TableView {
  const first = at(options, 0);
  return {
    id: "table-fan",
    caption: `Cost of each year over the simulated outcomes, ${scale.unit} of ${priceYear}, not discounted`,
    head: head(
      "Year",
      ...options.flatMap(({ name }) => [
        num(`${name}: 10th percentile`),
        num("Median"),
        num("90th percentile"),
        num("Mean"),
      ]),
    ),
    rows: first.fan.map(({ year }, index) =>
      row(
        String(year),
        ...options.flatMap((option) => {
          const { p10, p50, p90, mean } = at(option.fan, index);
          return [p10, p50, p90, mean].map((amount) => num(scale.text(amount)));
        }),
      ),
    ),
    compact: true,
  };
}
