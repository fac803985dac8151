import { getPriority } from "node:os";
import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { type PoolSettings, type ThreadPool, threadPool } from "../../src/workers/thread-pool.js";

interface Told {
  readonly thread: number;
  readonly given: unknown;
  readonly priority: number;
  readonly oldMegabytes: number;
  readonly heapMegabytes: number;
}

const file = fileURLToPath(new URL("telling-worker.js", import.meta.url));
const usual: PoolSettings = {
  ...{ file, workerData: () => "given", threads: 1, youngMegabytes: 8, niceness: 0, stopsBusy: false },
};

type Pool = ThreadPool<{ readonly wait?: Int32Array }, Told>;
const pools: Pool[] = [];
const opened = (settings: Partial<PoolSettings> = {}): Pool => {
  const pool: Pool = threadPool({ ...usual, ...settings });
  pools.push(pool);
  return pool;
};

// No time passes of itself: what a worker may take is not what a busy machine takes.
beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
});
afterEach(async () => {
  vi.useRealTimers();
  for (const pool of pools.splice(0)) await pool.close();
});

/** A task that a worker is busy with until it is released. */
function busy(pool: Pool, signal?: AbortSignal) {
  const wait = new Int32Array(new SharedArrayBuffer(4));
  const release = () => {
    Atomics.store(wait, 0, 1);
    Atomics.notify(wait, 0);
  };
  return { answer: pool.run(() => ({ wait }), { signal }), release };
}

describe("a thread", () => {
  it("stands back for others, from the priority of its process, where threads have one of their own", async () => {
    const { priority } = await opened({ niceness: 3 }).run(() => ({}));
    // nice(2): of a thread on Linux, where 19 is the lowest.
    const further = process.platform === "linux" ? 3 : 0;
    expect(priority).toBe(Math.min(19, getPriority() + further));
  });

  it("is started with what it is given, within the limits of its heap", async () => {
    const { given, oldMegabytes, heapMegabytes } = await opened().run(() => ({}));
    expect([given, oldMegabytes]).toEqual(["given", 1024]);
    // V8: three semi-spaces beside the old generation.
    expect(heapMegabytes).toBe(1024 + 3 * 8);
  });

  it.each([
    { afterSeconds: 30, threads: 2 },
    { afterSeconds: 29, threads: 1 },
  ])("that nobody asks ends after 30 s, not sooner: asked after $afterSeconds s", async (each) => {
    const pool = opened({ idleSeconds: 30 });
    const first = await pool.run(() => ({}));
    await vi.advanceTimersByTimeAsync(1000 * each.afterSeconds);
    const second = await pool.run(() => ({}));
    expect(new Set([first.thread, second.thread]).size).toBe(each.threads);
  });

  it("that is kept does not end", async () => {
    const pool = opened();
    const first = await pool.run(() => ({}));
    await vi.advanceTimersByTimeAsync(3_600_000);
    expect((await pool.run(() => ({}))).thread).toBe(first.thread);
  });
});

describe("tasks that wait", () => {
  it("are taken by their priority, those of the same in order", async () => {
    const pool = opened();
    const first = busy(pool);
    const order: string[] = [];
    const run = async (name: string, priority: number) => {
      await pool.run(() => ({}), { priority });
      order.push(name);
    };
    const rest = [run("draw", 0), run("report", 1), run("page", 2), run("later page", 2)];
    first.release();
    await Promise.all([first.answer, ...rest]);
    expect(order).toEqual(["page", "later page", "report", "draw"]);
  });

  it("come next where they are about what is begun", async () => {
    const pool = opened();
    const first = busy(pool);
    const order: string[] = [];
    const run = async (about: string, priority: number) => {
      await pool.run(() => ({}), { about, priority });
      order.push(`${about} ${priority}`);
    };
    const rest = [run("one", 2), run("two", 2), run("two", 1), run("one", 0)];
    first.release();
    await Promise.all([first.answer, ...rest]);
    expect(order).toEqual(["one 2", "one 0", "two 2", "two 1"]);
  });

  it("and are left out are not asked again", async () => {
    const pool = opened();
    const first = busy(pool);
    const reader = new AbortController();
    const left = pool.run(() => ({}), { about: "one", priority: 0, signal: reader.signal });
    const gone = expect(left).rejects.toBe("gone");
    const other = pool.run(() => ({}), { about: "one", priority: 2 });
    reader.abort("gone");
    first.release();
    await Promise.all([first.answer, other, gone]);
    expect(pool.open()).toBe(0);
  });
});

describe("a signal of many tasks", () => {
  it("ends them all, and nothing warns of their number", async () => {
    const warnings: Error[] = [];
    const onWarning = (warning: Error) => warnings.push(warning);
    process.on("warning", onWarning);
    const pool = opened({ stopsBusy: true });
    const reader = new AbortController();
    const runs = Array.from({ length: 12 }, () => busy(pool, reader.signal).answer);
    const outcomes = Promise.allSettled(runs);
    reader.abort("gone");
    expect((await outcomes).map(({ status }) => status)).toEqual(Array(12).fill("rejected"));
    // A warning is told in the next turn.
    await new Promise((resolve) => setImmediate(resolve));
    process.off("warning", onWarning);
    expect(warnings).toEqual([]);
  });
});

describe("a signal while a thread is busy", () => {
  it.each([
    { stopsBusy: true, threads: 2 },
    { stopsBusy: false, threads: 1 },
  ])("stops it or lets it be: $stopsBusy", async ({ stopsBusy, threads }) => {
    const pool = opened({ stopsBusy });
    const { thread } = await pool.run(() => ({}));
    const reader = new AbortController();
    const task = busy(pool, reader.signal);
    const outcome = task.answer.catch((reason: unknown) => reason);
    reader.abort("gone");
    if (!stopsBusy) task.release();
    expect(await outcome).toEqual(stopsBusy ? "gone" : expect.objectContaining({ thread }));
    expect(new Set([thread, (await pool.run(() => ({}))).thread]).size).toBe(threads);
  });
});

it("an answer that comes as its thread is stopped ends no other task", async () => {
  const pool = opened({ threads: 2, stopsBusy: true });
  for (let time = 0; time < 12; time++) {
    const ending = new AbortController();
    const stopped = busy(pool, ending.signal);
    const other = busy(pool);
    const ended = stopped.answer.catch((error: unknown) => error);
    stopped.release();
    ending.abort(new Error("left"));
    await ended;
    other.release();
    await expect(other.answer).resolves.toBeDefined();
  }
});
