import { createHash } from "node:crypto";
import { LRUCache } from "lru-cache";
import type { Answer, Answering, Asked, Kind } from "./questions.js";

/** Kinds whose answers follow from the texts that are asked about, and are small. */
const kept: ReadonlySet<Kind> = new Set<Kind>([
  "balance",
  "effect",
  "differences",
  "explanation",
  "results",
  "report",
  "printable",
  "method",
  "methodToPrint",
  "figures",
]);

interface UnderWay {
  readonly answer: Promise<Answer<Kind>>;
  readonly ending: AbortController;
  waiting: number;
}

/** Nobody waits for an answer any more. */
class NobodyWaitsError extends Error {}

/**
 * The same question at the same time is asked once, for all who wait; it ends when all of them left. The last answers
 * are remembered by the texts that they follow from, since a revision's number may stand for another after restoring.
 * @param mostBytes that remembered answers may take
 */
export function sharedAnswers(answering: Answering, mostBytes: number): Answering {
  const answers = new LRUCache<string, Answer<Kind>>({
    maxSize: mostBytes,
    sizeCalculation: (answer) => 1 + sizeOf(answer),
  });
  const underWay = new Map<string, UnderWay>();
  const start = (key: string, kind: Kind, asked: Asked<Kind>): UnderWay => {
    const ending = new AbortController();
    const answer = answering
      .ask(kind, asked, ending.signal)
      .then((found) => {
        answers.set(key, found);
        return found;
      })
      .finally(() => forget(key, started));
    const started: UnderWay = { answer, ending, waiting: 0 };
    underWay.set(key, started);
    return started;
  };
  const forget = (key: string, ended: UnderWay) => {
    if (underWay.get(key) === ended) underWay.delete(key);
  };
  const leave = (key: string, left: UnderWay) => {
    left.waiting -= 1;
    if (left.waiting > 0) return;
    forget(key, left);
    left.ending.abort(new NobodyWaitsError());
  };
  return {
    ask: async <Which extends Kind>(kind: Which, asked: Asked<Which>, signal?: AbortSignal) => {
      if (!kept.has(kind)) return answering.ask(kind, asked, signal);
      const key = keyOf(kind, asked);
      const known = answers.get(key);
      if (known !== undefined) return known as Answer<Which>;
      const joined = underWay.get(key) ?? start(key, kind, asked);
      joined.waiting += 1;
      return (await orLeft(joined.answer, signal, () => leave(key, joined))) as Answer<Which>;
    },
    close: answering.close,
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

/** Bytes in memory, roughly; anything but pages is small. */
function sizeOf(answer: Answer<Kind>): number {
  if (answer instanceof Uint8Array) return answer.byteLength;
  if (typeof answer === "string") return 2 * answer.length;
  if (typeof answer === "object" && "body" in answer && typeof answer.body === "string")
    return 2 * answer.body.length;
  return smallAnswerBytes;
}

const smallAnswerBytes = 20_000;

/** Odds follow from the text. */
function keyOf(kind: Kind, asked: object): string {
  const told = "odds" in asked ? { ...asked, odds: asked.odds !== undefined } : asked;
  return createHash("sha256")
    .update(JSON.stringify([kind, told]))
    .digest("hex");
}
