import { z } from "zod";
import type { BalanceState } from "../../app/answers/questions.js";
import type { Studies } from "../../app/studies.js";
import type { StudyEntry } from "../../app/study-entry.js";
import { mayOnlyRead } from "../../app/visitor.js";
import { draftOf } from "../../editor/draft.js";
import { ownValues } from "../../editor/own-value.js";
import {
  type AssumptionFilter,
  type AssumptionReading,
  type AssumptionRow,
  assumptionFilters,
  assumptionRow,
  assumptionRows,
} from "../../report/document/assumptions-list.js";
import { formatter } from "../../report/words/format.js";
import { type StudyUnits, usualIn } from "../../report/words/usual-and-own.js";
import type { Swing } from "../../study/odds/assumption-swings.js";
import { workbenchPage } from "../pages/workbench-page.js";
import { ownShown, unitsOf } from "./assumption-units.js";

/** How much the assumptions move, or why that is not known yet. */
export type SwingState = { readonly swings: readonly Swing[] } | "under way" | "unfinished";

interface Search {
  readonly words: string;
  readonly filter: AssumptionFilter;
}

const search = z.object({
  q: z.string().trim().max(200).catch(""),
  show: z.enum(assumptionFilters).catch("used"),
});

export function readSearch(query: unknown): Search {
  const { q, show } = search.parse(query);
  return { words: q, filter: show };
}

/** Assumptions that a study's figures rest on; undefined for one that cannot be computed yet. */
export const usedIn = (balance: BalanceState): ReadonlySet<string> | undefined =>
  balance.line ? new Set(balance.used) : undefined;

const filterNames: Readonly<Record<AssumptionFilter, string>> = {
  used: "that this study uses",
  judged: "judged, without a source",
  own: "with an own value",
  all: "all",
};

interface AssumptionsOf {
  readonly entry: StudyEntry;
  readonly studies: Studies;
  readonly balance: BalanceState;
}

export function assumptionsPage(
  { entry, studies, balance }: AssumptionsOf,
  swings: SwingState,
  { words, filter, author }: Search & { readonly author: string },
): object {
  const own = ownValues(draftOf(entry.text, entry.fileName).document);
  const units = unitsOf(entry, studies);
  const reading = { assumptions: studies.assumptions, used: usedIn(balance), own };
  const { rows, shown } = foundRows(reading, filter, words);
  const href = (id: string) => `/studies/${entry.id}/assumptions/${id}`;
  return workbenchPage(
    { entry, balance, part: "assumptions", title: "Assumptions" },
    {
      study: entry.id,
      readOnly: entry.isExample || mayOnlyRead(),
      base: entry.revision,
      author,
      own: [...own].map(([id, { value, reason }]) => {
        const known = studies.assumptions.entries.get(id);
        const row = known && assumptionRow(known, reading);
        const link = row ? href(id) : undefined;
        return {
          id,
          name: row?.name ?? id,
          usual: known ? usualIn(known, units).value : "unknown",
          value: ownShown({ id }, { value, reason }, studies.assumptions, units),
          reason,
          link,
        };
      }),
      ranked: rankedView(swings, entry, studies, { ...reading, units }),
      isUnderWay: swings === "under way",
      search: {
        words,
        filters: assumptionFilters.map((each) => ({
          value: each,
          label: filterNames[each],
          isChosen: each === shown,
        })),
      },
      beyond: shown === filter ? "" : filterNames[filter],
      count: `${rows.length} of ${studies.assumptions.entries.size} assumptions`,
      none: noneText({ listed: rows.length, all: studies.assumptions.entries.size }, words),
      rows: rows.map((row) => ({
        ...{ ...row, ...shownIn(row, studies, units), link: href(row.id) },
      })),
    },
  );
}

/** What is said where no row has the words typed. @param listed rows that a script narrows */
function noneText({ listed, all }: { listed: number; all: number }, words: string): string {
  if (listed === 0 && words === "") return `This list is empty. Choose another to see some of the ${all}.`;
  const others = listed > 0 && listed < all ? `; “Search” looks through all ${all}` : "";
  return `None of the ${listed || all} assumptions searched has all these words in its name, other words for it, note, source or value. Try fewer words, or other words of the trade${others}.`;
}

/** What holds the words; where nothing in the filter does, among all. */
function foundRows(reading: AssumptionReading, filter: AssumptionFilter, words: string) {
  const rows = assumptionRows(reading, filter, words);
  if (rows.length > 0 || words === "" || filter === "all") return { rows, shown: filter };
  const others = assumptionRows(reading, "all", words);
  return others.length > 0 ? { rows: others, shown: "all" as const } : { rows, shown: filter };
}

/** In the study's units, with what the entry states beside it. */
function shownIn({ id, own, reason = "" }: AssumptionRow, { assumptions }: Studies, units: StudyUnits) {
  const entry = assumptions.entries.get(id);
  if (!entry) return {};
  return {
    ...usualIn(entry, units),
    own: own && ownShown(entry, { value: own, reason }, assumptions, units),
  };
}

const mostRanked = 12;

function rankedView(
  state: SwingState,
  entry: StudyEntry,
  studies: Studies,
  { units, ...reading }: AssumptionReading & { readonly units: StudyUnits },
) {
  if (state === "unfinished" || state === "under way") return { isKnown: false, rows: [], rest: "" };
  const { money, study, options } = studies.document(entry);
  const format = formatter(money.currency, study.units);
  const moving = state.swings.length;
  const requested = options.find(({ id }) => id === study.requestedOption)?.name ?? "";
  return {
    isKnown: true,
    requested,
    rest:
      moving > mostRanked
        ? `${moving - mostRanked} more move it less; those not told move it by less than a cent.`
        : "",
    rows: state.swings.slice(0, mostRanked).flatMap(({ id, width, low, high, ends }, index) => {
      const found = reading.assumptions.entries.get(id);
      if (!found) return [];
      const { name, note, basis, isJudged } = assumptionRow(found, reading);
      return [
        {
          place: index + 1,
          name,
          link: `/studies/${entry.id}/assumptions/${id}`,
          ...usualIn(found, units),
          ...{ note, basis, isJudged },
          width: format.money(width),
          span: `${format.money(low)} to ${format.money(high)}`,
          ends: ends ? `${format.money(ends.low)} to ${format.money(ends.high)}` : "as at these percentiles",
        },
      ];
    }),
  };
}
