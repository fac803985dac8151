import { counted } from "../counted.js";
import { boardView } from "../report/board/board-view.js";
import { headlineChances } from "../report/board/headline-words.js";
import { chanceAtEnd, unitMoney } from "../report/board/weighing.js";
import { type ReportContext, reportContext } from "../report/document/context.js";
import { method } from "../report/document/method.js";
import type { PrintedOdds } from "../report/odds/odds-words.js";
import { structureCosts } from "../report/rack/infestation-view.js";
import { hasRatio, signOf } from "../report/words/balance-signs.js";
import { listedWithin, percent, tenthsOf } from "../report/words/format.js";
import { onlyFollows } from "../report/words/option-kind.js";
import type { StudyRun } from "../study/prepare/compute.js";

/** What a page for a public meeting tells: little, and in plain words. */
export function summaryView(run: StudyRun, printedOdds: PrintedOdds | undefined, edition: string): object {
  const context = reportContext(run, printedOdds?.odds);
  const { study } = run.document;
  const board = boardView(context);
  return {
    title: study.name,
    authority: study.authority,
    prepared: study.prepared,
    invented: study.invented,
    board,
    figures: plainFigures(context) ?? board.figures.map(({ label, value }) => ({ label, value })),
    harm: harm(context),
    bearers: bearers(context),
    leftOut: `The estimate counts what mussels cost pipes, screens, machines, docks and ramps. It leaves out ${listedWithin(plainlyLeftOut, plainlyLeftOut.length)}.`,
    standing: method.standing,
    edition,
  };
}

/** In words that need no explanation; absent where there is no program to weigh. */
function plainFigures(context: ReportContext): Array<{ label: string; value: string }> | undefined {
  const { comparison, format, horizon, infestedSince, headline } = context;
  const requested = context.weighed(context.requested);
  const told = headline && headlineChances(headline);
  if (infestedSince !== undefined || onlyFollows(requested.result)) return undefined;
  const { avoidedLoss, result } = requested;
  return [
    {
      label: `A year of the program${signOf(result.programPerYear) < 0 ? " brings in" : ""}`,
      value: format.money(result.programPerYear.abs()),
    },
    { label: "A year with mussels, once settled in", value: format.money(matureTotal(context)) },
    {
      label: `Chance that mussels establish in ${counted(horizon, "year")}, without the program`,
      value: chanceText(told?.without.everInfested ?? chanceAtEnd(comparison.baseline)),
    },
    {
      label: `Chance that mussels establish in ${counted(horizon, "year")}, with the program`,
      value: chanceText(told?.withIt.everInfested ?? chanceAtEnd(result)),
    },
    ...(signOf(avoidedLoss) >= 0 && hasRatio(requested)
      ? [
          {
            label: `Saved for each ${format.money(1)} spent`,
            value: unitMoney(requested.benefitCostRatio, format.money(1)),
          },
        ]
      : []),
  ];
}

function chanceText(chance: number): string {
  const tenths = tenthsOf(chance);
  if (tenths === "few") return "under 1 in 20";
  return tenths === "most" ? "over 19 in 20" : `about ${tenths} in 10`;
}

const matureTotal = (context: ReportContext) =>
  structureCosts(context).reduce((sum, { matureMean }) => sum + matureMean, 0);

const plainlyLeftOut = ["swimming and fishing", "property values", "native animals", "harm to other lakes"];

/** Structures told by name. */
const mostNamed = 4;

function harm(context: ReportContext): string {
  const costs = structureCosts(context)
    .filter(({ matureMean }) => matureMean > 0)
    .sort((a, b) => b.matureMean - a.matureMean);
  const [largest] = costs;
  if (!largest) return "On this estimate mussels would cost no structure of the lake anything.";
  const named = costs
    .slice(0, mostNamed)
    .map(({ name, matureMean }) => `${name} (${context.format.money(matureMean)})`);
  const once = context.infestedSince === undefined ? "Once they have settled in, they would" : "They";
  return `${once} cost about ${context.format.money(matureTotal(context))} a year, most of it at ${listedWithin(named, named.length)}.`;
}

function bearers({ requested, comparison }: ReportContext): string {
  const all = comparison.baseline.presentValue.infestation;
  const paying = [...requested.bearers]
    .filter(({ lossWithout }) => lossWithout.greaterThan(0))
    .sort((a, b) => b.lossWithout.comparedTo(a.lossWithout));
  if (paying.length === 0) return "";
  const shares = paying
    .slice(0, mostNamed)
    .map(({ name, lossWithout }) => `${name} (${percent(lossWithout.dividedBy(all).toNumber())})`);
  return `Without a program the cost would fall on ${listedWithin(shares, shares.length)}.`;
}
