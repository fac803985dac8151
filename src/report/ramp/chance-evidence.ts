import type { Source } from "../../assumptions/entry.js";
import type { TracedChance, TracedLakes, TracedRegion } from "../../study/traced/traced-chance.js";
import type { ReportContext } from "../document/context.js";
import { percent, significant } from "../words/format.js";
import { groupRow, head, num, row, type TableView } from "../words/view-types.js";

/** Each region: what was counted, and what the others predict of it. */
export function regionsTable({ run }: ReportContext, { regions }: TracedChance): TableView {
  const readIn = regions.map(({ region, sources }) => `${region.name}: ${markedSources(sources, run)}.`);
  return {
    id: "table-chance-regions",
    caption: "Regions counted: boats, foundings, and what the other regions predict of each",
    head: head(
      "Region, years",
      num("Fouled boats stopped"),
      num("Met an inspector (judged)"),
      num("Bound for clean water (judged)"),
      num("Fouled launches: 10th, 50th, 90th percentile"),
      num("Foundings seen"),
      num("Predicted if left out"),
      "Inside",
      num("Chance per fouled launch without it"),
    ),
    rows: regions.map(regionRow),
    note: `Fouled launches got past the checks; two numbers of foundings stand where another way may explain one. Read in (t: the text itself, a: its abstract, p: press or another second hand, n: not read): ${readIn.join(" ")}`,
    compact: true,
  };
}

function regionRow({ region, intercepted, coverage, destined, backtest }: TracedRegion) {
  const { exposure, predicted, seen, isInside, newRegion } = backtest;
  return row(
    `${region.name}, ${region.period}`,
    num(intercepted ? spanText(intercepted) : "moves counted"),
    num(coverage ? shareSpan(coverage) : "–"),
    num(shareSpan(destined)),
    num([exposure.p10, exposure.p50, exposure.p90].map((each) => significant(each, 3)).join(", ")),
    num(seenText(seen)),
    num(spanText(predicted)),
    isInside ? "yes" : "no",
    num(percent(newRegion.p50)),
  );
}

const spanText = ({ low, high }: { readonly low: number; readonly high: number }) =>
  low === high ? significant(low, 4) : `${significant(low, 4)}–${significant(high, 4)}`;

const shareSpan = ({ low, high }: { readonly low: number; readonly high: number }) =>
  `${percent(low, 3).replace("%", "")}–${percent(high, 3)}`;

/** Every number of foundings that the texts allow. */
function seenText(seen: TracedRegion["backtest"]["seen"]): string {
  const counts = [...new Set(seen.map(({ count }) => count))].sort((one, other) => one - other);
  return counts.join(" or ");
}

/** How many regions are as the others predict, and by name those that are not. */
export function backtestSentence({ regions }: TracedChance): string {
  const outside = regions.filter(({ backtest }) => !backtest.isInside);
  const inside = `Of ${regions.length} regions, each predicted from the others, ${regions.length - outside.length} saw as many foundings as predicted with a chance of 80%`;
  const weak = "The test is weak: most regions predict none and have seen none.";
  if (outside.length === 0) return `${inside}. ${weak}`;
  const named = outside.map(
    ({ region, backtest }) =>
      `${region.name} (${region.period}) did not: ${spanText(backtest.predicted)} predicted, ${seenText(backtest.seen)} seen`,
  );
  return `${inside}; ${named.join("; ")}. ${weak}`;
}

const marks: Readonly<Record<Source["read"], string>> = {
  text: "t",
  abstract: "a",
  secondary: "p",
  "not read": "n",
};

/** Keys of sources, each with how it was read; what is the project's own judgement has no text. */
const markedSources = (keys: readonly string[], run: ReportContext["run"]): string =>
  keys
    .filter((key) => key !== judgement)
    .map((key) => `${key} ${marks[run.assumptions.sources.get(key)?.read ?? "not read"]}`)
    .join(", ");

const judgement = "project-judgement";

const groupNames: Readonly<Record<TracedLakes["row"]["group"], string>> = {
  open: "Open regions: no checks of boats",
  inspected: "Regions with checks",
  "all lakes": "All lakes, most without a ramp: shown, not estimated from",
};

/** Lakes followed for years, by group. */
export function lakesTable({ run }: ReportContext, { lakes }: TracedChance): TableView {
  const groups = [...new Set(lakes.map(({ row: { group } }) => group))];
  return {
    id: "table-chance-lakes",
    caption: "Lakes counted: how many became infested in how many years",
    head: head(
      "Lakes",
      num("Infested"),
      num("Lakes"),
      num("Lake-years"),
      num("Rate a year"),
      num("Predicted if left out"),
      "Read in",
    ),
    rows: groups.flatMap((group) => [
      groupRow(groupNames[group]),
      ...lakes
        .filter(({ row: { group: own } }) => own === group)
        .map(({ row: counted, lakeYears, rate, backtest }) =>
          row(
            `${counted.name}, ${counted.period}`,
            num(String(counted.infested)),
            num(significant(counted.lakes, 5)),
            num(significant(lakeYears, 3)),
            num(percent(rate)),
            num(backtest ? `${spanText(backtest.predicted)}${backtest.isInside ? "" : ", outside"}` : "–"),
            counted.source === judgement ? "judged" : markedSources([counted.source], run),
          ),
        ),
    ]),
    note: "Rate: −ln(1 − infested/lakes) over the years. Marks as in the table before.",
    compact: true,
  };
}
