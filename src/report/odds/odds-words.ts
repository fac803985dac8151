import { appendixLetter } from "../../study/format/report-schema.js";
import type { Odds, OptionOdds } from "../../study/odds/odds.js";
import type { ReportContext } from "../document/context.js";
import { clearPercent } from "../words/format.js";
import { inCounts } from "../words/likelihood.js";

/** Odds with the sentences that say what matters most. */
export interface PrintedOdds {
  readonly odds: Odds;
  readonly sensitivitySentences: readonly string[];
}

type WeighedOption = OptionOdds & { readonly against: NonNullable<OptionOdds["against"]> };

/** The option that does nothing. @throws Error where the odds lack it */
export function baselineOdds({ options, baseline }: Odds): OptionOdds {
  const found = options.find(({ id }) => id === baseline);
  if (!found) throw new Error(`odds hold no option ${baseline}; allowed: one of their options`);
  return found;
}

/** The option requested. @throws Error where the odds lack it, or do not hold it against the one that does nothing */
export function requestedOdds({ options, requested }: Odds): WeighedOption {
  const found = options.find(({ id }) => id === requested);
  if (!found?.against) throw new Error(`odds do not weigh ${requested} against doing nothing`);
  return { ...found, against: found.against };
}

/** In how many simulated outcomes the requested option is the cheaper one. */
export function cheaperSentence(odds: Odds): string {
  const { name, against } = requestedOdds(odds);
  const { value } = against.cheaper;
  return `Chance that “${name}” costs less in all than “${baselineOdds(odds).name}”: ${inCounts(value)} (${clearPercent(value)}).`;
}

/** With how many sets of assumptions the requested option is worth its cost on average. */
export function worthItSentence(odds: Odds): string {
  const { value } = requestedOdds(odds).against.worthIt;
  return `It pays on average in ${clearPercent(value)} of the assumption sets tried.`;
}

export function outcomeNote({ infestedSince }: Pick<ReportContext, "infestedSince">): string {
  const chance =
    infestedSince === undefined ? " and one course of chance: whether and when mussels establish" : "";
  return `A simulated outcome is one set of assumptions from their ranges${chance}. These odds depend on the model and ranges used; see appendix ${appendixLetter("odds-tables")}.`;
}
