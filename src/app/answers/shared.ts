import { createHash } from "node:crypto";
import { LRUCache } from "lru-cache";
import type {
  Answer,
  Answering,
  AnsweringInTurn,
  Asked,
  Kind,
  LatestAnswer,
  StudyText,
} from "./questions.js";
import { questionsUnderWay, type UnderWay } from "./under-way.js";

/** Kinds whose answers follow from the texts that are asked about, and are small. */
const kept: ReadonlySet<Kind> = new Set<Kind>([
  "balance",
  "effect",
  "differences",
  "explanation",
  "results",
  "chance",
  "plans",
  "report",
  "printable",
  "method",
  "worked",
  "methodToPrint",
  "figures",
]);

/**
 * The same question at the same time is asked once, for all who wait; it ends when all of them left. The last answers
 * are remembered by the texts that they follow from, since a revision's number may stand for another after restoring.
 * @param mostBytes that remembered answers may take
 */
export function sharedAnswers(answering: AnsweringInTurn, mostBytes: number): Answering {
  const answers: Remembered = new LRUCache({ maxSize: mostBytes, sizeCalculation: sizeOf });
  const underWay = questionsUnderWay();
  const { start, hasBegun } = starting(answering, answers, underWay);
  const knownAt = <Which extends Kind>(key: string) => answers.get(key) as Answer<Which> | undefined;
  return {
    known: (kind, asked) => knownAt(keyOf(kind, asked)),
    hasBegun,
    ask: async <Which extends Kind>(kind: Which, asked: Asked<Which>, signal?: AbortSignal) => {
      if (!kept.has(kind)) return answering.ask(kind, asked, signal);
      const key = keyOf(kind, asked);
      const known = knownAt<typeof kind>(key);
      if (known !== undefined) return known;
      const inTurn = () => ({ asked, entry: undefined });
      const joined = underWay.at(key) ?? start(key, kind, { asked, about: undefined, inTurn });
      return (await underWay.join(joined, signal)).answer as Answer<Which>;
    },
    askLatest: async (kind, { study, find, askedOf }, signal) => {
      const entry = find();
      const asked = askedOf(entry);
      const key = keyOf(kind, asked);
      const known = knownAt<typeof kind>(key);
      if (known !== undefined) return { entry, answer: known };
      const inTurn = () => {
        const latest = find();
        return { asked: askedOf(latest), entry: latest };
      };
      const place = keyOf(kind, { ...asked, text: "", study });
      const joined =
        underWay.at(key) ?? underWay.at(place) ?? start(place, kind, { asked, about: study, inTurn });
      const found = await underWay.join(joined, signal);
      return { answer: found.answer, entry: found.entry ?? entry } as LatestAnswer<typeof kind, typeof entry>;
    },
    close: answering.close,
  };
}

type Remembered = LRUCache<string, Answer<Kind>>;

/** Asks what is neither remembered nor under way, and remembers the answer. */
function starting(
  answering: AnsweringInTurn,
  answers: Remembered,
  underWay: ReturnType<typeof questionsUnderWay>,
) {
  let hasBegun = false;
  const start = (waitingKey: string, kind: Kind, { asked, about, inTurn }: Asking): UnderWay => {
    hasBegun = true;
    const ending = new AbortController();
    let turn: Turn = { asked, entry: undefined };
    let key = waitingKey;
    let started: UnderWay | undefined;
    const begin = () => {
      turn = inTurn();
      key = keyOf(kind, turn.asked);
      if (started) underWay.move(started, key);
      return turn.asked;
    };
    const found = answering
      .ask(kind, asked, ending.signal, about === undefined ? undefined : { about, asked: begin })
      .then((answer) => {
        answers.set(keyOf(kind, turn.asked), answer);
        return { answer, entry: turn.entry };
      })
      .finally(() => started && underWay.forget(started));
    started = { key, found, ending, waiting: 0 };
    underWay.move(started, key);
    return started;
  };
  return { start, hasBegun: () => hasBegun };
}

interface Turn {
  readonly asked: Asked<Kind>;
  /** The study, where it is asked about as it is at its turn. */
  readonly entry: StudyText | undefined;
}

interface Asking {
  readonly asked: Asked<Kind>;
  readonly about: string | undefined;
  readonly inTurn: () => Turn;
}

/** Bytes in memory, roughly, and never none; anything but pages is small. */
function sizeOf(answer: Answer<Kind>): number {
  if (answer instanceof Uint8Array) return 1 + answer.byteLength;
  if (typeof answer === "string") return 1 + 2 * answer.length;
  if (typeof answer === "object" && "body" in answer && typeof answer.body === "string")
    return 1 + 2 * answer.body.length;
  return smallAnswerBytes;
}

const smallAnswerBytes = 20_000;

/** Odds follow from the text. */
function keyOf(kind: Kind, asked: object): string {
  const keyed = "odds" in asked ? { ...asked, odds: asked.odds !== undefined } : asked;
  return createHash("sha256")
    .update(JSON.stringify([kind, keyed]))
    .digest("hex");
}
