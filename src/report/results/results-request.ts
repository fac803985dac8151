import type { StaffClass } from "../../model/program/staff-table.js";
import type { FuturesOdds } from "../../study/odds/odds.js";
import type { StudyRun } from "../../study/prepare/compute.js";
import { text } from "./results-line.js";

/** The request for a budget office, whole cents by fiscal year; null where the study says nothing to one. */
export function requestJson(run: StudyRun, odds: FuturesOdds | undefined): object | null {
  const request = run.request(odds);
  if (!request) return null;
  const { budget, funded, staff, ...told } = request;
  const { fund, account } = run.document.report.ask;
  return {
    ...told,
    fund: fund ?? null,
    account: account ?? null,
    fiscalYears: budget.years.map(({ endYear }) => endYear),
    parts: budget.parts,
    sources: funded.sources,
    contingencyInCents: funded.contingency,
    carriedInInCents: funded.carriedIn,
    fundInCents: funded.fund,
    staff: staff.map(staffJson),
  };
}

const staffJson = ({ cost, benefits, post, ...hours }: StaffClass) => ({
  ...hours,
  post: post ?? null,
  cost: text(cost),
  benefits: text(benefits),
});
