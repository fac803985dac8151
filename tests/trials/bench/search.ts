import { monitorEventLoopDelay } from "node:perf_hooks";
import type { AssumptionSet } from "#product/assumptions/entry.js";
import { lakeTerms } from "#product/model/search/lake-terms.js";
import { workerPool } from "#product/odds/pool.js";
import { searchOf } from "#product/odds/search.js";
import type { StudyDocument } from "#product/study/format/schema.js";
import { oddsSettings } from "#product/study/format/uncertainty-schema.js";
import { searchPlan } from "#product/study/search/plan.js";
import { programSearch } from "#product/study/search/search.js";

export interface SearchTimes {
  /** Of a study that is new to the process: the frontier with its answers, at central values. */
  readonly frontier: number;
  /** Programs and levels over all simulated outcomes, with workers that are new and with the same again. */
  readonly first: number;
  readonly again: number;
  readonly futures: number;
  /** Longest time for which this thread did nothing else, ms. */
  readonly longestDelay: number;
}

export async function timeSearch(document: StudyDocument, assumptions: AssumptionSet): Promise<SearchTimes> {
  const frontier = timedFrontier(document, assumptions);
  const pool = workerPool(() => assumptions);
  const study = { document, settings: oddsSettings(document.study.uncertainty) };
  const delay = monitorEventLoopDelay({ resolution: 1 });
  const searched = async () => {
    const start = performance.now();
    const { signal } = new AbortController();
    const result = await searchOf(pool, { ...study }, { signal, onProgress: () => undefined });
    return { time: performance.now() - start, futures: result.programs?.futures ?? 0 };
  };
  delay.enable();
  const first = await searched();
  const again = await searched();
  delay.disable();
  await pool.close();
  return {
    ...{ frontier, first: first.time, again: again.time, futures: first.futures },
    longestDelay: delay.max / 1e6,
  };
}

function timedFrontier(document: StudyDocument, assumptions: AssumptionSet): number {
  const start = performance.now();
  const plan = searchPlan(document, assumptions);
  const { input, assumed: source } = plan.prepared;
  programSearch(plan, [lakeTerms({ input, source, futures: [{ input, source }] }, plan.searched)]);
  return performance.now() - start;
}
