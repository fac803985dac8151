import { workerData } from "node:worker_threads";
import { type Reply, replyOf } from "../../study/reading/replies.js";
import { takeRecord } from "../../study/records/at-hand.js";
import { moved } from "../../workers/moved.js";
import type { AnswersOf } from "./answer-context.js";
import type { RecordedQuestion, WorkerStart } from "./messages.js";
import type { Answer, Kind } from "./questions.js";

const { answers: which, ...context }: WorkerStart = workerData;

async function loaded(): Promise<Partial<AnswersOf<Kind>>> {
  if (which === "comparing") return (await import("./comparing.js")).comparing(context);
  if (which === "reporting") return (await import("./reporting.js")).reporting(context);
  return (await import("./papers.js")).papers(context);
}

/** Answers a question, once all that is needed for it is loaded. */
export const work = loaded().then(
  (answers) =>
    async ({ question: { kind, asked }, records }: RecordedQuestion): Promise<Reply<Answer<Kind>>> => {
      for (const record of records) takeRecord(record);
      const answer = answers[kind] as ((asked: unknown) => Answer<Kind> | Promise<Answer<Kind>>) | undefined;
      if (!answer) throw new Error(`${which} answers no question of the kind ${kind}`);
      const reply = await replyOf(() => answer(asked));
      const bytes = "answer" in reply && reply.answer instanceof Uint8Array ? [reply.answer.buffer] : [];
      return moved(reply, bytes);
    },
);
