import { dirname } from "node:path";
import { setImmediate as nextTurn } from "node:timers/promises";
import type { AssumptionSet } from "../assumptions/entry.js";
import { loadAssumptions } from "../assumptions/load.js";
import type { DrawControl, Progress } from "../odds/ask-each.js";
import { futuresOf, oddsOf } from "../odds/draw.js";
import type { StudyToDraw } from "../odds/messages.js";
import { type WorkerPool, workerPool } from "../odds/pool.js";
import { type DrawingThreads, drawingThreads } from "../odds/threads.js";
import { assumptionsFolder } from "../report/document/assets.js";
import { oddsTables } from "../report/odds/odds-tables.js";
import type { StudyDocument } from "../study/format/schema.js";
import { oddsSettings } from "../study/format/uncertainty-schema.js";
import type { FuturesOdds, Odds } from "../study/odds/odds.js";
import { leastFutures, mostFutures } from "../study/odds/odds-settings.js";
import { runStudy, type StudyRun } from "../study/prepare/compute.js";
import { readStudyFile } from "../study/reading/read.js";
import { type OptionValues, whole } from "./arguments.js";
import { tableText } from "./table-text.js";

interface OddsArguments {
  /** Most futures, and the seed, where they differ from the study's. */
  readonly futures: number | undefined;
  readonly seed: number | undefined;
  /** As many as usual if left out. */
  readonly workers: number | undefined;
  readonly asJson: boolean;
}

export function oddsArguments(values: OptionValues): OddsArguments {
  return {
    futures: whole("--futures", values.futures, { least: leastFutures, most: mostFutures }),
    seed: whole("--seed", values.seed, { least: 0, most: Number.MAX_SAFE_INTEGER }),
    workers: whole("--workers", values.workers, { least: 1, most: mostWorkersAsked }),
    asJson: values.json ?? false,
  };
}

const mostWorkersAsked = 64;

type Draw<Found> = (pool: WorkerPool, study: StudyToDraw, control: DrawControl) => Promise<Found>;

export interface RunWithOdds<Found> {
  readonly run: StudyRun;
  readonly odds: Found;
}

interface Drawing {
  /** Started already; if left out they are when the first question is asked. */
  readonly threads?: DrawingThreads;
  /** Works out what else can be told of the run while its futures are drawn. */
  readonly ahead?: (run: StudyRun) => void;
}

/**
 * A study's run, and its futures drawn with all processors, as the study says. Both begin at once: workers load what they
 * need while this thread computes. How far drawing has come is told to a terminal.
 */
export const runWithOdds = (
  document: StudyDocument,
  assumptions: AssumptionSet,
  how?: Drawing,
): Promise<RunWithOdds<Odds>> => besideDraws(oddsOf, document, assumptions, how);

/** The same without what matters in the study. */
export const runWithFutures = (
  document: StudyDocument,
  assumptions: AssumptionSet,
  how: Drawing,
): Promise<RunWithOdds<FuturesOdds>> => besideDraws(futuresOf, document, assumptions, how);

async function besideDraws<Found>(
  draw: Draw<Found>,
  document: StudyDocument,
  assumptions: AssumptionSet,
  { threads, ahead = () => undefined }: Drawing = {},
): Promise<RunWithOdds<Found>> {
  const ending = new AbortController();
  const pool = workerPool(() => assumptions, threads);
  const drawing = drawn(draw, asStated(document), pool, ending.signal);
  // It may fail before anybody waits for it.
  drawing.catch(() => undefined);
  try {
    await nextTurn();
    const run = runStudy(document, assumptions);
    ahead(run);
    return { run, odds: await drawing };
  } catch (error) {
    ending.abort(error);
    await drawing.catch(() => undefined);
    throw error;
  }
}

const asStated = (document: StudyDocument): StudyToDraw => ({
  document,
  settings: oddsSettings(document.study.uncertainty),
});

export async function drawn<Found>(
  draw: Draw<Found>,
  study: StudyToDraw,
  pool: WorkerPool,
  signal = new AbortController().signal,
): Promise<Found> {
  try {
    return await draw(pool, study, { signal, onProgress: tellTerminal });
  } finally {
    // What the answer is for goes on meanwhile.
    void pool.close();
  }
}

/** Draws the study's futures and prints what they say. */
export async function oddsCommand(
  path: string,
  { futures, seed, workers, asJson }: OddsArguments,
  print: (text: string) => void,
): Promise<void> {
  const document = readStudyFile(path);
  const { settings: stated } = asStated(document);
  const settings = { ...stated, seed: seed ?? stated.seed, mostFutures: futures ?? stated.mostFutures };
  const assumptions = loadAssumptions(assumptionsFolder, dirname(path));
  const pool = workerPool(() => assumptions, drawingThreads(workers));
  const odds = await drawn(oddsOf, { document, settings }, pool);
  print(asJson ? JSON.stringify(odds, undefined, 2) : oddsText(odds, document));
}

function oddsText(odds: Odds, document: StudyDocument): string {
  const { drawn, tables } = oddsTables(odds, document);
  return [document.study.name, drawn, "", ...tables.map(tableText)].join("\n");
}

function tellTerminal({ done, planned }: Progress): void {
  if (!process.stderr.isTTY) return;
  const ending = done === planned ? "\r\x1b[K" : "";
  process.stderr.write(`\r${done} of ${planned} draws of the lake${ending}`);
}
