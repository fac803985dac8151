import { counted } from "../../counted.js";
import { at } from "../../lists.js";
import { type Odds, type OptionOdds, quantileShares } from "../../study/odds/odds.js";
import type { ReportContext } from "../document/context.js";
import { clearPercent, type MoneyScale, moneyScale, percent, percentSpan } from "../words/format.js";
import { baselineOdds, requestedOdds } from "./odds-words.js";

/** A figure with the limits of its interval, or its standard error, beside it. */
interface OddsCell {
  readonly value: string;
  readonly spread: string;
}

/** Options side by side. */
export interface OddsTable {
  readonly id: string;
  readonly caption: string;
  readonly options: readonly string[];
  readonly rows: ReadonlyArray<{ readonly label: string; readonly cells: readonly OddsCell[] }>;
  readonly note: string;
}

/** More options side by side do not fit the page. */
const mostBeside = 4;

/** Tables of all options, so many beside one another; the requested one and that which does nothing come first. */
export function oddsTables(odds: Odds, context: ReportContext): [OddsTable, ...OddsTable[]] {
  const first = [baselineOdds(odds), requestedOdds(odds)];
  const others = odds.options.filter(({ id }) => first.every((each) => each.id !== id));
  const options = [...first, ...others];
  const scale = scaleOf(odds, context);
  const table = (from: number): OddsTable => ({
    id: from === 0 ? "table-odds" : `table-odds-${from / mostBeside + 1}`,
    caption: `What each option costs over ${counted(context.horizon, "year")}, ${scale.unit} of ${context.priceYear}, present value`,
    options: options.slice(from, from + mostBeside).map(({ name }) => name),
    rows: rowsOf(options.slice(from, from + mostBeside), scale, context),
    note: tableNote,
  });
  const more = Array.from({ length: Math.ceil(options.length / mostBeside) - 1 }, (_, index) =>
    table((index + 1) * mostBeside),
  );
  return [table(0), ...more];
}

/** One scale for all present values of the odds. */
export function scaleOf({ options }: Odds, { run }: ReportContext): MoneyScale {
  const largest = Math.max(...options.flatMap(({ cost }) => cost.map(({ value }) => value)));
  return moneyScale(largest, run.document.money.currency);
}

const tableNote =
  "In brackets: 95% simulation error; ±: standard error. Cost of choosing wrongly: cost above that of the best choice for each set of assumptions.";

const shareLabels: Record<(typeof quantileShares)[number], string> = {
  0.1: "10th percentile: 1 in 10 costs less",
  0.5: "Median",
  0.8: "80th percentile: 8 in 10 cost less",
  0.9: "90th percentile: 9 in 10 cost less",
  0.95: "95th percentile: 19 in 20 cost less",
};

function rowsOf(
  options: readonly OptionOdds[],
  scale: MoneyScale,
  { infestedSince }: ReportContext,
): OddsTable["rows"] {
  const line = (label: string, cell: (option: OptionOdds) => OddsCell) => ({
    label,
    cells: options.map(cell),
  });
  const { confidence } = at(options, 0).budget;
  return [
    line("On average", ({ meanCost }) => ({
      value: scale.text(meanCost.value),
      spread: `± ${scale.errorText(meanCost.standardError)}`,
    })),
    ...quantileShares.map((share) =>
      line(shareLabels[share], (option) => spanCell(costAt(option, share), scale)),
    ),
    line(`Annual budget sufficient in ${percent(confidence)} of outcomes`, ({ budget }) =>
      spanCell(budget, scale),
    ),
    line("Average cost of choosing wrongly", ({ regret }) => ({ value: scale.text(regret), spread: "" })),
    ...(infestedSince === undefined
      ? [
          line("Mussels establish", ({ everInfested }) => chanceOfCell(everInfested)),
          line("Infested at the end", ({ infestedAtEnd }) => chanceOfCell(infestedAtEnd)),
        ]
      : []),
    line("Costs less than no program", ({ against }) => (against ? shareCell(against.cheaper) : none)),
    line("Pays on average, of assumption sets", ({ against }) =>
      against ? shareCell(against.worthIt) : none,
    ),
  ];
}

const none: OddsCell = { value: "–", spread: "" };

/** @throws Error where a share that is always told is missing */
export function costAt({ name, cost }: OptionOdds, share: (typeof quantileShares)[number]) {
  const found = cost.find((each) => each.share === share);
  if (!found)
    throw new Error(`odds of “${name}” hold no cost at ${share}; allowed: all of ${quantileShares}`);
  return found;
}

function spanCell(quantile: { value: number; low: number; high: number }, scale: MoneyScale): OddsCell {
  return {
    value: scale.text(quantile.value),
    spread: `(${scale.text(quantile.low)}–${scale.text(quantile.high)})`,
  };
}

/** Chances of an infestation are told as on the first page: however small. */
function chanceOfCell({ value, low, high }: { value: number; low: number; high: number }): OddsCell {
  return { value: percent(value), spread: `(${percent(low)}–${percent(high)})` };
}

function shareCell(share: { value: number; low: number; high: number }): OddsCell {
  return { value: clearPercent(share.value), spread: `(${percentSpan(share)})` };
}
