import { type Answering, textOf } from "../app/answers/questions.js";
import type { Studies } from "../app/studies.js";

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
