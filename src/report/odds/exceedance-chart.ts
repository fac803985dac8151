import { at } from "../../lists.js";
import type { Odds, OptionOdds } from "../../study/odds/odds.js";
import type { ReportContext } from "../document/context.js";
import { axis, safeJson } from "../print/chart-parts.js";
import { type MoneyScale, percent } from "../words/format.js";
import { dashes, optionColours } from "../words/palette.js";
import { type ChartView, head, num, row, type TableView } from "../words/view-types.js";
import { costAt, scaleOf } from "./odds-table.js";
import { baselineOdds, requestedOdds } from "./odds-words.js";

export interface ChartWithTable {
  readonly chart: ChartView;
  readonly table: TableView;
}

/** Two charts stand beside each other on the page. */
export const halfHeight = 205;

/** Chance that each option costs more than an amount. */
export function exceedance(odds: Odds, context: ReportContext): ChartWithTable {
  const scale = scaleOf(odds, context);
  const title = exceedanceTitle(odds, scale);
  return {
    chart: {
      id: "chart-exceedance",
      title,
      alternative: `Line chart of the chance that the cost is above an amount, for ${odds.options.length} options. ${title}.`,
      source: `Over ${odds.futures.toLocaleString("en-US")} simulated outcomes.`,
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
  return `In 9 of 10 simulated outcomes ${mostText([baselineOdds(odds), requestedOdds(odds)], dear, scale)}`;
}

/** What two options cost at most in a share of futures. */
export function mostText(
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
