import type { Server } from "node:http";
import { type Answering, textOf } from "../app/answers/questions.js";
import type { Studies } from "../app/studies.js";
import { once } from "../model/computed-once.js";

/**
 * Works the examples out, one after another, before somebody asks for them: their pages are there at once, and a study
 * that is asked for first finds a worker that has done such work before.
 * @param tell of an example that could not be worked out; the others are all the same
 */
export async function workAhead(
  studies: Studies,
  answers: Answering,
  signal: AbortSignal,
  tell: (fault: unknown) => void,
): Promise<void> {
  const workOut = async (id: string) => {
    const entry = studies.find(id);
    if (!entry) return;
    await answers.ask("balance", textOf(entry), signal);
    await answers.ask("results", { ...textOf(entry), report: `/studies/${id}/report` }, signal);
  };
  for (const { id } of studies.list().filter(({ isExample }) => isExample)) {
    if (signal.aborted) return;
    await workOut(id).catch((fault) => signal.aborted || tell(fault));
  }
}

/** Milliseconds after the first answer, in which a browser asks for the style and the fonts of the page. */
const restAnswered = 400;

/** And after the start, where nobody asks. */
const restUnasked = 1000;

/**
 * Begins a little after the first question is answered, or where nobody has asked for a while: whoever waits for the first
 * page would share the processors with it.
 * @param signal ends the server: what has not begun by then never does
 */
export function afterFirstAnswer(server: Server, signal: AbortSignal, begin: () => void): void {
  const begun = once(() => signal.aborted || begin());
  const clock = setTimeout(begun, restUnasked).unref();
  const answered = () => {
    clearTimeout(clock);
    setTimeout(begun, restAnswered).unref();
  };
  server.once("request", (_question, answer) => answer.once("close", answered));
}
