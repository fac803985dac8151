import type { Answer, Kind, StudyText } from "./questions.js";

interface Found {
  readonly entry: StudyText | undefined;
  readonly answer: Answer<Kind>;
}

export interface UnderWay {
  /** What it is found by: its texts, or, until its turn has come, the study. */
  key: string;
  readonly found: Promise<Found>;
  readonly ending: AbortController;
  waiting: number;
}

/** Nobody waits for an answer any more. */
class NobodyWaitsError extends Error {}

/** Questions that are asked, with how many wait for each. */
export function questionsUnderWay() {
  const byKey = new Map<string, UnderWay>();
  const forget = (ended: UnderWay) => {
    if (byKey.get(ended.key) === ended) byKey.delete(ended.key);
  };
  const leave = (left: UnderWay) => {
    left.waiting -= 1;
    if (left.waiting > 0) return;
    forget(left);
    left.ending.abort(new NobodyWaitsError());
  };
  return {
    at: (key: string) => byKey.get(key),
    forget,
    move: (one: UnderWay, key: string) => {
      forget(one);
      one.key = key;
      byKey.set(key, one);
    },
    join: (one: UnderWay, signal: AbortSignal | undefined): Promise<Found> => {
      one.waiting += 1;
      return orLeft(one.found, signal, () => leave(one));
    },
  };
}

/** An answer, or the reason of a signal that is given before it. */
function orLeft<Found>(
  answer: Promise<Found>,
  signal: AbortSignal | undefined,
  onLeft: () => void,
): Promise<Found> {
  if (!signal) return answer;
  return new Promise((resolve, reject) => {
    const left = () => {
      onLeft();
      reject(signal.reason);
    };
    if (signal.aborted) left();
    signal.addEventListener("abort", left, { once: true });
    answer.then(resolve, reject).finally(() => signal.removeEventListener("abort", left));
  });
}
