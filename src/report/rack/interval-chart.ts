import type { TriedPlan } from "../../model/structures/component.js";
import type { ReportContext } from "../document/context.js";
import { axis, safeJson } from "../print/chart-parts.js";
import { capitalised } from "../words/format.js";
import { colours } from "../words/palette.js";
import { type ChartView, head, num, row, type TableView } from "../words/view-types.js";
import type { PartGroup } from "./part-groups.js";
import { intervalOf, keepsLimits, remarkOf, triedPlans } from "./tried-plans.js";

/** Yearly cost of a part against the months between its cleanings. */
export interface IntervalsView {
  readonly chart: ChartView;
  readonly table: TableView;
}

interface Series {
  readonly label: string;
  readonly points: readonly TriedPlan[];
}

const marks = [
  { colour: colours.shell, dash: [], pointStyle: "circle" },
  { colour: colours.ink, dash: [8, 4], pointStyle: "rectRot" },
  { colour: colours.brick, dash: [2, 3], pointStyle: "triangle" },
] as const;

/** Above this factor between the dearest and the cheapest a linear axis hides the cheap end. */
const widestLinear = 10;
const roomBelow = 0.6;

/** With one digit that is not zero, as the axis begins with it: 10,000 of 18,270. */
function lowestTick(lowest: number): number {
  const size = 10 ** Math.floor(Math.log10(lowest * roomBelow));
  return Math.floor((lowest * roomBelow) / size) * size;
}

/** Absent where fewer than two intervals were tried. */
export function intervalsView(
  group: PartGroup,
  number: number,
  context: ReportContext,
): IntervalsView | undefined {
  const series = seriesOf(group);
  const months = [...new Set(series.flatMap(({ points }) => points.map(intervalOf)))].sort((a, b) => a - b);
  if (months.length < 2) return undefined;
  const tableId = `table-intervals-${number}`;
  return {
    chart: chart(group, series, months, { context, id: `chart-intervals-${number}`, tableId }),
    table: table(group, series, months, { context, id: tableId }),
  };
}

/** Plain cleaning, and each coating that was tried with cleaning. */
function seriesOf({ component }: PartGroup): Series[] {
  const plans = triedPlans(component).filter((each) => intervalOf(each) > 0);
  const plain = plans.filter(({ plan }) => plan.entry.measure === "clean");
  const coated = plans.filter(({ plan }) => plan.entry.measure === "coating");
  const coatings = [...new Set(coated.map(({ plan }) => plan.entry.id))].map((id) => {
    const points = coated.filter(({ plan }) => plan.entry.id === id);
    return { label: capitalised(`${points[0]?.plan.entry.name} and cleaning`), points };
  });
  return [{ label: "Cleaning alone", points: plain }, ...coatings].filter(({ points }) => points.length > 0);
}

const pointAt = ({ points }: Series, months: number) => points.find((each) => intervalOf(each) === months);

function chart(
  group: PartGroup,
  series: readonly Series[],
  months: readonly number[],
  { context, id, tableId }: { context: ReportContext; id: string; tableId: string },
): ChartView {
  const { format, run, priceYear } = context;
  const { chosen } = group.component;
  const title = `${group.name}. ${finding(group, context)}`;
  const costs = series.flatMap(({ points }) => points.map(({ yearlyCost }) => yearlyCost));
  const lowest = Math.min(chosen.yearlyCost, ...costs);
  const isWide = lowest > 0 && Math.max(...costs) > widestLinear * lowest;
  return {
    id,
    title,
    alternative: `Line chart of yearly cost against months between cleanings. ${title}.`,
    source: `Open points pass a limit at times. Dotted: the ${group.component.pinned ? "plan prescribed" : "plan chosen"}, ${chosen.plan.label}, at ${format.money(chosen.yearlyCost)}. Intervals are not to scale${isWide ? "; costs are on a logarithmic scale" : ""}.`,
    height: 250,
    tableId,
    json: safeJson({
      type: "line",
      data: {
        labels: months.map(String),
        datasets: [
          ...series.map((each, index) => dataset(each, index, months)),
          {
            label: group.component.pinned ? "Plan prescribed" : "Plan chosen",
            data: months.map((each) => ({ x: String(each), y: chosen.yearlyCost })),
            borderColor: colours.ink,
            borderDash: [1, 4],
            borderWidth: 1.6,
            pointRadius: 0,
          },
        ],
      },
      options: {
        scales: {
          x: axis("Months between cleanings"),
          y: axis(
            `${run.document.money.currency} a year, prices of ${priceYear}`,
            isWide ? { type: "logarithmic", min: lowestTick(lowest) } : { beginAtZero: true },
          ),
        },
      },
    }),
  };
}

function dataset(series: Series, index: number, months: readonly number[]) {
  const { colour, dash, pointStyle } = marks[index % marks.length] ?? marks[0];
  const points = months.flatMap((each) => pointAt(series, each) ?? []);
  return {
    label: series.label,
    data: points.map((point) => ({ x: String(intervalOf(point)), y: point.yearlyCost })),
    borderColor: colour,
    borderDash: dash,
    borderWidth: 2,
    pointStyle,
    pointRadius: 5,
    pointBorderColor: colour,
    pointBorderWidth: 1.6,
    pointBackgroundColor: points.map((point) => (keepsLimits(point) ? colour : colours.paper)),
    tension: 0,
  };
}

function finding(group: PartGroup, context: ReportContext): string {
  const { chosen, pinned } = group.component;
  const cleaning = cleaningFinding(group, context);
  if (chosen.plan.entry.measure === "clean") return cleaning;
  const cost = context.format.money(chosen.yearlyCost);
  return `${cleaning}; the plan ${pinned ? "prescribed" : "chosen"} costs ${cost}`;
}

function cleaningFinding({ component }: PartGroup, { format }: ReportContext): string {
  const tried = triedPlans(component).filter(
    (each) => each.plan.entry.measure === "clean" && intervalOf(each) > 0,
  );
  const cleaned = tried.filter((each) => !each.comesToLeaving);
  const [best] = cleaned;
  if (!best)
    return tried.length > 0
      ? "Cleaning alone finds no layer worth a visit at any interval tried"
      : "Cleaning alone was not tried";
  const longest = Math.max(...cleaned.filter(keepsLimits).map(intervalOf));
  const every = (months: number) => (months === 1 ? "every month" : `every ${months} months`);
  const where = cleaned.length < tried.length ? ", where it finds a layer worth a visit," : "";
  const least = `Cleaning alone${where} costs least ${every(intervalOf(best))}, ${format.money(best.yearlyCost)} a year`;
  if (longest < 1) return `${least}; at any interval its layer passes a limit at times`;
  return cleaned.some((each) => !keepsLimits(each) && intervalOf(each) > longest)
    ? `${least}; less often than ${every(longest)} its layer passes a limit at times`
    : least;
}

function table(
  group: PartGroup,
  series: readonly Series[],
  months: readonly number[],
  { context, id }: { context: ReportContext; id: string },
): TableView {
  return {
    id,
    caption: `${group.name}: yearly cost by interval, prices of ${context.priceYear}`,
    head: head(
      num("Months between cleanings"),
      ...series.flatMap(({ label }) => [num(`${label}, a year`), "Limit passed at times, or no visit"]),
    ),
    rows: months.map((each) =>
      row(
        num(String(each)),
        ...series.flatMap((one) => {
          const point = pointAt(one, each);
          return point
            ? [num(context.format.exactMoney(point.yearlyCost)), remarkOf(point) || "none"]
            : [num("–"), "not tried"];
        }),
      ),
    ),
    compact: true,
  };
}
