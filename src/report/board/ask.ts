import { at, sumOf } from "../../lists.js";
import { centsPerUnit } from "../../model/money/decimal.js";
import type { ProgramBudget } from "../../model/program/budget.js";
import type { TracedRequest } from "../../study/traced/traced-request.js";
import type { ReportContext } from "../document/context.js";
import { addingUp } from "../words/adding-up.js";

/** What the board is asked for, in whole units of money of each fiscal year: the same wherever it is told. */
export interface Ask {
  readonly years: readonly AskYear[];
  readonly total: AskAmounts;
}

/** The request is the sum of the three. */
export interface AskAmounts {
  /** Equipment, and what is paid once to start. */
  readonly purchases: number;
  /** With the contingency. */
  readonly ongoing: number;
  /** Negative, with grants, partners and what is carried in. */
  readonly revenue: number;
  readonly request: number;
}

export interface AskYear extends AskAmounts {
  /** "FY 2027". */
  readonly name: string;
}

/** Absent where the lake is infested, or the requested option has no program. */
export function askOf({ requested, infestedSince, request }: ReportContext): Ask | undefined {
  return infestedSince === undefined && requested.budget
    ? askFrom(requested.budget, request?.funded)
    : undefined;
}

/** An option's budget in whole units of money, each year's parts adding up to its request as printed. */
export function askFrom({ years, parts }: ProgramBudget, funded?: TracedRequest["funded"]): Ask {
  const paid = [...(funded?.sources.map(({ cents }) => cents) ?? []), funded?.carriedIn ?? []];
  const told = years.map(({ endYear }, year): AskYear => {
    const inYear = (part: keyof typeof parts) => at(parts[part].cents, year);
    const cents = [
      inYear("purchases") + inYear("once"),
      inYear("ongoing") + (funded?.contingency[year] ?? 0),
      inYear("revenue") - sumOf(paid.map((each) => each[year] ?? 0)),
    ];
    const { parts: rounded, sum: request } = addingUp(
      cents.map((each) => each / centsPerUnit),
      1,
    );
    const [purchases = 0, ongoing = 0, revenue = 0] = rounded;
    return { name: `FY ${endYear}`, purchases, ongoing, revenue, request };
  });
  const total = (part: keyof AskAmounts) => sumOf(told.map((each) => each[part]));
  return {
    years: told,
    total: {
      purchases: total("purchases"),
      ongoing: total("ongoing"),
      revenue: total("revenue"),
      request: total("request"),
    },
  };
}
