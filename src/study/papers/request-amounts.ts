import { LRUCache } from "lru-cache";
import { at, sumOf } from "../../lists.js";
import type { StudyInput } from "../../model/inputs.js";
import { centsPerUnit } from "../../model/money/decimal.js";
import { FiscalYearError } from "../../model/money/fiscal-years.js";
import { type ProgramBudget, programBudget } from "../../model/program/budget.js";
import type { StudyDocument } from "../format/schema.js";
import type { Contradiction } from "../reading/contradiction.js";

/**
 * Budgets that come to no amounts of money, and sources that pay more than there is. Both are told here, since a budget
 * is worked out only when a report asks for it: with sources over the whole horizon.
 */
export function requestAmountProblems(document: StudyDocument, input: StudyInput): Contradiction[] {
  const problems = budgetProblems(document, input);
  return problems.length > 0 ? problems : sourceProblems(document, input);
}

function budgetProblems({ report }: StudyDocument, { options, money }: StudyInput): Contradiction[] {
  const years = report.ask.sources ? money.horizon : undefined;
  return options.flatMap((option, index) => {
    const { tooLarge } = budgetOf(option, money, years);
    if (tooLarge === "") return [];
    const found = `the budget line ${tooLarge}`;
    const remedy = "Look there for a value that is too large by far, or at inflation over a long horizon.";
    return [{ path: ["options", index], found, allowed: "amounts of up to 90,000,000,000,000", remedy }];
  });
}

type Budgeted = Parameters<typeof programBudget>;

interface TriedBudget {
  /** The line that comes to no amount of money; empty if all do. */
  readonly tooLarge: string;
  readonly budget?: Pick<ProgramBudget, "years" | "parts"> | undefined;
}

/** Budgets that were tried: a study is read again at each key, and most keys leave them as they are. */
const tried = new LRUCache<string, TriedBudget, Budgeted>({
  max: 50,
  memoMethod: (_key, _budget, { context }) => triedBudget(context),
});

const budgetOf = (...budgeted: Budgeted): TriedBudget =>
  tried.memo(JSON.stringify(budgeted), { context: budgeted });

function triedBudget(budgeted: Budgeted): TriedBudget {
  try {
    const budget = programBudget(...budgeted);
    return { tooLarge: "", budget: budget && { years: budget.years, parts: budget.parts } };
  } catch (error) {
    if (!(error instanceof FiscalYearError)) throw error;
    return { tooLarge: error.message };
  }
}

/** Yearly amounts of sources that are more than what they may pay for in a fiscal year. */
function sourceProblems({ report, study }: StudyDocument, { options, money }: StudyInput): Contradiction[] {
  const sources = report.ask.sources ?? [];
  const option = options.find(({ id }) => id === study.requestedOption);
  if (!option || sources.length === 0) return [];
  const { budget } = budgetOf(option, money);
  if (!budget) return [];
  return sources.flatMap(({ amount, cap, paysFor = costParts, from = 0, to = Infinity }, index) => {
    if (!amount) return [];
    const paid = Math.min(amount.value, cap?.value ?? Infinity);
    const over = budget.years.findIndex(
      ({ endYear }, year) => endYear >= from && endYear <= to && paid > costIn(budget, paysFor, year),
    );
    if (over < 0) return [];
    const most = costIn(budget, paysFor, over).toLocaleString("en-US", { maximumFractionDigits: 2 });
    return [
      {
        path: ["report", "ask", "sources", index, "amount"],
        found: `${amount.text}, more than what it may pay for in FY ${at(budget.years, over).endYear}`,
        allowed: `at most that year's cost, ${most}`,
        remedy: "Lower the amount or give a cap, or let it end before that year.",
      },
    ];
  });
}

const costParts = ["purchases", "once", "ongoing"] as const;

const costIn = (
  budget: Pick<ProgramBudget, "parts">,
  parts: readonly (typeof costParts)[number][],
  year: number,
) => sumOf(parts.map((part) => at(budget.parts[part].cents, year))) / centsPerUnit;
