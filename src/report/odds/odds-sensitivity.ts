import type { Information, Odds } from "../../study/odds/odds.js";
import type { ReportContext } from "../document/context.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import { inputName, numberedName } from "./odds-inputs.js";

const mostKnown = 3;
/** Standard errors by which a value must be above nothing to be told to the board. */
const clearErrors = 2;

/** What knowing an input exactly is worth, of the few that are worth most. */
export function informationText({ information }: Odds, { format }: ReportContext): string {
  const clear = information.filter(({ value, standardError }) => value > clearErrors * standardError);
  const [first, ...others] = clear.slice(0, mostKnown);
  if (!first) {
    return "Knowing any one input exactly before deciding is worth nothing that these simulated outcomes could tell from zero.";
  }
  const worth = ({ name, value }: Information) => `“${inputName(name)}” up to ${format.money(value)}`;
  const rest = others.length === 0 ? "" : ` So it is for ${others.map(worth).join(" and for ")}.`;
  return `Knowing “${inputName(first.name)}” exactly before deciding is worth up to ${format.money(first.value)} ± ${format.money(first.standardError)}; a measurement leaves doubt and is worth less.${rest}`;
}

export function informationTable(
  { information, perfectInformation, perfectInformationError }: Odds,
  context: ReportContext,
): TableView {
  const { exactMoney } = context.format;
  return {
    id: "table-information",
    caption: "What knowing an input exactly before deciding is worth on average, at most",
    head: head("Input", num("Worth"), num("Standard error")),
    rows: information.map(({ id, name, value, standardError }) =>
      row(numberedName(id, name, context), num(exactMoney(value)), num(exactMoney(standardError))),
    ),
    total: row(
      "Everything but chance",
      num(exactMoney(perfectInformation)),
      num(exactMoney(perfectInformationError)),
    ),
    compact: true,
  };
}

/** Rank correlation of each input with the net benefit. */
export function ranksTable({ matters: sensitivity }: Odds, context: ReportContext): TableView {
  return {
    id: "table-ranks",
    caption: "Rank correlation of each input with the net benefit, strongest first",
    head: head("Input", num("Spearman's")),
    rows: sensitivity.ranks.map(({ id, name, correlation }) =>
      row(numberedName(id, name, context), num(correlation.toFixed(2))),
    ),
    note: "From −1 to 1; near 0, the input and the net benefit move without regard to one another.",
    compact: true,
  };
}
