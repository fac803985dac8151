import { EventEmitter } from "node:events";
import type { Server } from "node:http";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Answering } from "../../src/app/answers/questions.js";
import type { Studies } from "../../src/app/studies.js";
import { answersIn } from "../../src/web/pages/list-states.js";
import { afterFirstAnswer, workAhead } from "../../src/web/work-ahead.js";

describe("work ahead of readers", () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  function started() {
    const server = new EventEmitter();
    const ending = new AbortController();
    const begin = vi.fn();
    afterFirstAnswer(server as Server, ending.signal, begin);
    const answer = () => {
      const answered = new EventEmitter();
      server.emit("request", {}, answered);
      answered.emit("close");
    };
    const begunAfter = (milliseconds: number) => {
      vi.advanceTimersByTime(milliseconds);
      return begin.mock.calls.length;
    };
    return { ending, answer, begunAfter };
  }

  it("begins once, a little after the first answer: the style of a page comes first", () => {
    const { answer, begunAfter } = started();
    expect(begunAfter(900)).toBe(0);
    answer();
    expect(begunAfter(300)).toBe(0);
    answer();
    expect(begunAfter(100)).toBe(1);
    expect(begunAfter(9000)).toBe(1);
  });

  it("begins also where nobody asks", () => {
    const { answer, begunAfter } = started();
    expect(begunAfter(1000)).toBe(1);
    answer();
    expect(begunAfter(9000)).toBe(1);
  });

  it("never begins once the server ends", () => {
    const { ending, answer, begunAfter } = started();
    answer();
    ending.abort();
    expect(begunAfter(9000)).toBe(0);
  });
});

describe("the examples", () => {
  const ids = ["one", "two", "three"];
  const cards = ids.map((id) => ({ id, isExample: true, isDamaged: false }));
  const studies = {
    list: () => cards,
    find: (id: string) => ({ text: id, fileName: "lake.yaml" }),
  } as unknown as Studies;
  const answersWith = (ask: (kind: string, asked: { text: string }) => Promise<unknown>, hasBegun = true) =>
    ({ ask, known: () => undefined, hasBegun: () => hasBegun }) as unknown as Answering;
  const listed = (answers: Answering) => answersIn({ studies, answers }, studies.list());

  it("are worked out one after another, and a fault of one is told and ends none but its own", async () => {
    const ask = vi.fn(async (_kind: string, { text }: { text: string }) => {
      if (text === "one") throw new Error("fault of one");
    });
    const tell = vi.fn();
    await workAhead(studies, answersWith(ask), new AbortController().signal, tell);
    const asked = ask.mock.calls.map(([kind, { text }]) => `${kind} ${text}`);
    const whole = ["balance two", "results two", "balance three", "results three"];
    expect(asked).toEqual(["balance one", ...whole]);
    expect(tell.mock.calls).toEqual([[new Error("fault of one")]]);
  });

  it("that are not known are asked for at the list, which does not wait for them", async () => {
    const ask = vi.fn(() => new Promise<unknown>(() => undefined));
    expect(await Promise.race([listed(answersWith(ask)), new Promise(setImmediate)])).toEqual(new Map());
    expect(ask.mock.calls).toHaveLength(3);
  });

  it("are not asked for at the first page of a server, which starts no worker", async () => {
    const ask = vi.fn(async () => undefined);
    expect(await listed(answersWith(ask, false))).toEqual(new Map());
    expect(ask).not.toHaveBeenCalled();
  });
});
