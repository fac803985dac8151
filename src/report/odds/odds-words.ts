import { appendixLetter } from "../../study/format/report-schema.js";
import type { Odds, OptionOdds } from "../../study/odds/odds.js";
import type { ReportContext } from "../document/context.js";
import { clearPercent, tenthsOf } from "../words/format.js";

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

/** A share of futures as a lay reader counts: "about 7 of 10 futures", and never all or none. */
export function futuresText(share: number): string {
  const tenths = tenthsOf(share);
  if (tenths === "few") return "fewer than 1 of 20 futures";
  return tenths === "most" ? "nearly all futures (more than 19 of 20)" : `about ${tenths} of 10 futures`;
}

/** The rest of a share, so that both together make up ten. */
function restText(share: number): string {
  const tenths = tenthsOf(share);
  if (tenths === "few") return "nearly all (more than 19 of 20)";
  return tenths === "most" ? "fewer than 1 of 20" : `about ${10 - tenths} of 10`;
}

/** In how many futures the requested option is the cheaper one, and in how many it is not. */
export function cheaperSentence(odds: Odds): string {
  const { name, against } = requestedOdds(odds);
  const { value } = against.cheaper;
  return `In ${futuresText(value)} “${name}” comes out cheaper than “${baselineOdds(odds).name}”; in ${restText(value)} it costs as much or more.`;
}

/** With how many sets of assumptions the requested option is worth its cost on average over luck. */
export function worthItSentence(odds: Odds): string {
  const { value } = requestedOdds(odds).against.worthIt;
  return `With ${clearPercent(value)} of the sets of assumptions it is worth its cost on average over luck; with the rest it is not.`;
}

export function futureNote({ infestedSince }: Pick<ReportContext, "infestedSince">): string {
  const luck = infestedSince === undefined ? " and one course of luck: whether and when mussels come" : "";
  return `A future is one set of assumptions from their ranges${luck}. Odds are no promise; see appendix ${appendixLetter("odds-tables")}.`;
}

/** The line of odds on the board's page. */
export function boardOddsLine(odds: Odds): string {
  return `The odds: ${lowered(cheaperSentence(odds))}`;
}

const lowered = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);
