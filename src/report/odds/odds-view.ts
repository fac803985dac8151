import type { ReportContext } from "../document/context.js";
import { chanceByYearTable } from "../pictures/chance-panels.js";
import { type OddsPictures, oddsPictures } from "../pictures/odds-pictures.js";
import type { ChartView, TableView } from "../words/view-types.js";
import { distributionsTable } from "./distributions-table.js";
import { exceedance } from "./exceedance-chart.js";
import { fan } from "./fan-chart.js";
import { groupsTable, oddsMethod } from "./odds-method.js";
import { informationTable, informationText, ranksTable } from "./odds-sensitivity.js";
import { type OddsTable, oddsTables } from "./odds-table.js";
import { cheaperSentence, outcomeNote, type PrintedOdds, worthItSentence } from "./odds-words.js";
import { tornadoTable } from "./tornado-table.js";

/** How sure the study is: one page, and what stands behind it in the appendix. */
export interface OddsView {
  readonly sentences: readonly string[];
  readonly note: string;
  readonly table: OddsTable;
  /** The pictures of the board's part. */
  readonly pictures: OddsPictures;
  readonly curves: readonly ChartView[];
  readonly sensitivitySentences: readonly string[];
  readonly information: string;
  readonly method: readonly string[];
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
  const bars =
    odds.matters.tornado.length === 0 ? [] : [tornadoTable(odds, context), informationTable(odds, context)];
  return {
    sentences: [cheaperSentence(odds), worthItSentence(odds)],
    note: outcomeNote(context),
    table,
    pictures: oddsPictures(odds, context.run.document),
    curves: curves.map(({ chart }) => chart),
    sensitivitySentences,
    information: informationText(odds, context),
    method: oddsMethod(odds, context),
    moreOptions,
    shown: bars.map((each) => ({ ...each, id: `${each.id}-first`, rows: each.rows.slice(0, mostRows) })),
    tables: [
      groupsTable(context),
      distributionsTable(context),
      ...bars,
      ...(odds.matters.ranks.length === 0 ? [] : [ranksTable(odds, context)]),
      ...curves.map((each) => each.table),
      ...(context.infestedSince === undefined ? [chanceByYearTable(odds, context.run.document.money)] : []),
    ],
  };
}
