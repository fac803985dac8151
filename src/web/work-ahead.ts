import type { Server } from "node:http";
import { type Answering, textOf } from "../app/answers/questions.js";
import type { Studies } from "../app/studies.js";
import { once } from "../model/computed-once.js";

/**
 * Works the examples out, one after another, before somebody asks for them: their pages are there at once, and a study
 * that is asked for first finds a worker that has done such work before.
 */
export async function workAhead(studies: Studies, answers: Answering, signal: AbortSignal): Promise<void> {
  for (const { id, isExample } of studies.list()) {
    const entry = isExample ? studies.find(id) : undefined;
    if (!entry || signal.aborted) continue;
    await answers.ask("balance", textOf(entry), signal);
    await answers.ask("results", { ...textOf(entry), report: `/studies/${id}/report` }, signal);
  }
}

const usualRest = 1000;

/**
 * Begins once the first question is answered, with which it would share the processors, or nobody has asked for a while.
 * @param signal ends the server: what has not begun by then never does
 */
export function afterFirstAnswer(
  server: Server,
  signal: AbortSignal,
  begin: () => void,
  restMilliseconds = usualRest,
): void {
  const begun = once(() => {
    clearTimeout(clock);
    if (!signal.aborted) begin();
  });
  const clock = setTimeout(begun, restMilliseconds);
  signal.addEventListener("abort", begun, { once: true });
  server.once("request", (_question, answer) => answer.once("close", begun));
}
