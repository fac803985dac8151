import { at } from "../lists.js";
import { lakesPerBlock } from "../model/futures/draw-plan.js";
import type { LakeFutures, LakePoint } from "../study/odds/draws.js";
import { earlyFigures } from "../study/odds/early-figures.js";
import { type DrawnFutures, joinedFutures, joinedParts } from "../study/odds/joined-futures.js";
import type { FuturesOdds, Odds, Sensitivity } from "../study/odds/odds.js";
import { blocksAtOnce, earlyBlocks, leastFutures } from "../study/odds/odds-settings.js";
import { sensitivityOf } from "../study/odds/sensitivity.js";
import { blocksToDo, type ComparedOptions, comparedOptions } from "../study/odds/stop-drawing.js";
import type { SearchResult } from "../study/search/result.js";
import { askEach, type DrawControl, type Progress } from "./ask-each.js";
import type { Questions, StudyToDraw } from "./messages.js";
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
): Promise<FuturesOdds> => pool.ask(study, "summary", await drawn(pool, study, control), control.signal);

/** The same from the fewest draws that have a range: a first look at a study that is being typed. */
export const fewFuturesOf = (
  pool: WorkerPool,
  { document, settings }: StudyToDraw,
  control: DrawControl,
): Promise<FuturesOdds> =>
  futuresOf(pool, { document, settings: { ...settings, mostFutures: leastFutures } }, control);

/**
 * Draws a study until its stop rule is content, with what matters in it. First figures are told as soon as some are drawn,
 * since most of the time goes to the rest.
 */
export async function oddsOf(pool: WorkerPool, study: StudyToDraw, control: DrawControl): Promise<Odds> {
  const ending = new AbortController();
  const signal = AbortSignal.any([control.signal, ending.signal]);
  const next = inStages({ ...control, signal });
  const mattersIn = mattersOf(pool, study);
  const untold = { signal, onProgress: () => undefined };
  const all = await drawn(pool, study, next(), (futures) => mattersIn(futures, untold));
  const { options, plans } = all.futures;
  const ofInputs = { options: options.map(({ expected }) => ({ expected })), plans };
  const told = [
    mattersIn(all.futures, next()),
    pool.ask(study, "summary", all, signal),
    pool.ask(study, "inputs", { futures: ofInputs }, signal),
  ] as const;
  const [matters, summary, inputs] = await Promise.all(told).catch((error: unknown) => {
    ending.abort(error);
    throw error;
  });
  const odds = { ...summary, ...inputs, matters };
  if (!study.document.search) return odds;
  return { ...odds, search: withoutTexts(await searchOf(pool, study, next())) };
}

/**
 * Tells what matters in a study by what was drawn of it: by rank, and by bars. A bar that was worked out before is known, since it
 * rests on no draw.
 */
function mattersOf(pool: WorkerPool, study: StudyToDraw) {
  const known = new Map<string, readonly number[]>();
  const askPoint = async (point: LakePoint, signal: AbortSignal) => {
    const key = JSON.stringify([point.lake, ...point.chances].map((values) => [...values]));
    const found = known.get(key) ?? (await pool.ask(study, "netBenefits", { point }, signal));
    known.set(key, found);
    return found;
  };
  return async (
    futures: DrawnFutures,
    control: Pick<DrawControl, "signal" | "onProgress">,
  ): Promise<Sensitivity> => {
    const benefits = netBenefits(futures, comparedOptions(study.document));
    const [ranks, plan] = await Promise.all([
      pool.ask(study, "ranks", { netBenefits: benefits }, control.signal),
      pool.ask(study, "plan", {}, control.signal),
    ]);
    return sensitivityOf(plan, ranks, (points) => askEach(points, askPoint, control));
  };
}

/** Gives a control for each stage of a run, which counts on from what was done before it. */
function inStages({ onProgress, ...control }: DrawControl): () => DrawControl {
  let told = 0;
  return () => {
    const before = told;
    return {
      ...control,
      onProgress: ({ done, planned }) => {
        told = before + done;
        onProgress({ done: told, planned: before + planned });
      },
    };
  };
}

/** Schedules as texts of a study are for its page alone. */
const withoutTexts = ({ programs, levels }: SearchResult): SearchResult => ({
  programs,
  levels: levels && { ...levels, written: [] },
});

/**
 * Futures until the stop rule is content, and why it is.
 * @param mattersIn what they have in them, told early to whoever looks on
 */
async function drawn(
  pool: WorkerPool,
  study: StudyToDraw,
  control: DrawControl,
  mattersIn?: (futures: DrawnFutures) => Promise<Sensitivity>,
): Promise<Questions["summary"]> {
  const compared = comparedOptions(study.document);
  let matters: Sensitivity | undefined;
  const parts: DrawnFutures[] = [];
  let first = 0;
  let next = blocksToDo(parts, compared, study.settings);
  while (!("end" in next)) {
    const before = first * lakesPerBlock;
    const planned = before + next.blocks * lakesPerBlock;
    const onProgress = ({ done }: Progress) => control.onProgress({ done: before + done, planned });
    const count = Math.min(next.blocks, Math.max(first, earlyBlocks), blocksAtOnce);
    parts.push(joinedFutures(await drawLakes(pool, study, { first, count }, { ...control, onProgress })));
    first += count;
    next = blocksToDo(parts, compared, study.settings);
    const isEnough = !("end" in next) && first >= blocksAtOnce;
    if (control.onEarly && isEnough) matters ??= await mattersIn?.(joinedParts(parts));
    control.onEarly?.({ ...earlyFigures(study.document, parts), ...(matters && { matters }) });
    if (!("end" in next)) await control.giveWay?.();
  }
  return { futures: joinedParts(parts), end: next.end };
}

/** Of the requested option in each future, luck left out. */
function netBenefits({ options }: DrawnFutures, { requested, baseline }: ComparedOptions): Float64Array {
  const { expected } = at(options, requested);
  return at(options, baseline).expected.map((cost, future) => cost - at(expected, future));
}
