import { at } from "../lists.js";
import { lakesPerBlock } from "../model/futures/draw-plan.js";
import type { LakeFutures, LakePoint } from "../study/odds/draws.js";
import type { FuturesOdds, Odds } from "../study/odds/odds.js";
import { leastFutures } from "../study/odds/odds-settings.js";
import { sensitivityOf } from "../study/odds/sensitivity.js";
import { blocksToDo, type ComparedOptions, comparedOptions } from "../study/odds/stop-drawing.js";
import type { SearchResult } from "../study/search/result.js";
import { askEach, type DrawControl, type Progress } from "./ask-each.js";
import type { StudyToDraw } from "./messages.js";
import type { WorkerPool } from "./pool.js";
import { searchOf } from "./search.js";

interface Blocks {
  readonly first: number;
  readonly count: number;
}

/**
 * Draws of the lake in the order of blocks and places, whichever worker made them and when: the figures do not depend on
 * the number of workers. One that fails ends the others.
 */
export async function drawLakes(
  pool: WorkerPool,
  study: StudyToDraw,
  { first, count }: Blocks,
  control: DrawControl,
): Promise<LakeFutures[]> {
  const places = Array.from({ length: count * lakesPerBlock }, (_, unit) => ({
    block: first + Math.floor(unit / lakesPerBlock),
    lake: unit % lakesPerBlock,
  }));
  return askEach(places, (place, signal) => pool.ask(study, "lake", place, signal), control);
}

/** Draws a study until its stop rule is content, and tells what its futures say, without what matters in it. */
export const futuresOf = async (
  pool: WorkerPool,
  study: StudyToDraw,
  control: DrawControl,
): Promise<FuturesOdds> => (await drawn(pool, study, control)).summary;

/** The same from the fewest draws that have a range: a first look at a study that is being typed. */
export const fewFuturesOf = (
  pool: WorkerPool,
  { document, settings }: StudyToDraw,
  control: DrawControl,
): Promise<FuturesOdds> =>
  futuresOf(pool, { document, settings: { ...settings, mostFutures: leastFutures } }, control);

/** Draws a study until its stop rule is content, with what matters in it: most of the time goes there. */
export async function oddsOf(
  pool: WorkerPool,
  study: StudyToDraw,
  { signal, onProgress }: DrawControl,
): Promise<Odds> {
  let before = 0;
  const counted = {
    signal,
    onProgress: ({ done, planned }: Progress) => {
      onProgress({ done: before + done, planned: before + planned });
      if (done === planned) before += planned;
    },
  };
  const { lakes, summary } = await drawn(pool, study, counted);
  const plan = await pool.ask(study, "plan", {}, signal);
  const run = (points: readonly LakePoint[]) =>
    askEach(points, (point, either) => pool.ask(study, "netBenefits", { point }, either), counted);
  const benefits = netBenefits(lakes, comparedOptions(study.document));
  const matters = await sensitivityOf(plan, benefits, run);
  if (!study.document.search) return { ...summary, matters };
  return { ...summary, matters, search: withoutTexts(await searchOf(pool, study, counted)) };
}

/** Schedules as texts of a study are for its page alone. */
const withoutTexts = ({ programs, levels }: SearchResult): SearchResult => ({
  programs,
  levels: levels && { ...levels, written: [] },
});

async function drawn(pool: WorkerPool, study: StudyToDraw, control: DrawControl) {
  const compared = comparedOptions(study.document);
  const lakes: LakeFutures[] = [];
  let next = blocksToDo(lakes, compared, study.settings);
  while (!("end" in next)) {
    const blocks = { first: lakes.length / lakesPerBlock, count: next.blocks };
    lakes.push(...(await drawLakes(pool, study, blocks, control)));
    next = blocksToDo(lakes, compared, study.settings);
  }
  const summary = await pool.ask(study, "summary", { lakes, end: next.end }, control.signal);
  return { lakes, summary };
}

/** Of the requested option, luck left out, a list for each lake. */
function netBenefits(
  lakes: readonly LakeFutures[],
  { requested, baseline }: ComparedOptions,
): readonly Float64Array[] {
  return lakes.map(({ expected }) =>
    at(expected, baseline).map((cost, future) => cost - at(at(expected, requested), future)),
  );
}
