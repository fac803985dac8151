import { counted } from "../../counted.js";
import type { ReportContext } from "../document/context.js";
import { type Headline, headlineOption } from "../document/headline.js";
import { percent, ratio } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";

/** Chances of the headline without the requested option and with it. */
export function headlineChances(headline: Headline) {
  return {
    without: headlineOption(headline, headline.baseline),
    withIt: headlineOption(headline, headline.requested),
  };
}

/** How far the net benefit goes as it comes out, and how often the option pays for itself. */
export function intervalText(headline: Headline, { format }: Pick<ReportContext, "format">): string {
  const { balance } = headlineOption(headline, headline.requested);
  if (!balance) return "";
  const { netBenefit, low, high, paysForItself } = balance;
  const [from, to] = [format.money(low), format.money(high)];
  const span =
    from === to ? `${from} in at least 8 of 10 futures` : `between ${from} and ${to} in 8 of 10 futures`;
  return ` The net benefit is ${format.money(netBenefit)} on average, ${span}; the chance that it pays for itself is ${percent(paysForItself)}.`;
}

/** From the case at central values to the average, in one sentence. */
export function bridgeText({ headline, format }: Pick<ReportContext, "headline" | "format">) {
  if (!headline) return undefined;
  const mean = headlineOption(headline, headline.requested).balance?.netBenefit ?? 0;
  const { centralNetBenefit: central, skewedMost } = headline;
  const difference = mean - central;
  const start = `At central values the net benefit is ${format.money(central)};`;
  if (Math.abs(difference) < 0.5) return `${start} what is uncertain does not change that.`;
  const verb = difference > 0 ? "adds" : "takes";
  const reason =
    skewedMost === undefined
      ? "the ranges of the inputs together are not even about their central values"
      : `the ranges are uneven about their central values, most of all that of “${skewedMost}”`;
  return `${start} what is uncertain ${verb} ${format.money(Math.abs(difference))}, because ${reason}.`;
}

/** All options by the headline. */
export function headlineTable({
  headline,
  format,
  horizon,
  priceYear,
}: ReportContext): TableView | undefined {
  if (!headline) return undefined;
  return {
    id: "table-headline",
    caption: `Each option on average over all that is uncertain, over ${counted(horizon, "year")}, present values, prices of ${priceYear}`,
    head: head(
      "Option",
      num("Ever infested"),
      num("Infested at the end"),
      num("Added cost"),
      num("Loss avoided"),
      num("Net benefit"),
      num("P10"),
      num("P90"),
      num("Pays for itself"),
      num("Benefit–cost ratio"),
    ),
    rows: headline.options.map(({ name, everInfested, infestedAtEnd, balance }) =>
      row(
        name,
        num(percent(everInfested)),
        num(percent(infestedAtEnd)),
        ...(balance
          ? [
              num(format.money(balance.addedCost)),
              num(format.money(balance.avoidedLoss)),
              num(format.money(balance.netBenefit)),
              num(format.money(balance.low)),
              num(format.money(balance.high)),
              num(percent(balance.paysForItself)),
              num(balance.benefitCostRatio === undefined ? "–" : ratio(balance.benefitCostRatio)),
            ]
          : Array.from({ length: 7 }, () => num("–"))),
      ),
    ),
    note: `Ever infested: at any time within ${counted(horizon, "year")}. P10 and P90: net benefits below which one and nine of ten futures come out. Pays for itself: share of futures in which the option costs less than “${headlineOption(headline, headline.baseline).name}”. The tables that follow are at central values.`,
  };
}
