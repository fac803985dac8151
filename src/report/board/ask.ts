import { at, sumOf } from "../../lists.js";
import type { ProgramBudget } from "../../model/program/budget.js";
import type { ReportContext } from "../document/context.js";
import { addingUp } from "../words/adding-up.js";

/** What the board is asked for, in whole units of money of each fiscal year: the same wherever it is told. */
export interface Ask {
  readonly years: readonly AskYear[];
  readonly total: AskAmounts;
}

/** Revenue is negative; the request is the sum of the three. */
export interface AskAmounts {
  readonly purchases: number;
  readonly ongoing: number;
  readonly revenue: number;
  readonly request: number;
}

export interface AskYear extends AskAmounts {
  /** "FY 2027". */
  readonly name: string;
}

/** Absent where the lake is infested, or the requested option has no program. */
export function askOf({ requested, infestedSince }: ReportContext): Ask | undefined {
  return infestedSince === undefined && requested.budget ? askFrom(requested.budget) : undefined;
}

/** An option's budget in whole units of money, each year's parts adding up to its request as printed. */
export function askFrom({ years, parts }: ProgramBudget): Ask {
  const told = years.map(({ endYear }, year): AskYear => {
    const cents = [parts.purchases, parts.ongoing, parts.revenue].map((part) => at(part.cents, year) / 100);
    const { parts: rounded, sum: request } = addingUp(cents, 1);
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
