import type { ReportContext } from "../document/context.js";
import { type AccountBalance, headlineOption } from "../document/headline.js";
import { clearPercent, ratio } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";

/** The requested option in both accounts, and in the first without what staff entered; absent without odds. */
export function accountsTable({ headline, format }: ReportContext): TableView | undefined {
  const balance = headline && headlineOption(headline, headline.requested).balance;
  if (!balance) return undefined;
  const account = (name: string, { benefitCostRatio, netBenefit, paysForItself }: AccountBalance) =>
    row(
      name,
      num(ratioText(benefitCostRatio)),
      num(format.money(netBenefit)),
      num(clearPercent(paysForItself)),
    );
  const without = (name: string, avoided: number, without: number | undefined) =>
    avoided === 0 ? [] : [row(name, num(ratioText(without)), num(""), num(""))];
  const { avoided, ratioWithout, withOther } = balance;
  return {
    id: "table-accounts",
    caption: "Two accounts of the damage avoided, on average",
    head: head(
      "Account",
      num(`Avoided per ${format.money(1)} spent`),
      num("Net benefit"),
      num("Chance that it pays"),
    ),
    rows: [
      account("Structures alone", balance),
      ...without("… without duties entered by staff", avoided.duty, ratioWithout.duty),
      ...without("… without policies of choice", avoided.policy, ratioWithout.policy),
      ...(withOther ? [account("With the other losses entered", withOther)] : []),
    ],
    compact: true,
    ...(withOther ? {} : { note: "Staff entered no other losses: no second account." }),
  };
}

const ratioText = (value: number | undefined) => (value === undefined ? "–" : ratio(value));

/** Where the two accounts answer differently, a sentence that says so. */
export function reversedText({ headline }: Pick<ReportContext, "headline">): string[] {
  const balance = headline && headlineOption(headline, headline.requested).balance;
  if (!balance?.withOther || balance.netBenefit > 0 === balance.withOther.netBenefit > 0) return [];
  return [
    balance.netBenefit > 0
      ? "The other losses entered by staff reverse the answer: with them it costs more than it saves on average."
      : "The other losses entered by staff reverse the answer: with them it pays on average.",
  ];
}
