import { at, sumOf } from "../../lists.js";
import type { ReportContext } from "../document/context.js";
import { addingUp, stepFor } from "../words/adding-up.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import { boardMoney } from "./board-money.js";

/** What each bearer loses, saves, pays now and would pay in proportion, for the requested option. */
export function bearersTable(context: ReportContext): TableView {
  const { requested, format } = context;
  const payers = payersOf(context);
  const columns = columnsOf.map((read) => payers.map(read));
  const rounded = columns.map((column) => addingUp(column, stepFor(column)));
  const { exactMoney } = boardMoney(format);
  const partners = context.request?.funded.sources.length ?? 0;
  const amount = (value: number) => num(value === 0 ? "–" : exactMoney(value));
  return {
    id: "table-bearers",
    caption: `Who pays: “${requested.result.option.name}”, present values at central values`,
    head: head(
      "Payer",
      num("Damage without"),
      num("Damage avoided"),
      num("Pays now"),
      num("Share if split by benefit"),
    ),
    rows: payers.map(({ name }, index) => row(name, ...rounded.map(({ parts }) => amount(at(parts, index))))),
    compact: true,
    total: row("All", ...rounded.map(({ sum }) => amount(sum))),
    note: `${partners > 0 ? "Pays now: grants and partners of the request by their terms, and the rest by who asks. " : ""}Share if split by benefit: each payer's part of the added cost is its part of the damage avoided. Who should pay is for the board to decide. Each column is rounded to three or four figures of its largest amount, adjusted so that totals match.`,
  };
}

interface Payer extends Record<"lossWithout" | "avoided" | "paysNow" | "proportionalShare", number> {
  readonly name: string;
}

/** With the grants and partners of the request, which take what they pay off the payer of the program. */
function payersOf({ requested, request, comparison }: ReportContext): Payer[] {
  const partners = request?.partners ?? [];
  const paidBy = (id: string) =>
    sumOf(partners.filter((partner) => partner.id === id).map(({ presentValue }) => presentValue));
  const { programBearer } = comparison.input.money;
  const known = requested.bearers.map((bearer) => ({
    name: bearer.name,
    lossWithout: bearer.lossWithout.toNumber(),
    avoided: bearer.avoided.toNumber(),
    paysNow:
      bearer.paysNow.toNumber() +
      paidBy(bearer.id) -
      (bearer.id === programBearer ? sumOf(partners.map(({ presentValue }) => presentValue)) : 0),
    proportionalShare: bearer.proportionalShare.toNumber(),
  }));
  const others = partners.filter(({ id }) => !requested.bearers.some((bearer) => bearer.id === id));
  const names = [...new Set(others.map(({ name }) => name))];
  return [
    ...known,
    ...names.map((name) => ({
      name,
      lossWithout: 0,
      avoided: 0,
      paysNow: sumOf(others.filter((each) => each.name === name).map(({ presentValue }) => presentValue)),
      proportionalShare: 0,
    })),
  ];
}

const columnsOf: ReadonlyArray<(each: Payer) => number> = [
  ({ lossWithout }) => lossWithout,
  ({ avoided }) => avoided,
  ({ paysNow }) => paysNow,
  ({ proportionalShare }) => proportionalShare,
];
