import type { Odds, TornadoBar } from "../../study/odds/odds.js";
import type { ReportContext } from "../document/context.js";
import { axis, safeJson } from "../print/chart-parts.js";
import { type MoneyScale, moneyScale } from "../words/format.js";
import { colours } from "../words/palette.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import type { ChartWithTable } from "./exceedance-chart.js";
import { inputName, inputSpan, numberedName } from "./odds-inputs.js";
import { requestedOdds } from "./odds-words.js";
import { endsNote } from "./sensitivity-sentences.js";

const mostBars = 8;
/** Letters for which there is room beside the bars, name and span together. */
const longestLabel = 58;
const barHeight = 13.5;
const axesHeight = 44;

/** How far the net benefit of the requested option moves with one input at a time. */
export function tornado(odds: Odds, context: ReportContext): ChartWithTable {
  const { netBenefit, tornado: bars } = odds.matters;
  const shown = bars.slice(0, mostBars);
  const scale = moneyScale(
    Math.max(...bars.flatMap(endsOf).map(Math.abs), Math.abs(netBenefit)),
    context.run.document.money.currency,
  );
  const title = tornadoTitle(odds, scale);
  const labels = shown.map((bar) => labelOf(inputName(bar.name), inputSpan(bar, context)));
  const side = (end: "low" | "high") =>
    shown.map((bar) => [scale.scaled(netBenefit), scale.scaled(bar[end].netBenefit)]);
  return {
    chart: {
      id: "chart-tornado",
      title,
      alternative: `Bar chart of the net benefit with one input at a time at its P10 and its P90. ${title}. ${labels.join("; ")}.`,
      source: `Each input from its P10 (light) to its P90 (dark), all else as assumed. Dotted: the estimate, ${scale.text(netBenefit)} ${scale.unit}. Left of 0 it does not pay.`,
      height: axesHeight + shown.length * barHeight,
      tableId: "table-tornado",
      json: safeJson({
        type: "bar",
        data: {
          labels,
          datasets: [
            { ...barStyle, label: "Input low", data: side("low"), backgroundColor: colours.band },
            { ...barStyle, label: "Input high", data: side("high"), backgroundColor: colours.water },
            verticalLine(0, labels, { borderWidth: 1.2 }),
            verticalLine(scale.scaled(netBenefit), labels, { borderDash: [1, 3], borderWidth: 1.6 }),
          ],
        },
        options: {
          indexAxis: "y",
          plugins: { legend: { display: false } },
          scales: {
            x: axis(`Net benefit, ${scale.unit}, present value`),
            y: axis("", {
              grid: { display: false },
              ticks: { color: colours.ink, autoSkip: false, font: { size: 11 } },
            }),
          },
        },
      }),
    },
    table: tornadoTable(odds, scale, context),
  };
}

const barStyle = { grouped: false, borderColor: colours.ink, borderWidth: 0.8, barPercentage: 0.75 };

function verticalLine(x: number, labels: readonly string[], style: object) {
  return {
    ...style,
    type: "line",
    label: `at ${x}`,
    data: labels.map((label) => ({ x, y: label })),
    borderColor: colours.ink,
    pointRadius: 0,
  };
}

const endsOf = ({ low, high }: TornadoBar) => [low.netBenefit, high.netBenefit];

function labelOf(name: string, span: string): string {
  const room = longestLabel - span.length;
  return `${name.length > room ? `${name.slice(0, room - 1).trimEnd()}…` : name}: ${span}`;
}

/** Whether any single input turns the answer, and which moves it most. */
function tornadoTitle(odds: Odds, scale: MoneyScale): string {
  const { name } = requestedOdds(odds);
  const { netBenefit, tornado: bars } = odds.matters;
  const decisive = bars.filter((bar) => endsOf(bar).some((end) => end > 0 !== netBenefit > 0));
  const widest = bars[0];
  if (!widest) return `No input moves the net benefit of “${name}”`;
  const [low, high] = [Math.min(...endsOf(widest)), Math.max(...endsOf(widest))];
  const most = `The net benefit moves most with “${inputName(widest.name)}”, from ${scale.text(low)} to ${scale.text(high)}`;
  if (decisive.length === 0) return `${most}; no input alone turns the answer`;
  return `${most}; ${decisive.length === 1 ? "1 input alone turns" : `each of ${decisive.length} inputs alone turns`} the answer`;
}

function tornadoTable({ matters: sensitivity }: Odds, scale: MoneyScale, context: ReportContext): TableView {
  return {
    id: "table-tornado",
    caption: `Net benefit with one input at a time low and high, ${scale.unit} of ${context.priceYear}; ${scale.text(sensitivity.netBenefit)} with all as assumed`,
    head: head("Input", "P10–P90", num("Input low"), num("Input high")),
    rows: sensitivity.tornado.map((bar) =>
      row(
        numberedName(bar.id, bar.name, context),
        inputSpan(bar, context),
        ...endsOf(bar).map((amount) => num(scale.text(amount))),
      ),
    ),
    note: endsNote,
    compact: true,
  };
}
