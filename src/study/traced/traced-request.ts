import { at, sumOf } from "../../lists.js";
import type { Assumed } from "../../model/assumed.js";
import type { Comparison } from "../../model/compare.js";
import { centsPerUnit } from "../../model/money/decimal.js";
import { type ProgramBudget, yearlyInBudget } from "../../model/program/budget.js";
import { feeToCarry } from "../../model/program/fees.js";
import { type FundedBudget, type FundingSource, fundedBudget } from "../../model/program/sources.js";
import { sourcesOverHorizon } from "../../model/program/sources-over-horizon.js";
import { fullTimeHoursOf, type StaffClass, staffTable } from "../../model/program/staff-table.js";
import type { AssumptionId } from "../../model/register/register.js";
import { requestFields, type SourceDocument } from "../format/request-schema.js";
import type { StudyDocument } from "../format/schema.js";
import type { FuturesOdds } from "../odds/odds.js";
import type { StationRun } from "../prepare/staffing.js";
import type { TracedOption } from "./traced-option.js";

export interface RequestSource extends FundingSource {
  /** Who pays, in words. */
  readonly payer: string;
  readonly inKind: boolean;
  readonly afterwards: string | undefined;
}

/** The request for a budget office. Amounts by fiscal year are whole cents of each year. */
export interface TracedRequest {
  readonly budget: ProgramBudget;
  readonly funded: FundedBudget<RequestSource>;
  /** Absent where none is asked for, and where no odds were drawn; money a year of the price year. */
  readonly contingency: { readonly confidence: number; readonly perYear: number } | undefined;
  readonly staff: readonly StaffClass[];
  readonly fullTimeHours: number;
  /** Inspectors that the queue needs, against those of the staff list; absent without a station. */
  readonly queue:
    | {
        readonly hours: number;
        readonly listed: number;
        readonly costPerYear: number;
      }
    | undefined;
  /** Who pays what of cost and contingency. */
  readonly payers: readonly RequestPayer[];
  /** Expected present value of what each source pays over the horizon, by its payer; `id` where it is one of the study's. */
  readonly partners: readonly {
    readonly id: string | undefined;
    readonly name: string;
    readonly presentValue: number;
  }[];
  /** What is asked of the fund by appropriation: first and last fiscal year. */
  readonly appropriations: readonly {
    readonly from: number;
    readonly to: number;
    readonly cents: number;
  }[];
  /** Fees that would carry the whole program; none carries it where a fee is absent. */
  readonly fees: readonly {
    readonly per: "launch" | "day" | "season";
    readonly fee: number | undefined;
  }[];
}

export interface RequestPayer {
  readonly name: string;
  readonly cents: readonly number[];
}

/** What a request is worked out from. */
export interface RequestParts {
  readonly document: StudyDocument;
  readonly comparison: Comparison;
  readonly requested: TracedOption;
  readonly staffing: readonly StationRun[];
  readonly assumed: Assumed;
}

const requestKeys = Object.keys(requestFields) as (keyof typeof requestFields)[];

/** Whether a study says more of its request than the board votes on. */
export const hasRequest = ({ report: { ask } }: Pick<StudyDocument, "report">): boolean =>
  requestKeys.some((key) => ask[key] !== undefined);

/** Assumptions behind its request. */
export const requestAssumptions = (document: Pick<StudyDocument, "report">): AssumptionId[] =>
  hasRequest(document) && document.report.ask.fullTimeHours === undefined ? ["request.full-time-hours"] : [];

/** Absent where the study says nothing of it, where the lake is infested, and where there is nothing to ask for. */
export function tracedRequest(parts: RequestParts, odds?: FuturesOdds): TracedRequest | undefined {
  const { document, comparison, requested, assumed } = parts;
  const { budget } = requested;
  if (!budget || document.lake.infestedSince !== undefined || !hasRequest(document)) return undefined;
  const { ask } = document.report;
  const { money } = comparison.input;
  const { option } = requested.result;
  const fullTimeHours = fullTimeHoursOf(ask.fullTimeHours, assumed);
  const contingency = contingencyOf(parts, odds);
  const funded = fundedBudget(
    budget,
    (ask.sources ?? []).map((source) => requestSource(source, document)),
    {
      contingency: yearlyInBudget(contingency?.perYear ?? 0, money),
      carriedIn: Math.round((ask.carriedIn?.value ?? 0) * centsPerUnit),
    },
  );
  const { launches, days, seasons } = ask.payments ?? {};
  const feeOf = (per: "launch" | "day" | "season", payments: number | undefined) =>
    payments === undefined ? [] : [{ per, fee: feeToCarry(requested.fee.cost, payments, option) }];
  return {
    budget,
    funded,
    contingency,
    staff: staffTable(option, money, fullTimeHours),
    fullTimeHours,
    queue: queueOf(parts),
    payers: payersOf({ budget, funded }, document),
    partners: partnersOf(funded.sources, parts),
    appropriations: appropriationsOf(budget, funded.fund, ask.appropriationYears ?? 1),
    fees: [...feeOf("launch", launches), ...feeOf("day", days), ...feeOf("season", seasons)],
  };
}

/** What the program's own cost may be above that of its lines, in a year of a clean lake. */
function contingencyOf(
  { document, requested: { result } }: RequestParts,
  odds: FuturesOdds | undefined,
): TracedRequest["contingency"] {
  const drawn = odds?.options.find(({ id }) => id === result.option.id)?.cleanProgram;
  if (!document.report.ask.contingency || !drawn) return undefined;
  return {
    confidence: drawn.confidence,
    perYear: Math.max(0, drawn.value - drawn.central),
  };
}

function requestSource(source: SourceDocument, { money }: StudyDocument): RequestSource {
  const { name, payer, paysFor = ["purchases", "once", "ongoing"], from, to, inKind, afterwards } = source;
  const cents = (amount: { readonly value: number } | undefined) =>
    amount && Math.round(amount.value * centsPerUnit);
  return {
    name,
    payer: money.bearers.find(({ id }) => id === payer)?.name ?? name,
    paysFor,
    share: source.share?.value,
    amount: cents(source.amount),
    cap: cents(source.cap),
    match: source.match?.value,
    from,
    to,
    inKind,
    afterwards,
  };
}

function queueOf({ staffing, requested }: RequestParts): TracedRequest["queue"] {
  const station = staffing.find(({ optionId }) => optionId === requested.result.option.id);
  if (!station) return undefined;
  const { staffHoursPerYear, costPerYear } = station.staffing;
  return {
    hours: staffHoursPerYear,
    listed: requested.inspectorHours,
    costPerYear,
  };
}

/** Those who pay, each once: revenue by line, sources by payer, and the program's payer for what is asked of the fund. */
function payersOf(
  { budget, funded }: Pick<TracedRequest, "budget" | "funded">,
  { money }: StudyDocument,
): RequestPayer[] {
  const own = money.bearers.find(({ id }) => id === money.programBearer)?.name ?? money.programBearer;
  const revenue: readonly RequestPayer[] = budget.groups.flatMap(({ group, rows, subtotal }) => {
    if (group === "fees") return [{ ...subtotal, name: "Boaters, by fees" }];
    return group === "other-revenue" ? [...rows] : [];
  });
  const all: readonly RequestPayer[] = [
    ...revenue.map(({ name, cents }) => ({
      name,
      cents: cents.map((each) => (each === 0 ? 0 : -each)),
    })),
    ...funded.sources.map(({ source, cents }) => ({
      name: source.payer,
      cents,
    })),
    {
      name: own,
      cents: funded.fund.map((asked, year) => asked + at(funded.carriedIn, year)),
    },
  ];
  const names = [...new Set(all.map(({ name }) => name))];
  return names.map((name) => ({
    name,
    cents: budget.years.map((_, year) =>
      sumOf(all.filter((each) => each.name === name).map(({ cents }) => at(cents, year))),
    ),
  }));
}

function partnersOf(
  funded: FundedBudget<RequestSource>["sources"],
  { document, requested, comparison }: RequestParts,
): TracedRequest["partners"] {
  const sources = funded.map(({ source }) => source);
  const { discountFactors, input } = comparison;
  const worth = sourcesOverHorizon(requested.result, input.money, sources, discountFactors);
  return sources.map(({ payer: name }, index) => ({
    name,
    id: document.money.bearers.find((bearer) => bearer.name === name)?.id,
    presentValue: at(worth, index),
  }));
}

function appropriationsOf(
  { years }: Pick<ProgramBudget, "years">,
  fund: readonly number[],
  length: number,
): TracedRequest["appropriations"] {
  const starts = years.flatMap((_, year) => (year % length === 0 ? [year] : []));
  return starts.map((start) => {
    const end = Math.min(start + length, years.length) - 1;
    return {
      from: at(years, start).endYear,
      to: at(years, end).endYear,
      cents: sumOf(fund.slice(start, end + 1)),
    };
  });
}
