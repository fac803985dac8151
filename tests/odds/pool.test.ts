import { fileURLToPath } from "node:url";
import { afterEach, describe, expect, it, vi } from "vitest";
import { lakesPerBlock } from "../../src/model/futures/draw-plan.js";
import type { Progress } from "../../src/odds/ask-each.js";
import { drawLakes } from "../../src/odds/draw.js";
import type { StudyToDraw } from "../../src/odds/messages.js";
import { OddsError, type WorkerPool, workerPool } from "../../src/odds/pool.js";
import { drawingThreads } from "../../src/odds/threads.js";
import { oddsSettings } from "../../src/study/format/uncertainty-schema.js";
import { drawnStudy } from "../../src/study/odds/draws.js";
import { joinedFutures } from "../../src/study/odds/joined-futures.js";
import { oddsSummary } from "../../src/study/odds/odds-summary.js";
import { InputError } from "../../src/study/reading/problems.js";
import { readStudyText } from "../../src/study/reading/read.js";
import { assumptions } from "../report/runs.js";
import { smallLakeText } from "../study/small-lake.js";

const study: StudyToDraw = {
  document: readStudyText(smallLakeText, "lake.yaml"),
  settings: { ...oddsSettings(undefined), seed: 5 },
};
const endingWorker = fileURLToPath(new URL("ending-worker.js", import.meta.url));
const unending = new AbortController().signal;
const quiet = () => undefined;
const oneBlock = { first: 0, count: 1 };
const control = { signal: unending, onProgress: quiet };

let pool: WorkerPool | undefined;
const opened = (size: number, file?: string) => {
  pool = workerPool(() => assumptions, drawingThreads(size, file));
  return pool;
};

afterEach(() => pool?.close());

it("are closed without the assumptions that no question asked for", async () => {
  const read = vi.fn(() => assumptions);
  await workerPool(read).close();
  expect(read).not.toHaveBeenCalled();
});

describe("figures of workers", () => {
  const drawn = drawnStudy(study.document, assumptions, study.settings);
  const lakes = Array.from({ length: 2 * lakesPerBlock }, (_, unit) =>
    drawn.futures(Math.floor(unit / lakesPerBlock), unit % lakesPerBlock),
  );
  const all = joinedFutures(lakes);
  const expected = oddsSummary({ ...study, drawn }, all, "cap");

  it.each([
    [1, 1],
    [2, 1],
    [3, 2],
  ])("of %i are those of the main thread, block by block: %i", async (size, count) => {
    const some = opened(size);
    const found = await drawLakes(some, study, { first: 0, count }, control);
    expect(found).toEqual(lakes.slice(0, count * lakesPerBlock));
    expect(await some.ask(study, "summary", { futures: all, end: "cap" }, unending)).toEqual(expected);
  });

  it("are of the study that was asked last, and of the first again", async () => {
    const other = { ...study, settings: { ...study.settings, seed: 6 } };
    const two = opened(2);
    const first = await two.ask(study, "lake", { block: 0, lake: 1 }, unending);
    const between = await two.ask(other, "lake", { block: 0, lake: 1 }, unending);
    expect(between).not.toEqual(first);
    expect(await two.ask(study, "lake", { block: 0, lake: 1 }, unending)).toEqual(first);
  });
});

describe("progress", () => {
  it("counts every draw of the lake once, of whole blocks", async () => {
    const told: Progress[] = [];
    const onProgress = (progress: Progress) => told.push(progress);
    await drawLakes(opened(2), study, oneBlock, { ...control, onProgress });
    expect(told.map(({ done }) => done)).toEqual(
      Array.from({ length: lakesPerBlock + 1 }, (_, done) => done),
    );
    expect(new Set(told.map(({ planned }) => planned))).toEqual(new Set([lakesPerBlock]));
  });
});

describe("cancelling", () => {
  it("ends a worker that does not answer, refuses what waits, and leaves the pool usable", async () => {
    const one = opened(1, endingWorker);
    const control = new AbortController();
    const never = one.ask(study, "lake", { block: 0, lake: 5 }, control.signal);
    const waiting = one.ask(study, "lake", { block: 0, lake: 0 }, control.signal);
    control.abort(new Error("nobody asks any more"));
    await expect(never).rejects.toThrow("nobody asks any more");
    await expect(waiting).rejects.toThrow("nobody asks any more");
    expect(await one.ask(study, "lake", { block: 0, lake: 0 }, unending)).toHaveProperty("cost");
  });

  it("ends a run between two draws", async () => {
    const ending = new AbortController();
    const onProgress = ({ done }: Progress) => done === 4 && ending.abort(new Error("enough"));
    const run = drawLakes(opened(2), study, { first: 0, count: 50 }, { signal: ending.signal, onProgress });
    await expect(run).rejects.toThrow("enough");
  });

  it("refuses before it starts where the signal is given already", async () => {
    const run = drawLakes(opened(1), study, oneBlock, {
      ...control,
      signal: AbortSignal.abort(new Error("too late")),
    });
    await expect(run).rejects.toThrow("too late");
  });
});

describe("errors", () => {
  it("of the study come with all its problems", async () => {
    const overrides = [{ id: "no.such.assumption", value: "1", reason: "test" }];
    const wrong = { ...study, document: { ...study.document, overrides } };
    const two = opened(2);
    const error: unknown = await drawLakes(two, wrong, oneBlock, control).catch((thrown: unknown) => thrown);
    expect(error).toBeInstanceOf(InputError);
    expect(String(error)).toContain(study.document.study.name);
    expect(String(error)).toContain("no.such.assumption");
    await expect(two.ask(study, "lake", { block: 0, lake: 0 }, unending)).resolves.toBeDefined();
  });

  it("of an amount that is beyond all in a draw alone come with their place", async () => {
    const many = "count: 3000000, unit: form, unitCost: €3 to €4 to €8e9";
    const text = smallLakeText.replace("count: 300, unit: form, unitCost: €3", many);
    const wide = { ...study, document: readStudyText(text, "lake.yaml") };
    const drawn = opened(1).ask(wide, "lake", { block: 0, lake: 0 }, unending);
    const error: unknown = await drawn.catch((thrown: unknown) => thrown);
    expect(error).toBeInstanceOf(InputError);
    expect(String(error)).toMatch(/options\[1 "signs"\]: found \S+ for "Signs and forms" in one year/);
  });

  it("of a worker that ends name the study, and another takes its place", async () => {
    const one = opened(1, endingWorker);
    const error: unknown = await drawLakes(one, study, oneBlock, control).catch((thrown: unknown) => thrown);
    expect(error).toBeInstanceOf(OddsError);
    expect(String(error)).toContain(`${study.document.study.name}: worker exited with code: 7`);
    await expect(one.ask(study, "lake", { block: 0, lake: 0 }, unending)).resolves.toBeDefined();
  });

  it("of a pool that is closed name the study", async () => {
    const one = opened(1, endingWorker);
    const never = one.ask(study, "lake", { block: 0, lake: 5 }, unending);
    const refused = expect(never).rejects.toThrow(study.document.study.name);
    await one.close();
    await refused;
    await expect(one.ask(study, "lake", { block: 0, lake: 0 }, unending)).rejects.toThrow(
      "the workers are stopped",
    );
  });
});
