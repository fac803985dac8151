import type { StudyDocument } from "../../study/format/schema.js";
import type { ProgramSearch, TypedPoint } from "../../study/search/result.js";
import { axis, safeJson } from "../print/chart-parts.js";
import { moneyScale, percent } from "../words/format.js";
import { colours } from "../words/palette.js";
import type { ChartView } from "../words/view-types.js";

/** Cost a year against the chance of infestation: efficient programs as points on a line, the options beside them. */
export function frontierChart(result: ProgramSearch, { money }: StudyDocument): ChartView {
  const costs = [...result.frontier, ...result.typed].map(({ costPerYear }) => costPerYear);
  const scale = moneyScale(Math.max(...costs), money.currency);
  const at = ({ costPerYear, chance }: Pick<TypedPoint, "costPerYear" | "chance">) => ({
    x: scale.scaled(costPerYear),
    y: chance * 100,
  });
  const title = titleOf(result, scale);
  return {
    id: "chart-search-frontier",
    title,
    alternative: `Line chart of the chance of infestation against the cost a year, for ${result.frontier.length} efficient programs and the ${result.typed.length} options of the study. ${title}.`,
    source: `Mean over ${result.futures.toLocaleString("en-US")} simulated outcomes; cost in full, less fees and grants.`,
    height: 300,
    tableId: "table-search-frontier",
    json: safeJson({
      type: "line",
      data: {
        datasets: [
          {
            label: "Efficient programs",
            data: result.frontier.map(at),
            borderColor: colours.water,
            backgroundColor: colours.water,
            borderWidth: 1.5,
            pointRadius: 4,
          },
          ...result.typed.map((option, index) => ({
            label: option.name,
            data: [at(option)],
            showLine: false,
            borderColor: option.mark === "nothing" ? colours.shell : colours.brick,
            backgroundColor: option.mark === "requested" ? colours.brick : colours.paper,
            borderWidth: 2,
            pointStyle: shapes[index % shapes.length],
            pointRadius: 7,
          })),
        ],
      },
      options: {
        plugins: { legend: { labels: { usePointStyle: true } } },
        scales: {
          x: axis(`Cost a year, ${scale.unit}`, { type: "linear", beginAtZero: true }),
          y: axis(`Chance of infestation in ${money.horizon} years, %`, { beginAtZero: true }),
        },
      },
    }),
  };
}

const shapes = ["rectRot", "triangle", "rect", "circle", "star", "crossRot"] as const;

function titleOf({ typed, frontier }: ProgramSearch, scale: ReturnType<typeof moneyScale>): string {
  const requested = typed.find(({ mark }) => mark === "requested");
  const better = frontier.find(({ id }) => id === requested?.dominatedBy);
  if (!requested || !better) return "More each year buys less and less chance";
  return `“${requested.name}” has a chance of ${percent(requested.chance)} for ${scale.text(requested.costPerYear)} ${scale.unit} a year; ${percent(better.chance)} is had for ${scale.text(better.costPerYear)}`;
}
