import type { ReportContext } from "../document/context.js";
import { type AccountBalance, headlineOption } from "../document/headline.js";
import { clearPercent, ratio } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";

/** The requested option in both accounts; absent without odds. */
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
  const { withOther } = balance;
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
      ...(withOther ? [account("With the other losses entered", withOther)] : []),
    ],
    compact: true,
    ...(withOther ? {} : { note: "Staff entered no other losses: no second account." }),
  };
}

/** The benefit–cost ratio without what staff entered of the damage; empty without odds, or where they entered none. */
export function enteredText({ headline }: Pick<ReportContext, "headline">): string {
  const balance = headline && headlineOption(headline, headline.requested).balance;
  if (!balance) return "";
  const { avoided, ratioWithout } = balance;
  const all = ratioText(balance.benefitCostRatio);
  const parts = [
    ...(avoided.duty === 0 || ratioText(ratioWithout.duty) === all
      ? []
      : [`${ratioText(ratioWithout.duty)} without the duties that staff entered`]),
    ...(avoided.policy === 0 || ratioText(ratioWithout.policy) === all
      ? []
      : [`${ratioText(ratioWithout.policy)} without policies of choice`]),
  ];
  return parts.length === 0 ? "" : `Its benefit–cost ratio of ${all} is ${parts.join(", and ")}.`;
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
