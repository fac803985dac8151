import { at } from "../model/lake/calendar.js";
import type { FanYear, Odds, OptionOdds } from "../study/odds.js";
import { axis, safeJson } from "./chart-parts.js";
import type { ReportContext } from "./context.js";
import { type MoneyScale, moneyScale, percent } from "./format.js";
import { costAt, scaleOf } from "./odds-table.js";
import { baselineOdds, requestedOdds } from "./odds-words.js";
import { colours, dashes, optionColours } from "./palette.js";
import { type ChartView, head, num, row, type TableView } from "./view-types.js";

export interface ChartWithTable {
  readonly chart: ChartView;
  readonly table: TableView;
}

const halfHeight = 205;
const smallLegend = { labels: { padding: 5, font: { size: 11 } } };

/** Chance that each option costs more than an amount. */
export function exceedance(odds: Odds, context: ReportContext): ChartWithTable {
  const scale = scaleOf(odds, context);
  const title = exceedanceTitle(odds, scale);
  return {
    chart: {
      id: "chart-exceedance",
      title,
      alternative: `Line chart of the chance that the cost is above an amount, for ${odds.options.length} options. ${title}.`,
      source: `Over ${odds.futures.toLocaleString("en-US")} futures.`,
      height: halfHeight,
      tableId: "table-exceedance",
      json: safeJson({
        type: "line",
        data: {
          datasets: odds.options.map(({ name, exceedance: points }, index) => ({
            label: name,
            data: points.map(({ cost, chance }) => ({ x: scale.scaled(cost), y: chance * 100 })),
            borderColor: at(optionColours, index % optionColours.length),
            borderDash: at(dashes, index % dashes.length),
            borderWidth: index < optionColours.length ? 2.25 : 1.2,
            pointRadius: 0,
          })),
        },
        options: {
          plugins: { legend: smallLegend },
          scales: {
            x: axis(`Present value of its cost, ${scale.unit}`, { type: "linear" }),
            y: axis("Chance of more, %", { min: 0, max: 100 }),
          },
        },
      }),
    },
    table: exceedanceTable(odds, scale, context),
  };
}

function exceedanceTitle(odds: Odds, scale: MoneyScale): string {
  const dear = (option: OptionOdds) => costAt(option, 0.9).value;
  return `In 9 of 10 futures ${mostText([baselineOdds(odds), requestedOdds(odds)], dear, scale)}`;
}

function mostText(
  [without, withIt]: readonly [OptionOdds, OptionOdds],
  dear: (option: OptionOdds) => number,
  { text, unit }: MoneyScale,
): string {
  const most = (option: OptionOdds) => (dear(option) === 0 ? "nothing" : `up to ${text(dear(option))}`);
  return `“${without.name}” costs ${most(without)}, “${withIt.name}” ${most(withIt)} ${unit}`;
}

const tableChances = [0.99, 0.95, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2, 0.1, 0.05, 0.01];

/** For each chance the least cost of the curve that is exceeded with no more than it. */
function exceedanceTable({ options }: Odds, scale: MoneyScale, { priceYear }: ReportContext): TableView {
  return {
    id: "table-exceedance",
    caption: `Cost that is exceeded with a chance, ${scale.unit} of ${priceYear}, present value`,
    head: head("Chance of at most", ...options.map(({ name }) => num(name))),
    rows: tableChances.map((chance) =>
      row(
        percent(chance),
        ...options.map((option) => {
          const point = option.exceedance.find((each) => each.chance <= chance);
          return num(point ? scale.text(point.cost) : "–");
        }),
      ),
    ),
    compact: true,
  };
}

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
      alternative: `Line chart of the cost of each year of “${withIt.name}” beside “${without.name}”: bands from P10 to P90, medians and means. ${title}.`,
      source: "Not discounted. Bands: P10 to P90.",
      height: halfHeight,
      tableId: "table-fan",
      json: safeJson({
        type: "line",
        data: {
          labels: without.fan.map(({ year }) => String(year)),
          datasets: [...fanLines(withIt, scale, programLook), ...fanLines(without, scale, nothingLook)],
        },
        options: {
          plugins: { legend: smallLegend },
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
const programLook: Look = { colour: colours.water, fill: colours.waterFill, median: [], mean: [2, 3] };
const nothingLook: Look = {
  colour: colours.shell,
  fill: colours.bandFill,
  median: [8, 4],
  mean: [10, 3, 2, 3],
};

function fanLines({ name, fan: years }: OptionOdds, scale: MoneyScale, look: Look) {
  const line = (label: string, of: (year: FanYear) => number, style: object) => ({
    label,
    data: years.map((year) => scale.scaled(of(year))),
    borderColor: look.colour,
    pointRadius: 0,
    ...style,
  });
  const edge = { borderWidth: 0.9, borderDash: look.median, hideLegend: true };
  return [
    line(`${name}, P90`, ({ p90 }) => p90, { ...edge, fill: "+1", backgroundColor: look.fill }),
    line(`${name}, P10`, ({ p10 }) => p10, edge),
    line(`${name}: median`, ({ p50 }) => p50, { borderWidth: 2.5, borderDash: look.median }),
    line(`${name}: mean`, ({ mean }) => mean, { borderWidth: 1.8, borderDash: look.mean }),
  ];
}

function fanTitle(pair: readonly [OptionOdds, OptionOdds], scale: MoneyScale): string {
  const last = ({ fan: years }: OptionOdds) => at(years, years.length - 1);
  return `In 9 of 10 futures ${mostText(pair, (option) => last(option).p90, scale)} in ${last(pair[0]).year}`;
}

function fanTable(
  options: readonly OptionOdds[],
  scale: MoneyScale,
  { priceYear }: ReportContext,
): TableView {
  const first = at(options, 0);
  return {
    id: "table-fan",
    caption: `Cost of each year over the futures, ${scale.unit} of ${priceYear}, not discounted`,
    head: head(
      "Year",
      ...options.flatMap(({ name }) => [num(`${name}: P10`), num("P50"), num("P90"), num("Mean")]),
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
