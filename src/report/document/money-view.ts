import { counted } from "../../counted.js";
import { at } from "../../lists.js";
import type { PriceGroup } from "../../model/money/price-group.js";
import type { PriceIndex } from "../../model/money/price-index.js";
import { percent } from "../words/format.js";
import { head, num, row, type TableView } from "../words/view-types.js";
import { type ReportContext, tracedOf } from "./context.js";

export interface MoneyView {
  readonly notes: readonly string[];
  /** Absent where all prices go with general inflation. */
  readonly escalation: TableView | undefined;
  readonly flows: TableView;
  /** Absent where no option has equipment. */
  readonly equipment: TableView | undefined;
}

/** How the study counts money, for those who check it. */
export function moneyView(context: ReportContext): MoneyView {
  return {
    notes: [rateText(context), timingText(context), pricesText(context), recoveryText].filter(Boolean),
    escalation: escalationTable(context),
    flows: flowsTable(context),
    equipment: equipmentTable(context),
  };
}

/** Where the discount rate comes from, and how it came about if it follows from the federal rule. */
function rateText({ run, comparison }: ReportContext): string {
  const { discountRate, discountRateOrigin } = run.document.money;
  const { planning } = discountRate;
  const rate = percent(comparison.input.money.discountRate, 4);
  if (planning === undefined)
    return `Discount rate: ${rate} a year above inflation. Origin: ${discountRateOrigin}.`;
  const { meanYield, previousRate, rounded, limited, origin } = planning;
  const limit =
    limited === "no"
      ? "That is within a quarter point of the rate before, so it stands."
      : `It may ${limited} by a quarter point at most, which gives ${rate}.`;
  return `Discount rate: ${rate} a year, by the federal rule for water planning (Public Law 93-251, section 80(a); 18 CFR 704.39). The mean yield of Treasury securities with 15 years or more left, ${percent(meanYield.value, 5)}, is ${percent(rounded, 4)} to the nearest eighth of a percent; the rate of the year before was ${percent(previousRate.value, 4)}. ${limit} ${noticeText(planning.fiscalYear, run.assumptions.planningRates)} Origin: ${origin}. It is used here as a rate above inflation, on constant prices.`;
}

/** Whether the rate was noticed, or follows from the rule alone. */
function noticeText(
  fiscalYear: number | undefined,
  notices: ReportContext["run"]["assumptions"]["planningRates"],
): string {
  const computed = "the rate is as computed by the quarter-point rule";
  if (fiscalYear === undefined)
    return `The study names no fiscal year: ${computed} and held against no notice.`;
  const notice = notices.get(fiscalYear);
  if (notice === undefined) return `No notice for fiscal year ${fiscalYear} is known here: ${computed}.`;
  const words = notice.basis === "published" ? "has" : "has, from memory,";
  return `The notice for fiscal year ${fiscalYear} (${notice.notice}) ${words} ${percent(notice.rate, 4)}.`;
}

function timingText({ comparison }: ReportContext): string {
  const { timing, startYear } = comparison.input.money;
  const when =
    timing === "mid-year"
      ? "in the middle of its year, so it is discounted by half a year less than at the year's end"
      : "at the end of its year";
  return `Timing: each year's cost falls ${when}; the present is the start of ${startYear}.`;
}

/** How prices of the assumptions came into the study's money. */
export function pricesText({ run, priceYear }: ReportContext): string {
  const { currency, exchangeRate, exchangeRateYear, exchangeRateOrigin, indexValues } = run.document.money;
  const { index, works } = run.prices;
  const own = indexValues
    .map(({ year, value, origin }) => ` ${value} for ${year} is the study's own (${origin}).`)
    .join("");
  const converted = index
    ? `Prices of the assumptions are turned from their own year into ${priceYear} in US dollars: × index of ${priceYear} / index of that year. Index: ${index.name}.${own}${indexNotes(priceYear, run)} Prices of works follow ${worksText(works, run)}`
    : "Prices of the assumptions are used as they stand, without conversion to the study's price year.";
  const origin = [exchangeRateYear && `rate of ${exchangeRateYear}`, exchangeRateOrigin]
    .filter(Boolean)
    .join(", ");
  const gap =
    exchangeRateYear !== undefined && exchangeRateYear !== priceYear
      ? ` The rate is not of the price year; how ${currency} prices moved between is not in it.`
      : "";
  const exchanged =
    currency === "USD"
      ? ""
      : ` Then they are exchanged at ${exchangeRate} ${currency} for one US dollar (${origin}).${gap}`;
  return `${converted}${exchanged} Own values of the study are in its money already and stay as they are.`;
}

/** Which index the prices of works follow, and how it goes on. */
function worksText(works: PriceIndex | undefined, { assumptions, document }: ReportContext["run"]): string {
  const { worksIndex } = document.money;
  if (worksIndex) return `the study's own index: ${worksIndex.name} (${worksIndex.origin}).`;
  const table = assumptions.priceIndices.find(({ id }) => id === works?.id);
  const last = Math.max(...(table?.values.keys() ?? []));
  return works === undefined || table?.id === "cpi-u"
    ? "consumer prices too, since no index of construction is known."
    : `another index: ${works.name}, and consumer prices after ${last} [${table?.parts.at(-1)?.source}].`;
}

/** What the index's table says of the study's price year. */
function indexNotes(priceYear: number, { prices, assumptions, document }: ReportContext["run"]): string {
  const { latestIndex } = prices;
  if (latestIndex !== undefined)
    return ` It has no value for ${priceYear} yet: that of ${latestIndex} stands for it.`;
  const table = assumptions.priceIndices.find(({ id }) => id === prices.index?.id);
  const part = table?.parts.find(({ values }) => values.has(priceYear));
  const isOwn = document.money.indexValues.some(({ year }) => year === priceYear);
  return part && !isOwn ? ` Its value for ${priceYear}: ${part.basis} [${part.source}]. ${part.note}` : "";
}

const recoveryText =
  "Equipment: the comparison spreads a price over the equipment's life by capital recovery, interest at the discount rate included. A study shorter or longer than a life then needs no value for what is left; the table “Two ways to count equipment” has the other way.";

const groupNames: Record<PriceGroup, string> = {
  energy: "Energy lost, used or gained",
  water: "Water bought or given up",
  labour: "Labour and visits at structures",
  treatment: "Treatment and protection at structures",
  wages: "Wages of the program",
  equipment: "Equipment of the program",
  fees: "Fees of the program",
  other: "All other costs",
};

function escalationTable({ run, comparison, horizon, priceYear }: ReportContext): TableView | undefined {
  const { escalation, startYear } = run.document.money;
  if (escalation.length === 0) return undefined;
  return {
    id: "table-escalation",
    caption: "Prices that rise faster or slower than inflation",
    head: head(
      "Costs",
      num("A year above inflation"),
      num(`Price in ${startYear}`),
      num(`Price in ${startYear + horizon - 1}`),
      "Origin",
    ),
    rows: escalation.map(({ group, rate, origin }) => {
      const rises = comparison.rises.get(group) ?? [];
      return row(
        groupNames[group],
        num(percent(rate.value, 3)),
        num(at(rises, 0).toFixed(3)),
        num(at(rises, horizon - 1).toFixed(3)),
        origin,
      );
    }),
    note: `For 1 in ${priceYear}, in constant prices. Unit rates and yearly costs elsewhere in this report are those of ${priceYear}; present values, expected costs by year and the balance have the rises in them. Plans for structures are chosen at constant prices. All other costs go with general inflation.`,
  };
}

/** Expected flows of the requested option and without a program, in constant prices and in money of each year. */
function flowsTable(context: ReportContext): TableView {
  const { comparison, requested, format, priceYear } = context;
  const { money } = comparison.input;
  const { flows: without } = tracedOf(context, comparison.baseline.option.id);
  const { flows: withIt } = tracedOf(context, requested.result.option.id);
  const amounts = (...values: readonly number[]) => values.map((value) => num(format.exactMoney(value)));
  return {
    id: "table-flows",
    caption: `Expected costs of each year, in prices of ${priceYear} and in money of that year`,
    head: head(
      "Year",
      ...[comparison.baseline, requested.result].flatMap(({ option }) => [
        num(`${option.name}, ${priceYear} prices`),
        num("In money of the year"),
      ]),
    ),
    rows: without.constant.map((amount, year) =>
      row(
        String(money.startYear + year),
        ...amounts(amount, at(without.nominal, year), at(withIt.constant, year), at(withIt.nominal, year)),
      ),
    ),
    total: row(
      "Present value",
      ...amounts(
        without.realPresentValue,
        without.nominalPresentValue,
        withIt.realPresentValue,
        withIt.nominalPresentValue,
      ),
    ),
    note: flowsNote(without.nominalRate, context),
    compact: true,
  };
}

function flowsNote(nominalRate: number, { comparison, run, priceYear }: ReportContext): string {
  const { discountRate, inflation } = comparison.input.money;
  const origin = run.document.money.inflationOrigin ?? "none is assumed in the study";
  return `General inflation: ${percent(inflation, 3)} a year (${origin}). Present value: constant prices at the real rate of ${percent(discountRate, 4)}, money of the year at the nominal rate of ${percent(nominalRate, 5)}, (1 + real)(1 + inflation) − 1, and brought back to prices of ${priceYear}. The two are the same amount: inflation alone changes no answer of this report.`;
}

function equipmentTable(context: ReportContext): TableView | undefined {
  const { traced, format, horizon } = context;
  const options = traced.options.flatMap(({ result: { option }, equipment }) =>
    equipment ? [{ option, bases: equipment }] : [],
  );
  if (options.length === 0) return undefined;
  return {
    id: "table-equipment",
    caption: `Two ways to count equipment, present values over ${counted(horizon, "year")}, prices of ${context.priceYear}`,
    head: head(
      "Option",
      num("Purchases"),
      num(`Less worth after ${counted(horizon, "year")}`),
      num("Cash"),
      num("Capital recovery"),
      num("Difference"),
    ),
    rows: options.map(({ option, bases: { purchases, residual, cash, recovery } }) =>
      row(
        option.name,
        ...[purchases, -residual, cash, recovery, recovery - cash].map((value) =>
          num(format.exactMoney(value)),
        ),
      ),
    ),
    note: "A program that runs in full over the whole horizon in a clean lake. Cash: each purchase at the start of the year in which it is made, less what the last one is then worth by straight line, discounted from the horizon's end. Capital recovery: the same equipment as equal yearly payments, as the comparison counts it. They differ by the timing of payments within the year, and since straight line writes off sooner than a loan is paid back.",
  };
}
