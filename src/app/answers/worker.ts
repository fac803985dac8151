import { parentPort, workerData } from "node:worker_threads";
import { standBack } from "../../odds/stand-back.js";
import { InputError } from "../../study/reading/problems.js";
import type { AnswersOf } from "./means.js";
import type { Reply, WorkerStart } from "./messages.js";
import type { Answer, Kind, Question } from "./questions.js";

/** Answers one question after another. */
const { niceness, answers: which, ...means }: WorkerStart = workerData;

standBack(niceness);

async function loaded(): Promise<Partial<AnswersOf<Kind>>> {
  if (which === "comparing") return (await import("./comparing.js")).comparing(means);
  if (which === "reporting") return (await import("./reporting.js")).reporting(means);
  return (await import("./papers.js")).papers(means);
}

const answers = await loaded();

const answerTo = ({ kind, asked }: Question): Answer<Kind> | Promise<Answer<Kind>> => {
  const answer = answers[kind] as ((asked: unknown) => Answer<Kind> | Promise<Answer<Kind>>) | undefined;
  if (!answer) throw new Error(`${which} answers no question of the kind ${kind}`);
  return answer(asked);
};

function send(reply: Reply): void {
  const answer = "answer" in reply ? reply.answer : undefined;
  parentPort?.postMessage(reply, answer instanceof Uint8Array ? [answer.buffer as ArrayBuffer] : []);
}

parentPort?.on("message", async (question: Question) => {
  try {
    send({ answer: await answerTo(question) });
  } catch (error) {
    if (error instanceof InputError) send({ subject: error.subject, problems: error.problems });
    else send({ fault: error });
  }
});
