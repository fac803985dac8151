import { afterAll, expect, it } from "vitest";
import { at } from "../../src/lists.js";
import { futuresPerBlock, lakesPerBlock } from "../../src/model/futures/draw-plan.js";
import type { Progress } from "../../src/odds/ask-each.js";
import { futuresOf, oddsOf } from "../../src/odds/draw.js";
import { workerPool } from "../../src/odds/pool.js";
import { drawingThreads } from "../../src/odds/threads.js";
import { oddsSettings } from "../../src/study/format/uncertainty-schema.js";
import type { EarlyFigures } from "../../src/study/odds/early-figures.js";
import { blocksAtOnce, earlyBlocks } from "../../src/study/odds/odds-settings.js";
import { readStudyText } from "../../src/study/reading/read.js";
import { assumptions } from "../report/runs.js";
import { smallLakeText } from "../study/small-lake.js";

const pool = workerPool(() => assumptions, drawingThreads(2));
afterAll(() => pool.close());

it("first figures are told once some draws are made, and again from more, up to those of the odds", async () => {
  const blocks = earlyBlocks + 2;
  const settings = { ...oddsSettings(undefined), mostFutures: blocks * futuresPerBlock };
  const study = { document: readStudyText(smallLakeText, "lake.yaml"), settings };
  const early: EarlyFigures[] = [];
  const told: Progress[] = [];
  const odds = await futuresOf(pool, study, {
    signal: new AbortController().signal,
    onProgress: (progress) => told.push(progress),
    onEarly: (figures) => early.push(figures),
  });

  expect(early.map(({ lakes }) => lakes)).toEqual([earlyBlocks * lakesPerBlock, blocks * lakesPerBlock]);
  const last = at(early, 1);
  odds.options.forEach(({ name, meanCost, everInfested, against }, index) => {
    const own = at(last.options, index);
    expect(own.name).toBe(name);
    expect(own.meanCost).toBeCloseTo(meanCost.value, 4);
    expect(own.everInfested).toBeCloseTo(everInfested.value, 12);
    expect(own.against === undefined).toBe(against === undefined);
    expect(own.against?.netBenefit ?? 0).toBeCloseTo(against?.netBenefit.value ?? 0, 4);
    expect(own.against?.cheaper ?? 0).toBeCloseTo(against?.cheaper.value ?? 0, 12);
  });
  expect(at(early, 0).options).not.toEqual(last.options);

  // All that is planned is known from the start, and nothing that was done is counted again.
  expect(new Set(told.map(({ planned }) => planned))).toEqual(new Set([blocks * lakesPerBlock]));
  const done = told.map((progress) => progress.done);
  expect(done).toEqual(done.toSorted((one, other) => one - other));
  expect(done.at(-1)).toBe(blocks * lakesPerBlock);
});

it("what matters is told early, too, by bars that are those of the odds", async () => {
  const settings = { ...oddsSettings(undefined), mostFutures: (blocksAtOnce + 1) * futuresPerBlock };
  const study = { document: readStudyText(smallLakeText, "lake.yaml"), settings };
  const early: EarlyFigures[] = [];
  const { matters } = await oddsOf(pool, study, {
    signal: new AbortController().signal,
    onProgress: () => undefined,
    onEarly: (figures) => early.push(figures),
  });
  const lakes = [4, 8, 16, 17].map((blocks) => blocks * lakesPerBlock);
  expect(early.map((figures) => figures.lakes)).toEqual(lakes);
  expect(early.map((figures) => figures.matters !== undefined)).toEqual([false, false, true, true]);
  const first = at(early, 2).matters;
  expect(first?.netBenefit).toBe(matters.netBenefit);
  expect(matters.tornado.length).toBeGreaterThan(5);
  for (const bar of matters.tornado.slice(0, 5)) expect(first?.tornado).toContainEqual(bar);
  // Ranks are of the draws so far.
  expect(first?.ranks).not.toEqual(matters.ranks);
});
