import type { AssumptionSet } from "../assumptions/entry.js";
import type { StudyDocument } from "../study/format/schema.js";
import { oddsSettings } from "../study/format/uncertainty-schema.js";
import { assumptionSwings, type Swing } from "../study/odds/assumption-swings.js";
import type { WorkerPool } from "./pool.js";

/** A point takes a worker no time to speak of: one that is under way is finished, and the worker goes on. */
const unending = new AbortController().signal;

/**
 * Swings of a study's assumptions, worked out by the workers.
 * @param signal ends it between two points
 * @throws InputError; OddsError; the signal's reason
 */
export async function swingsBy(
  pool: WorkerPool,
  document: StudyDocument,
  assumptions: AssumptionSet,
  signal: AbortSignal,
): Promise<Swing[]> {
  const study = { document, settings: oddsSettings(document.study.uncertainty) };
  const { inputs } = await pool.ask(study, "plan", {}, unending);
  return assumptionSwings(document, assumptions, inputs, (points) =>
    mapFew(points, pool.size, (point) => {
      signal.throwIfAborted();
      return pool.ask(study, "netBenefits", { point }, unending);
    }),
  );
}

/** Works on as many at once as told, and gives the results in order. */
async function mapFew<Each, Result>(
  all: readonly Each[],
  atOnce: number,
  work: (each: Each) => Promise<Result>,
): Promise<Result[]> {
  const results: Result[] = [];
  const left = all.entries();
  const workOn = async () => {
    for (const [index, each] of left) results[index] = await work(each);
  };
  await Promise.all(Array.from({ length: atOnce }, workOn));
  return results;
}
