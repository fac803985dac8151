import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { textOf } from "../../../src/app/answers/questions.js";
import { type AnswerWorkers, answerWorkers, type WorkerSettings } from "../../../src/app/answers/workers.js";
import { readExamples } from "../../../src/app/examples.js";
import { InputError } from "../../../src/study/reading/problems.js";
import { QueueFullError, TookTooLongError } from "../../../src/workers/thread-pool.js";
import { smallLakeText } from "../../study/small-lake.js";
import { answersHere } from "../../trials/answers-here.js";
import { means } from "../answering.js";

const stuckWorker = fileURLToPath(new URL("stuck-worker.js", import.meta.url));
const example = readExamples().find(({ id }) => id === "example-ninemoss");
if (!example) throw new Error("no example");
const study = { ...textOf(example), text: smallLakeText };

let workers: AnswerWorkers | undefined;
const opened = (settings: Partial<WorkerSettings> = {}) => {
  workers = answerWorkers(() => means, settings);
  return workers;
};

const longestSeconds = 60;

/** The longest time of the question under way is over, at once. */
const longestTimePasses = () => vi.advanceTimersByTimeAsync(1000 * longestSeconds);

// No time passes of itself: what a worker may take is not what a busy machine takes.
beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
});
afterEach(async () => {
  vi.useRealTimers();
  await workers?.close();
});

describe("answers of workers", () => {
  it("are those of this thread: the balance, and a page to the byte", async () => {
    const some = opened();
    const here = answersHere(means);
    expect(await some.ask("balance", study)).toEqual(await here.ask("balance", study));
    const report = { ...study, links: {}, odds: undefined, part: "all" } as const;
    const pages = [await some.ask("report", report), await here.ask("report", report)].map((page) =>
      Buffer.from(page).toString(),
    );
    expect(pages[0]).toContain("<h1");
    expect(pages[0] === pages[1]).toBe(true);
  });

  it("tell what is wrong with a study, with the places", async () => {
    const broken = { text: "study: { name: Begun }\n", fileName: "begun.yaml", odds: undefined };
    const error: unknown = await opened()
      .ask("figures", broken)
      .catch((thrown: unknown) => thrown);
    expect(error).toBeInstanceOf(InputError);
    expect(String(error)).toContain("lake");
  });
});

const asking = (some: AnswerWorkers, text: string, signal?: AbortSignal) =>
  some.ask("balance", { text, fileName: "" }, signal);

describe("a worker that does not answer", () => {
  it("is stopped after the longest time, and what waits is answered by another", async () => {
    const some = opened({ file: stuckWorker, longestSeconds });
    const late = asking(some, "never");
    const next = asking(some, "answer");
    const stopped = expect(late).rejects.toThrow(TookTooLongError);
    await longestTimePasses();
    await stopped;
    expect(await next).toMatchObject({ problems: [] });
  });

  it("or ends is told of, and another takes its place", async () => {
    const some = opened({ file: stuckWorker });
    await expect(asking(some, "end")).rejects.toThrow("worker exited with code: 7");
    expect(await asking(some, "answer")).toMatchObject({ problems: [] });
  });
});

describe("questions that wait for a worker", () => {
  it("are refused beyond as many as may, and the others are not", async () => {
    const some = opened({ file: stuckWorker, mostWaiting: 1, longestSeconds });
    const first = asking(some, "never");
    const second = asking(some, "answer");
    await expect(asking(some, "answer")).rejects.toThrow(QueueFullError);
    const stopped = expect(first).rejects.toThrow(TookTooLongError);
    await longestTimePasses();
    await stopped;
    expect(await second).toMatchObject({ problems: [] });
  });

  it("are left out once nobody waits for them, and make room", async () => {
    const some = opened({ file: stuckWorker, mostWaiting: 1, longestSeconds });
    const first = asking(some, "never");
    const reader = new AbortController();
    const left = asking(some, "never", reader.signal);
    reader.abort(new Error("gone"));
    await expect(left).rejects.toThrow("gone");
    const third = asking(some, "answer");
    const stopped = expect(first).rejects.toThrow(TookTooLongError);
    await longestTimePasses();
    await stopped;
    expect(await third).toMatchObject({ problems: [] });
  });

  it("are refused when all is closed", async () => {
    const some = opened({ file: stuckWorker });
    const under = expect(asking(some, "never")).rejects.toThrow("the workers are stopped");
    const waiting = expect(asking(some, "never")).rejects.toThrow("the workers are stopped");
    await some.close();
    await Promise.all([under, waiting]);
  });
});
