import type { StudyEntry } from "../../app/study-entry.js";
import type { Assumption } from "../../assumptions/entry.js";
import { idOf } from "../../editor/form-node.js";
import { isInPart, studyParts } from "../../editor/parts.js";
import { capitalised, formatter, percent } from "../../report/words/format.js";
import type { StudyDocument } from "../../study/format/schema.js";
import type { FuturesOdds, Odds } from "../../study/odds/odds.js";
import { replaceFirst } from "../../study/short/replace-first.js";
import { typicalPlacesIn } from "../../study/short/typical-places.js";

interface FirstEstimate {
  readonly entry: StudyEntry;
  readonly document: StudyDocument;
  readonly odds: Odds | undefined;
}

/** What is said of a study that rests on typical values: its range, how much of it they make, and what to replace. */
export function firstView(
  { entry, document, odds }: FirstEstimate,
  entries: ReadonlyMap<string, Assumption>,
): object | undefined {
  const places = typicalPlacesIn(document, document.study.typical);
  if (places.length === 0) return undefined;
  const study = `/studies/${entry.id}`;
  const links = {
    ...{ here: `${study}/first`, json: `${study}/odds.json`, report: `${study}/report` },
    checklist: "/help",
  };
  const count = places.length;
  if (!odds) return { links, count, range: undefined, rows: [], foremost: [] };
  const money = formatter(document.money.currency, document.study.units);
  const { matters } = odds;
  const rows = replaceFirst(document, matters, entries).map(({ name, path, find, moves }) => ({
    name: capitalised(name),
    find,
    href: fieldAddress(entry.id, path),
    moves: moves === undefined ? "" : money.money(moves),
  }));
  return {
    links,
    count,
    range: rangeText(odds, money),
    share: matters.typicalShare === undefined ? undefined : percent(matters.typicalShare),
    meter: matters.typicalShare,
    rows,
    foremost: rows.slice(0, mostForemost),
  };
}

/** Of the values to replace, on the page of the answer. */
const mostForemost = 3;

const ends = { low: 0.1, high: 0.9 };

/** "between −$1.2 million and $0.4 million": what eight in ten simulated outcomes lie between. */
export function rangeText({ options, requested }: FuturesOdds, money: ReturnType<typeof formatter>) {
  const option = options.find(({ id }) => id === requested);
  const at = (share: number) => option?.against?.netBenefits.find((each) => each.share === share)?.value;
  const [low, high] = [at(ends.low), at(ends.high)];
  if (low === undefined || high === undefined || !option) return undefined;
  const written = (value: number) => money.money(value).replace("-", "−");
  return { name: option.name, low: written(low), high: written(high) };
}

/** The input of a value in the full form. */
function fieldAddress(id: string, path: readonly (string | number)[]): string {
  const part = studyParts.find((each) => isInPart(each, path));
  const row = part?.keys.length === 0 ? `/${path[1]}` : "";
  return `/studies/${id}/edit/${part?.id ?? "names"}${row}#${idOf(path)}`;
}
