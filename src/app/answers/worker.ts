import { workerData } from "node:worker_threads";
import { type Reply, replyOf } from "../../study/reading/replies.js";
import { moved } from "../../workers/moved.js";
import type { AnswersOf } from "./answer-context.js";
import type { WorkerStart } from "./messages.js";
import type { Answer, Kind, Question } from "./questions.js";

const { answers: which, ...context }: WorkerStart = workerData;

async function loaded(): Promise<Partial<AnswersOf<Kind>>> {
  if (which === "comparing") return (await import("./comparing.js")).comparing(context);
  if (which === "reporting") return (await import("./reporting.js")).reporting(context);
  return (await import("./papers.js")).papers(context);
}

/** Answers a question, once all that is needed for it is loaded. */
export const work = loaded().then(
  (answers) =>
    async ({ kind, asked }: Question): Promise<Reply<Answer<Kind>>> => {
      const answer = answers[kind] as ((asked: unknown) => Answer<Kind> | Promise<Answer<Kind>>) | undefined;
      if (!answer) throw new Error(`${which} answers no question of the kind ${kind}`);
      const reply = await replyOf(() => answer(asked));
      const bytes = "answer" in reply && reply.answer instanceof Uint8Array ? [reply.answer.buffer] : [];
      return moved(reply, bytes);
    },
);
