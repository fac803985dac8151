import { counted } from "../../counted.js";
import type { Confidences } from "../../study/traced/confidence.js";
import type { ReportContext } from "../document/context.js";
import { type AccountBalance, type Headline, headlineOption } from "../document/headline.js";
import { differenceTexts } from "../words/adding-up.js";
import { clearPercent, percent, ratio } from "../words/format.js";
import { inCounts, likelihoodWord } from "../words/likelihood.js";
import { type Cell, head, num, row, type TableView } from "../words/view-types.js";
import { boardMoney } from "./board-money.js";
import { confidenceText } from "./confidence-words.js";

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
  const { netBenefit, low, high } = balance;
  const [from, to] = [format.money(low), format.money(high)];
  const span =
    from === to
      ? "and as much in at least 8 of 10 simulated outcomes"
      : `and between ${from} and ${to} in 8 of 10 simulated outcomes`;
  return `The net benefit is ${format.money(netBenefit)} on average, ${span}.`;
}

/** How likely the requested option is to pay for itself, in a word, in counts and in percent, and how firm that is. */
export function likelihoodText(headline: Headline, confidence: Confidences | undefined): string {
  const share = headlineOption(headline, headline.requested).balance?.paysForItself ?? 0;
  const firm = confidence ? `; ${confidenceText(confidence.pays)}` : "";
  return `It is ${likelihoodWord(share)} to pay for itself, ${inCounts(share)} (${clearPercent(share)})${firm}.`;
}

/** From the case at central values to the average, in one sentence. */
export function bridgeText({ headline, format }: Pick<ReportContext, "headline" | "format">) {
  if (!headline) return undefined;
  const mean = headlineOption(headline, headline.requested).balance?.netBenefit ?? 0;
  const { centralNetBenefit: central, skewedMost } = headline;
  const difference = mean - central;
  const start = `At central values the net benefit is ${format.money(central)};`;
  if (Math.abs(difference) < 0.5) return `${start} what is uncertain does not change that.`;
  const verb = difference > 0 ? "adds" : "takes away";
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
    caption: `Each option on average over all that is uncertain, ${counted(horizon, "year")}, present values, prices of ${priceYear}`,
    head: head(
      "Option",
      num("Mussels establish"),
      num("Infested at the end"),
      num("Added cost"),
      num("Damage avoided"),
      num("Net benefit"),
      num("10th percentile"),
      num("90th percentile"),
      num("Chance that it pays"),
      num("Benefit–cost ratio"),
    ),
    rows: headline.options.map(({ name, everInfested, infestedAtEnd, balance }) =>
      row(
        name,
        num(percent(everInfested)),
        num(percent(infestedAtEnd)),
        ...(balance
          ? [
              ...netCells(balance, format),
              num(format.money(balance.low)),
              num(format.money(balance.high)),
              num(clearPercent(balance.paysForItself)),
              num(balance.benefitCostRatio === undefined ? "–" : ratio(balance.benefitCostRatio)),
            ]
          : Array.from({ length: 7 }, () => num("–"))),
      ),
    ),
    note: `Mussels establish: at any time within ${counted(horizon, "year")}. Percentiles: net benefits below which 1 and 9 in 10 simulated outcomes come out. Chance that it pays: share of simulated outcomes in which the option costs less than “${headlineOption(headline, headline.baseline).name}”. The tables that follow are at central values.`,
  };
}

/** Options side by side on the page of the balance; the rest are in the appendix. */
const mostMeans = 8;

/** The same in the few figures that a board needs beside the picture. */
export function meansTable({ headline, format }: ReportContext): TableView | undefined {
  if (!headline) return undefined;
  const weighed = headline.options.filter(({ balance }) => balance !== undefined);
  const shown = weighed
    .filter(({ id }, index) => index < mostMeans - 1 || id === headline.requested)
    .slice(0, mostMeans);
  const left = weighed.length - shown.length;
  return {
    id: "table-means",
    caption: `Each option compared with “${headlineOption(headline, headline.baseline).name}”, present values`,
    head: head(
      "Option",
      num("Added cost"),
      num("Damage avoided"),
      num("Net benefit"),
      num("Benefit–cost ratio"),
    ),
    rows: shown.map(({ name, balance }) =>
      row(
        name,
        ...(balance ? netCells(balance, boardMoney(format)) : []),
        num(balance?.benefitCostRatio === undefined ? "–" : ratio(balance.benefitCostRatio)),
      ),
    ),
    compact: true,
    note: `On average over all that is uncertain.${left > 0 ? ` ${counted(left, "more option", "more options")} in the appendix.` : ""}`,
  };
}

/** Added cost, damage avoided and what is left of it. */
function netCells({ avoidedLoss, addedCost }: AccountBalance, format: ReportContext["format"]): Cell[] {
  const { from, less, difference } = differenceTexts({ from: avoidedLoss, less: addedCost }, format);
  return [less, from, difference].map(num);
}
