import { counted } from "../../counted.js";
import type { OptionResult } from "../../model/option.js";
import type { OptionBalance } from "../../model/option-balance.js";
import { appendixLetter } from "../../study/format/report-schema.js";
import { allOptions, type ReportContext, tracedOf } from "../document/context.js";
import { percent } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import { detectionCostTable, watchTable } from "./detection-tables.js";
import { yearsUnnoticed } from "./detection-words.js";

export interface DetectionView {
  readonly intro: string;
  readonly chances: TableView;
  readonly watch: TableView;
  readonly costs: TableView;
  readonly origins: readonly string[];
  readonly cautions: readonly string[];
}

/** Absent where no option says how it watches for mussels or what it then tries, or the lake is infested. */
export function detectionView(context: ReportContext): DetectionView | undefined {
  if (!isWatched(context)) return undefined;
  return {
    intro:
      "Mussels may live in a lake for years before anybody finds them. While nobody knows of them, they cause losses but no work yet; work, protection and duties begin when they are detected: in a sample, or by the first harm that cannot be overlooked.",
    chances: chancesTable(context),
    watch: watchTable(context),
    costs: detectionCostTable(context),
    origins: origins(context),
    cautions: cautions(context),
  };
}

const isWatched = (context: ReportContext): boolean =>
  context.infestedSince === undefined &&
  allOptions(context).some(({ option }) => option.monitoring !== undefined || option.response !== undefined);

/** For the board, in one sentence: how long mussels stay unnoticed, and what trying to be rid of them gives. */
export function detectionSentence(context: ReportContext): string | undefined {
  if (!isWatched(context)) return undefined;
  const { comparison, requested, format } = context;
  const { option } = requested.result;
  const without = `${yearsUnnoticed(tracedOf(context, comparison.baseline.option.id))} under “${comparison.baseline.option.name}”`;
  const watched = `Mussels that establish would be detected ${yearsUnnoticed(tracedOf(context, requested.result.option.id))} under “${option.name}” and ${without}, on average`;
  const { response } = option;
  return response === undefined
    ? `${watched}.`
    : `${watched}; an eradication attempt, at ${format.money(response.cost)}, succeeds ${percent(response.chance)} of the time${worthText(requested, context)}.`;
}

/** Whether the attempts are worth their cost, in present value over the horizon. */
function worthText(balance: OptionBalance, { format, horizon }: ReportContext): string {
  const benefit = balance.responseBenefit();
  if (benefit === undefined) return "";
  const size = format.money(benefit.abs());
  return benefit.isNegative()
    ? ` and costs, over ${counted(horizon, "year")}, ${size} more than it saves`
    : ` and saves, over ${counted(horizon, "year")}, ${size} more than it costs`;
}

const mostYears = 12;
const asGoodAsCertain = 0.995;

/** By year of the infestation, the chance to have noticed it by the end of that year. */
function chancesTable(context: ReportContext): TableView {
  const { traced, horizon } = context;
  const options = allOptions(context);
  const chances = traced.options.map(({ noticedBy }) => noticedBy.slice(0, mostYears));
  const certain = Math.max(...chances.map((each) => each.findIndex((chance) => chance >= asGoodAsCertain)));
  const isOpen = chances.some((each) => (each.at(-1) ?? 0) < asGoodAsCertain);
  const years = isOpen ? Math.min(horizon, mostYears) : certain + 1;
  return {
    id: "table-noticed",
    caption: "Chance that mussels have been detected by the end of each year of an infestation",
    head: head(
      "Year",
      num("Mean density, share of capacity"),
      ...options.map(({ option }) => num(option.name)),
    ),
    rows: Array.from({ length: years }, (_, year) =>
      row(
        String(year + 1),
        num((traced.years[year]?.meanDensity ?? 0).toFixed(3)),
        ...chances.map((each) => num(percent(each[year] ?? 1))),
      ),
    ),
    note: chancesNote(options, context),
  };
}

function chancesNote(options: readonly OptionResult[], context: ReportContext): string {
  const harmAge = options.find(({ detection }) => detection.firstHarmAge !== undefined)?.detection
    .firstHarmAge;
  const number = context.assumptionNumber("detection.first-harm");
  const harm =
    harmAge === undefined
      ? ""
      : ` From year ${harmAge + 1} on they are detected for certain: that is the first in which they cost one structure more than assumption ${number}.`;
  const samples = options.some(({ option }) => option.monitoring && !option.monitoring.noticedWithin)
    ? ` How soon samples find mussels is from the age of those at first finds elsewhere: appendix ${appendixLetter("assumptions")} has the chances.`
    : "";
  return `Year 1 is that of establishment.${samples}${harm}`;
}

function origins({ run }: ReportContext): string[] {
  const watching = run.document.options.flatMap(({ monitoring }) => (monitoring ? [monitoring.origin] : []));
  const trying = run.document.options.flatMap(({ response }) =>
    response ? [`Origin of “${response.name}”: ${response.origin}.`] : [],
  );
  return [...[...new Set(watching)].map((origin) => `Origin of the watching: ${origin}.`), ...trying];
}

/** What must be settled before people go on the water to look for mussels, or anything is put in it against them. */
function cautions(context: ReportContext): string[] {
  const responses = context.run.document.options.flatMap(({ response }) => (response ? [response] : []));
  const looking = [
    "Searches. Divers near intakes, gates and dams can be drawn in: lock out pumps, gates and units, and dive under the local diving code. Nobody samples alone from a boat, on cold water or on ice.",
    "Finds. A trace of DNA or a single larva may have been carried in from elsewhere: have a second laboratory confirm it before money is spent or the public is told. Clean nets and boats between waters, so that sampling does not spread mussels.",
  ];
  const trying = [
    "Permits. What is put in water against mussels is a pesticide in law: it needs a registered product, a discharge permit and a licensed applicator, and takes weeks to approve unless it is settled before.",
    "Drinking water. Tell every supplier that draws from the lake and its outflow; close intakes while a treatment lasts and test the water before they open.",
    "Other life. Copper and potassium kill native mussels and snails, copper at higher doses fish as well. Protected species may rule a treatment out.",
    "Chances. Attempts have often cleared what they treated and missed what they did not: four harbours of Lake Winnipeg, declared clear after a treatment for 500,000 CAD in 2014, had mussels again [winnipeg-2014]; a review of 33 projects in 23 lakes asks for treated areas that are large enough and searches for all stages of life [dahlberg-2023].",
  ];
  const own = responses.flatMap(({ name, cautions: text }) => (text === "" ? [] : [`“${name}”. ${text}`]));
  return responses.length === 0 ? looking : [...looking, ...trying, ...own];
}
