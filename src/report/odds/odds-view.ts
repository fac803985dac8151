import type { ReportContext } from "../document/context.js";
import type { ChartView, TableView } from "../words/view-types.js";
import { distributionsTable } from "./distributions-table.js";
import { exceedance } from "./exceedance-chart.js";
import { fan } from "./fan-chart.js";
import { groupsTable, notInOdds, oddsMethod } from "./odds-method.js";
import { informationTable, informationText, ranksTable } from "./odds-sensitivity.js";
import { type OddsTable, oddsTables } from "./odds-table.js";
import { cheaperSentence, outcomeNote, type PrintedOdds, worthItSentence } from "./odds-words.js";
import { tornado } from "./tornado-chart.js";

/** How sure the study is: one page, and what stands behind it in the appendix. */
export interface OddsView {
  readonly sentences: readonly string[];
  readonly note: string;
  readonly table: OddsTable;
  readonly curves: readonly ChartView[];
  /** Absent where nothing moves the net benefit. */
  readonly tornado: ChartView | undefined;
  readonly sensitivitySentences: readonly string[];
  readonly information: string;
  readonly method: readonly string[];
  readonly notInIt: readonly string[];
  /** Options that the page has no room for. */
  readonly moreOptions: readonly OddsTable[];
  /** The first rows of what matters, in print. */
  readonly shown: readonly TableView[];
  /** All, for the tables as files. */
  readonly tables: readonly TableView[];
}

const mostRows = 10;

export function oddsView({ odds, sensitivitySentences }: PrintedOdds, context: ReportContext): OddsView {
  const [table, ...moreOptions] = oddsTables(odds, context);
  const curves = [exceedance(odds, context), fan(odds, context)];
  const bars = tornado(odds, context);
  return {
    sentences: [cheaperSentence(odds), worthItSentence(odds)],
    note: outcomeNote(context),
    table,
    curves: curves.map(({ chart }) => chart),
    tornado: odds.matters.tornado.length === 0 ? undefined : bars.chart,
    sensitivitySentences,
    information: informationText(odds, context),
    method: oddsMethod(odds, context),
    notInIt: notInOdds,
    moreOptions,
    shown: (odds.matters.tornado.length === 0 ? [] : [bars.table, informationTable(odds, context)]).map(
      (each) => ({ ...each, id: `${each.id}-first`, rows: each.rows.slice(0, mostRows) }),
    ),
    tables: [
      groupsTable(context),
      distributionsTable(context),
      ...(odds.matters.tornado.length === 0 ? [] : [bars.table, informationTable(odds, context)]),
      ...(odds.matters.ranks.length === 0 ? [] : [ranksTable(odds, context)]),
      ...curves.map((each) => each.table),
    ],
  };
}
