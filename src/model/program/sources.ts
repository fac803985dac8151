import { at, sumOf } from "../../lists.js";
import type { BudgetPart, ProgramBudget } from "./budget.js";

/** A grant, or a partner's part. Amounts are cents of each fiscal year. */
export interface FundingSource {
  readonly name: string;
  /** Parts of the cost that it may pay for. */
  readonly paysFor: readonly Exclude<BudgetPart, "revenue">[];
  /** Of what it may pay for; in place of it a yearly amount. */
  readonly share?: number | undefined;
  readonly amount?: number | undefined;
  readonly cap?: number | undefined;
  /** Share that others must pay of what it may pay for. */
  readonly match?: number | undefined;
  /** First and last fiscal year, by the calendar year in which they end. */
  readonly from?: number | undefined;
  readonly to?: number | undefined;
}

/** What a source pays in each fiscal year of a budget, in cents. */
export interface FundedSource<Source extends FundingSource> {
  readonly source: Source;
  /** What it may pay for. */
  readonly eligible: readonly number[];
  readonly cents: readonly number[];
  /** The first fiscal year of the budget without it, and what it paid in the year before; absent where it does not end. */
  readonly ends: { readonly year: number; readonly lost: number } | undefined;
}

/** Who pays for each fiscal year; all rows are cents by year and their sum is the cost. */
export interface FundedBudget<Source extends FundingSource> {
  readonly sources: readonly FundedSource<Source>[];
  /** Set aside beside the cost. */
  readonly contingency: readonly number[];
  /** Left over from earlier years and used in place of new money. */
  readonly carriedIn: readonly number[];
  /** What is asked of the fund: cost less revenue, sources and what is carried in, with the contingency. */
  readonly fund: readonly number[];
}

/**
 * A budget's cost by who pays: revenue first, then the sources in their order, each no more than is left; what then
 * remains is asked of the fund, with the contingency. Money carried in is used up from the first year on.
 * @param beside a contingency by fiscal year, and what is carried in; cents
 */
export function fundedBudget<Source extends FundingSource>(
  budget: Pick<ProgramBudget, "years" | "parts">,
  sources: readonly Source[],
  beside: {
    readonly contingency: readonly number[];
    readonly carriedIn: number;
  },
): FundedBudget<Source> {
  const { purchases, once, ongoing, revenue } = budget.parts;
  const left = budget.years.map((_, year) =>
    sumOf([purchases, once, ongoing, revenue].map(({ cents }) => at(cents, year))),
  );
  const funded = sources.map((source) => {
    const eligible = budget.years.map((_, year) =>
      sumOf(source.paysFor.map((part) => at(budget.parts[part].cents, year))),
    );
    const cents = budget.years.map(({ endYear }, year) => {
      const paid = isPaid(source, endYear)
        ? Math.max(0, Math.min(most(source, at(eligible, year)), at(left, year)))
        : 0;
      left[year] = at(left, year) - paid;
      return paid;
    });
    return { source, eligible, cents, ends: endOf(source, cents, budget) };
  });
  const needed = left.map((cost, year) => cost + at(beside.contingency, year));
  const carriedIn = usedUp(beside.carriedIn, needed);
  return {
    sources: funded,
    contingency: beside.contingency,
    carriedIn,
    fund: needed.map((cost, year) => cost - at(carriedIn, year)),
  };
}

const isPaid = ({ from, to }: FundingSource, endYear: number) =>
  (from === undefined || endYear >= from) && (to === undefined || endYear <= to);

/** The most that a source pays of an amount for which it may. */
function most({ share, amount, cap, match }: FundingSource, eligible: number): number {
  const wanted = amount ?? Math.round(eligible * (share ?? 1));
  return Math.min(wanted, cap ?? wanted, match === undefined ? eligible : Math.floor(eligible * (1 - match)));
}

function endOf(
  { to }: FundingSource,
  cents: readonly number[],
  { years }: Pick<ProgramBudget, "years">,
): { year: number; lost: number } | undefined {
  const next = years.findIndex(({ endYear }) => to !== undefined && endYear > to);
  return next > 0 ? { year: at(years, next).endYear, lost: at(cents, next - 1) } : undefined;
}

function usedUp(amount: number, needed: readonly number[]): number[] {
  let left = amount;
  return needed.map((cost) => {
    const used = Math.max(0, Math.min(left, cost));
    left -= used;
    return used;
  });
}
