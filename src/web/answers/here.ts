import { answersWith, type Means } from "./answering.js";
import type { Answer, Answering, Asked, Kind } from "./questions.js";

/** Answers in this thread, for trials. */
export function answersHere(means: Means): Answering {
  const answers = answersWith(means);
  return {
    ask: async <Which extends Kind>(kind: Which, asked: Asked<Which>, signal?: AbortSignal) => {
      signal?.throwIfAborted();
      const answer = answers[kind] as (asked: Asked<Which>) => Answer<Which> | Promise<Answer<Which>>;
      return await answer(asked);
    },
    close: async () => undefined,
  };
}
