import type { AnswerContext, AnswersOf } from "#product/app/answers/answer-context.js";
import { comparing } from "#product/app/answers/comparing.js";
import { papers } from "#product/app/answers/papers.js";
import type { Answer, Answering, Asked, Kind } from "#product/app/answers/questions.js";
import { reporting } from "#product/app/answers/reporting.js";

/** Answers in this thread, without workers. */
export function answersHere(means: AnswerContext): Answering {
  const answers: AnswersOf<Kind> = { ...comparing(means), ...reporting(means), ...papers(means) };
  const ask: Answering["ask"] = async <Which extends Kind>(
    kind: Which,
    asked: Asked<Which>,
    signal?: AbortSignal,
  ) => {
    signal?.throwIfAborted();
    const answer = answers[kind] as (asked: Asked<Which>) => Answer<Which> | Promise<Answer<Which>>;
    return await answer(asked);
  };
  return {
    ask,
    known: () => undefined,
    hasBegun: () => false,
    askLatest: async (kind, { find, askedOf }, signal) => {
      const entry = find();
      return { entry, answer: await ask(kind, askedOf(entry), signal) };
    },
    close: async () => undefined,
  };
}
