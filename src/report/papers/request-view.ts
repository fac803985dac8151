import { counted } from "../../counted.js";
import { at, sumOf } from "../../lists.js";
import type { FiscalRow } from "../../model/money/fiscal-years.js";
import type { RequestSource, TracedRequest } from "../../study/traced/traced-request.js";
import type { ReportContext } from "../document/context.js";
import { listedWithin, percent } from "../words/format.js";
import { head, num, row, subtotalRow, type TableView } from "../words/view-types.js";
import { staffTableView, staffText } from "./staff-view.js";

/** The request as a budget office reads it. */
export interface RequestView {
  /** Fund, account and what is appropriated together. */
  readonly intro: string;
  readonly amounts: TableView;
  readonly staff: TableView | undefined;
  readonly payers: TableView;
  readonly notes: readonly string[];
}

export function requestView(context: ReportContext): RequestView | undefined {
  const { request } = context;
  return (
    request && {
      intro: intro(request, context),
      amounts: amountsTable(request, context),
      staff: staffTableView(request, context),
      payers: payersTable(request, context),
      notes: [
        ...staffText(request, context),
        ...contingencyText(request, context),
        ...request.funded.sources.flatMap((source) => sourceText(source, context)),
        ...feesText(request, context),
      ],
    }
  );
}

const yearsHead = ({ budget }: TracedRequest) => [
  ...budget.years.map(({ endYear }) => num(`FY ${endYear}`)),
  num("Together"),
];

const inCents = (cents: readonly number[], { format }: ReportContext) =>
  [...cents, sumOf(cents)].map((each) => num(each === 0 ? "–" : format.cents(each)));

const less = (cents: readonly number[]) => cents.map((each) => (each === 0 ? 0 : -each));

function amountsTable(request: TracedRequest, context: ReportContext): TableView {
  const { budget, funded } = request;
  const { purchases, once, ongoing } = budget.parts;
  const gross = budget.years.map((_, year) =>
    sumOf([purchases, once, ongoing].map(({ cents }) => at(cents, year))),
  );
  const revenue = budget.groups.flatMap(({ group, rows, subtotal }) => {
    if (group === "fees") return [{ ...subtotal, name: "Fees" }];
    return group === "other-revenue" ? [...rows] : [];
  });
  const shown = (name: string, cents: readonly number[]) =>
    cents.some((each) => each !== 0) ? [row(name, ...inCents(cents, context))] : [];
  const ofRow = (name: string, { cents }: Pick<FiscalRow, "cents">) => shown(name, cents);
  return {
    id: "table-request",
    caption: `The request for “${context.requested.result.option.name}”, ${context.run.document.money.currency} of each fiscal year`,
    head: head("", ...yearsHead(request)),
    rows: [
      ...ofRow("Capital: equipment bought", purchases),
      ...ofRow("One-time: paid to start", once),
      ...ofRow("Operation", ongoing),
      subtotalRow("Cost", ...inCents(gross, context)),
      ...revenue.flatMap((each) => ofRow(each.name, each)),
      ...funded.sources.flatMap(({ source, cents }) =>
        shown(`${source.name}${source.inKind ? " (in kind)" : ""}`, less(cents)),
      ),
      ...shown("Carryover", less(funded.carriedIn)),
      ...shown(contingencyName(request), funded.contingency),
    ],
    total: row("Asked of the fund", ...inCents(funded.fund, context)),
    compact: true,
  };
}

const contingencyName = ({ contingency }: TracedRequest) =>
  contingency ? `Contingency at ${percent(contingency.confidence)}` : "Contingency";

function payersTable(request: TracedRequest, context: ReportContext): TableView {
  const { payers, budget } = request;
  const byYear = budget.years.map((_, year) => sumOf(payers.map(({ cents }) => at(cents, year))));
  return {
    id: "table-request-payers",
    caption: "Cost-share schedule: who pays what, by fiscal year",
    head: head("Who pays", ...yearsHead(request), num("Share")),
    rows: payers.map(({ name, cents }) =>
      row(name, ...inCents(cents, context), num(percent(sumOf(cents) / sumOf(byYear)))),
    ),
    total: row("Cost and contingency", ...inCents(byYear, context), num("100%")),
    compact: true,
  };
}

function intro({ appropriations, funded }: TracedRequest, { run, format }: ReportContext): string {
  const { fund, account, appropriationYears = 1 } = run.document.report.ask;
  const where = [...(fund ? [`Fund: ${fund}.`] : []), ...(account ? [`Account: ${account}.`] : [])];
  const together = appropriations.map(
    ({ from, to, cents }) => `${format.cents(cents)} for ${from === to ? `FY ${from}` : `FY ${from}–${to}`}`,
  );
  const carried = sumOf(funded.carriedIn) > 0 ? ", after carryover" : "";
  return [
    ...where,
    ...(appropriationYears > 1
      ? [
          `Appropriated ${counted(appropriationYears, "fiscal year")} at a time${carried}: ${listedWithin(together, together.length)}.`,
        ]
      : []),
    "Fees by class, with the loss of demand, are among the program options; the workbook has every formula.",
  ].join(" ");
}

function contingencyText(
  { contingency }: TracedRequest,
  { run, format, priceYear }: ReportContext,
): string[] {
  if (!run.document.report.ask.contingency) return [];
  if (!contingency) return ["The contingency is told once the odds are drawn."];
  return [
    `Contingency: in ${percent(contingency.confidence)} of the simulated outcomes the program alone costs at most ${format.money(contingency.perYear)} a year more than its lines, prices of ${priceYear}. It is a line of this request and is in no comparison.`,
  ];
}

function sourceText(
  { source, cents, ends }: TracedRequest["funded"]["sources"][number],
  { format }: ReportContext,
): string[] {
  const period = [
    ...(source.from === undefined ? [] : [`from FY ${source.from}`]),
    ...(source.to === undefined ? [] : [`to FY ${source.to}`]),
  ].join(" ");
  const ending = ends
    ? ` From FY ${ends.year} on its ${format.cents(ends.lost)} a year falls to the fund.${source.afterwards ? ` ${source.afterwards}.` : ""}`
    : "";
  return sumOf(cents) === 0 && !ends
    ? [`${source.name}: pays nothing in these years${period ? ` (${period})` : ""}.`]
    : [`${source.name}: ${termsText(source, format)}${period ? `, ${period}` : ""}.${ending}`];
}

function termsText(
  { name, share, amount, cap, match, payer }: RequestSource,
  { cents }: ReportContext["format"],
): string {
  return [
    `${payer === name ? "pays" : `${payer} pays`} ${amount === undefined ? percent(share ?? 1) : `${cents(amount)} a year`}`,
    ...(cap === undefined ? [] : [`at most ${cents(cap)} a year`]),
    ...(match === undefined ? [] : [`others at least ${percent(match)}`]),
  ].join(", ");
}

function feesText({ fees }: TracedRequest, { format }: ReportContext): string[] {
  if (fees.length === 0) return [];
  const told = fees.map(({ per, fee }) =>
    fee === undefined ? `none a ${per}` : `${format.rate(fee)} a ${per}`,
  );
  return [
    `A fee that would cover the whole program net of other revenue, each by itself and with the stated loss of demand: ${listedWithin(told, told.length)}.`,
  ];
}
