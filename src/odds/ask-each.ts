import type { EarlyFigures } from "../study/odds/early-figures.js";

export interface Progress {
  /** Draws of the lake, and lakes at values of one's choice. */
  readonly done: number;
  /** As many as are known to be needed; more may follow. */
  readonly planned: number;
}

export interface DrawControl {
  readonly signal: AbortSignal;
  readonly onProgress: (progress: Progress) => void;
  /** Takes first figures, and better ones, while more is drawn. */
  readonly onEarly?: (figures: EarlyFigures) => void;
  /** Waits, between draws, for whoever comes first. */
  readonly giveWay?: () => Promise<void>;
}

/** Asks all at once and gives the answers in order; a failure ends the others. */
export async function askEach<Asked, Answer>(
  questions: readonly Asked[],
  ask: (question: Asked, signal: AbortSignal) => Promise<Answer>,
  { signal, onProgress }: Pick<DrawControl, "signal" | "onProgress">,
): Promise<Answer[]> {
  const planned = questions.length;
  const ending = new AbortController();
  const either = AbortSignal.any([signal, ending.signal]);
  let done = 0;
  onProgress({ done, planned });
  const answers = questions.map(async (question) => {
    const answer = await ask(question, either);
    onProgress({ done: ++done, planned });
    return answer;
  });
  try {
    return await Promise.all(answers);
  } catch (error) {
    ending.abort(error);
    throw error;
  }
}
