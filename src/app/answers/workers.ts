import { availableParallelism } from "node:os";
import { type Lane, lane } from "./lane.js";
import type { Means } from "./means.js";
import type { WorkerStart } from "./messages.js";
import type { Answer, Answering, Asked, Kind, Question } from "./questions.js";
import { answersFile, answerThread, type ThreadSettings } from "./thread.js";

/** Which worker answers what: short questions, in view while somebody types, never wait behind long ones. */
const laneNames = {
  balance: "short",
  effect: "short",
  differences: "short",
  results: "pages",
  report: "pages",
  printable: "pages",
  method: "pages",
  methodToPrint: "pages",
  figures: "pages",
  plainForms: "pages",
  formsToPrint: "pages",
  printedForms: "pages",
  packed: "papers",
  issueToPrint: "papers",
  issued: "papers",
  explanation: "explanations",
} as const satisfies Record<Kind, string>;

type LaneName = (typeof laneNames)[Kind];

interface LaneSettings extends ThreadSettings {
  readonly answers: WorkerStart["answers"];
  /** How much it stands back for other threads. */
  readonly niceness: number;
}

/** Those that are seldom needed give their memory back. */
const laneSettings: Readonly<Record<LaneName, LaneSettings>> = {
  short: { answers: "comparing", niceness: 0, longestSeconds: 60 },
  pages: { answers: "reporting", niceness: 3, longestSeconds: 120 },
  papers: { answers: "papers", niceness: 3, longestSeconds: 120, idleSeconds: 30 },
  explanations: { answers: "comparing", niceness: 10, longestSeconds: 300, idleSeconds: 30 },
};

export interface AnswerWorkers extends Answering {
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

const usual: WorkerSettings = { mostWaiting: 40, file: answersFile };

/** Answers come from worker threads, each started when it is first needed. */
export function answerWorkers(means: Means, settings: Partial<WorkerSettings> = {}): AnswerWorkers {
  const { mostWaiting, file, longestSeconds: limit } = { ...usual, ...settings };
  const laneFor = (name: LaneName): Lane => {
    const { answers, niceness, longestSeconds, ...rest } = laneSettings[name];
    const times = { ...rest, longestSeconds: limit ?? longestSeconds };
    return lane(answerThread({ ...means, answers, niceness }, times, file), mostWaiting);
  };
  const single = {
    short: laneFor("short"),
    papers: laneFor("papers"),
    explanations: laneFor("explanations"),
  };
  const pages = Array.from({ length: pageWorkers() }, () => laneFor("pages"));
  const all = [...Object.values(single), ...pages];
  const laneOf = ({ kind, asked }: Question): Lane => {
    const name = laneNames[kind];
    return name === "pages" ? pageLane(pages, asked) : single[name];
  };
  return {
    ask: async <Which extends Kind>(kind: Which, asked: Asked<Which>, signal?: AbortSignal) => {
      const question = { kind, asked } as Question;
      return (await laneOf(question).ask(question, signal)) as Answer<Which>;
    },
    warm: () => {
      single.short.warm();
      for (const each of pages) each.warm();
    },
    close: async () => {
      await Promise.all(all.map((each) => each.close()));
    },
  };
}

/** One processor is left to the rest of the server and the printing browser. */
const pageWorkers = () => Math.min(Math.max(availableParallelism() - 1, 1), 3);

/** The same worker for the same study, since it has the run at hand. */
function pageLane(pages: readonly Lane[], asked: object): Lane {
  const length = "text" in asked && typeof asked.text === "string" ? sumOf(asked.text) : 0;
  const chosen = pages[length % pages.length];
  if (!chosen) throw new Error("no worker for pages");
  return chosen;
}

/** Some number that follows from a text. */
function sumOf(text: string): number {
  let sum = 0;
  for (let index = 0; index < text.length; index += 1) sum = (31 * sum + text.charCodeAt(index)) % 65_521;
  return sum;
}
