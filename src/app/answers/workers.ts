import { createHash } from "node:crypto";
import { availableParallelism } from "node:os";
import { join } from "node:path";
import { LRUCache } from "lru-cache";
import { projectRoot } from "../../project-root.js";
import { answerIn, type Reply } from "../../study/reading/replies.js";
import { recordsFor } from "../../study/records/at-hand.js";
import { type PoolSettings, type ThreadPool, threadPool } from "../../workers/thread-pool.js";
import type { AnswerContext } from "./answer-context.js";
import type { RecordedQuestion, WorkerStart } from "./messages.js";
import type { Answer, AnsweringInTurn, Kind, Question } from "./questions.js";

/** Where each question waits: short ones, in view while somebody types, never wait behind long ones. */
const queueNames = {
  balance: "short",
  effect: "short",
  differences: "short",
  results: "pages",
  chance: "pages",
  plans: "pages",
  report: "pages",
  printable: "pages",
  method: "pages",
  worked: "pages",
  methodToPrint: "pages",
  figures: "pages",
  plainForms: "pages",
  formsToPrint: "pages",
  printedForms: "pages",
  packed: "papers",
  issueToPrint: "papers",
  issuedPart: "papers",
  explanation: "explanations",
  ownEffects: "explanations",
  sweep: "explanations",
  fileTried: "explanations",
  logTried: "explanations",
  samplesTried: "explanations",
  workTried: "explanations",
} as const satisfies Record<Kind, string>;

type QueueName = (typeof queueNames)[Kind] | "morePages";

/** A page or figures that a reader waits for come before what will be printed or packed. */
const priorities: Partial<Record<Kind, number>> = {
  results: 2,
  chance: 2,
  plans: 2,
  figures: 2,
  report: 1,
  method: 1,
  worked: 1,
};

interface QueueSettings extends Pick<PoolSettings, "niceness" | "idleSeconds"> {
  readonly answers: WorkerStart["answers"];
  readonly longestSeconds: number;
}

/** Those that are seldom needed give their memory back. */
const queueSettings: Readonly<Record<QueueName, QueueSettings>> = {
  short: { answers: "comparing", niceness: 0, longestSeconds: 60 },
  pages: { answers: "reporting", niceness: 3, longestSeconds: 120 },
  /** Beside the first worker for pages, when many are asked for at once. */
  morePages: { answers: "reporting", niceness: 3, longestSeconds: 120, idleSeconds: 30 },
  papers: { answers: "papers", niceness: 10, longestSeconds: 120, idleSeconds: 30 },
  explanations: { answers: "comparing", niceness: 10, longestSeconds: 300, idleSeconds: 30 },
};

export interface AnswerWorkers extends AnsweringInTurn {
  /** Starts the workers that nearly every page needs. */
  readonly warm: () => void;
}

export interface WorkerSettings {
  /** Questions that may wait for each worker. */
  readonly mostWaiting: number;
  /** The compiled script of a worker. */
  readonly file: string;
  readonly longestSeconds?: number;
}

/** The compiled worker, also when this file is run as it is written. */
const answersFile = join(projectRoot, "dist", "app", "answers", "worker.js");

const usual: WorkerSettings = { mostWaiting: 40, file: answersFile };

const threadSettings = {
  threads: 1,
  /** More makes comparisons little faster. */
  youngMegabytes: 16,
  /** A worker that is stopped loses the runs that it has at hand. */
  stopsBusy: false,
};

type AnswerPool = ThreadPool<RecordedQuestion, Reply<Answer<Kind>>>;

/** Answers come from worker threads, each started when it is first needed. */
export function answerWorkers(
  context: () => AnswerContext,
  settings: Partial<WorkerSettings> = {},
): AnswerWorkers {
  const given = { ...usual, ...settings };
  const poolFor = (name: QueueName): AnswerPool => {
    const { answers, ...how } = queueSettings[name];
    const workerData = (): WorkerStart => ({ ...context(), answers });
    return threadPool({ ...threadSettings, ...how, ...given, workerData });
  };
  const single = {
    short: poolFor("short"),
    papers: poolFor("papers"),
    explanations: poolFor("explanations"),
  };
  const pages = Array.from({ length: pageWorkers() }, (_, index) =>
    poolFor(index === 0 ? "pages" : "morePages"),
  );
  const pageFor = placing(pages);
  return {
    ask: async (kind, asked, signal, turn) => {
      const name: Exclude<QueueName, "morePages"> = queueNames[kind];
      const about = turn?.about ?? digestOf(asked);
      const pool = name === "pages" ? pageFor(about) : single[name];
      const task = () => withRecords(kind, turn ? turn.asked() : asked);
      const reply = await pool.run(task, { signal, priority: priorities[kind] ?? 0, about });
      return answerIn(reply) as Answer<typeof kind>;
    },
    warm: () => {
      for (const each of [single.short, ...pages.slice(0, 1)]) each.warm();
    },
    close: async () => {
      await Promise.all([...Object.values(single), ...pages].map((each) => each.close()));
    },
  };
}

/** They stand back for the rest of the server, and the printing browser for them. */
const pageWorkers = () => Math.min(availableParallelism(), 3);

/** Studies whose worker is remembered, more than the workers have runs of. */
const mostPlaced = 100;

/** The same worker for the same study, since it has the run at hand; a new one goes where the fewest wait. */
function placing(pages: readonly AnswerPool[]): (about: string) => AnswerPool {
  const placed = new LRUCache<string, AnswerPool>({ max: mostPlaced });
  return (about) => {
    const pool =
      placed.get(about) ?? pages.reduce((least, each) => (each.open() < least.open() ? each : least));
    placed.set(about, pool);
    return pool;
  };
}

/** A worker has no store: the records that the texts of a question name go with it. */
const withRecords = (kind: Kind, asked: object): RecordedQuestion => ({
  question: { kind, asked } as Question,
  records: recordsFor(textsIn(asked)),
});

/** How deep in what is asked a study's text may stand. */
const deepestText = 3;

function textsIn(asked: object, depth = 1): string[] {
  return Object.values(asked).flatMap((value: unknown) => {
    if (typeof value === "string") return [value];
    const isGroup = typeof value === "object" && value !== null && !ArrayBuffer.isView(value);
    return isGroup && !Array.isArray(value) && depth < deepestText ? textsIn(value, depth + 1) : [];
  });
}

function digestOf(asked: object): string {
  const text = "text" in asked && typeof asked.text === "string" ? asked.text : "";
  return createHash("sha256").update(text).digest("hex");
}
