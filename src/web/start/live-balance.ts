import type { Answering, BalanceState, StudyText } from "../../app/answers/questions.js";
import { type AskedRuns, resultWithin } from "../../app/runs.js";
import type { Studies } from "../../app/studies.js";
import { formatter } from "../../report/words/format.js";
import { oddsSettings } from "../../study/format/uncertainty-schema.js";
import type { FuturesOdds } from "../../study/odds/odds.js";
import { renderPage } from "../render.js";
import { rangeText } from "./first-view.js";

export interface LiveParts {
  readonly studies: Pick<Studies, "document">;
  readonly answers: Answering;
  /** From few draws. */
  readonly few: AskedRuns<FuturesOdds>;
}

/** What a page shows of a study while somebody types it. */
interface LiveBalance {
  /** The head of the page, at central values. */
  readonly balance: string;
  /** The range; empty where none was asked for or there is none. */
  readonly range: string;
  readonly isUnderWay: boolean;
}

interface Asked {
  /** The head of the page. */
  readonly head: (state: BalanceState) => object;
  /** Also the range from few draws, once there is one. */
  readonly wantsRange: boolean;
  readonly signal: AbortSignal;
}

export async function liveBalance(
  { studies, answers, few }: LiveParts,
  study: StudyText,
  { head, wantsRange, signal }: Asked,
): Promise<LiveBalance> {
  const state = await answers.ask("balance", study, signal);
  const balance = renderPage("partials/balance-line", head(state));
  if (!wantsRange || !state.line) return { balance, range: "", isUnderWay: false };
  const document = studies.document(study);
  const asked = { document, settings: oddsSettings(document.study.uncertainty) };
  const odds = await resultWithin(patienceMilliseconds, few, { text: study.text, study: asked });
  if (!odds) return { balance, range: "First estimate: its range is being simulated.", isUnderWay: true };
  const range = rangeText(odds, formatter(document.money.currency, document.study.units));
  return { balance, range: range ? rangeSentence(range) : "", isUnderWay: false };
}

const patienceMilliseconds = 1000;

const rangeSentence = ({ low, high }: NonNullable<ReturnType<typeof rangeText>>): string =>
  `First estimate, from few draws: net benefit between ${low} and ${high}.`;
