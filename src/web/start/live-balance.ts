import type { Answering, StudyText } from "../../app/answers/questions.js";
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

/** @param head of the page, without the balance @param wantsRange also the range from few draws, once there is one */
export async function liveBalance(
  { studies, answers, few }: LiveParts,
  study: StudyText,
  { head, wantsRange, signal }: { head: object; wantsRange: boolean; signal: AbortSignal },
): Promise<LiveBalance> {
  const state = await answers.ask("balance", study, signal);
  const balance = renderPage("partials/balance-line", { ...head, line: state.line });
  if (!wantsRange || !state.line) return { balance, range: "", isUnderWay: false };
  const document = studies.document(study);
  const asked = { document, settings: oddsSettings(document.study.uncertainty) };
  const odds = await resultWithin(patienceMilliseconds, few, { text: study.text, study: asked });
  if (!odds) return { balance, range: "", isUnderWay: true };
  const range = rangeText(odds, formatter(document.money.currency, document.study.units));
  return { balance, range: range ? rangeSentence(range) : "", isUnderWay: false };
}

const patienceMilliseconds = 1000;

const rangeSentence = ({ low, high }: NonNullable<ReturnType<typeof rangeText>>): string =>
  `First estimate, from few draws: net benefit between ${low} and ${high}.`;
