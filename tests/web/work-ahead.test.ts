import { EventEmitter, once } from "node:events";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { setTimeout as pause } from "node:timers/promises";
import { describe, expect, it, vi } from "vitest";
import type { Answering } from "../../src/app/answers/questions.js";
import type { Studies } from "../../src/app/studies.js";
import { answersIn } from "../../src/web/pages/list-states.js";
import { afterFirstAnswer, workAhead } from "../../src/web/work-ahead.js";

const long = 600_000;

interface Started {
  readonly server: Server;
  readonly base: string;
  readonly ending: AbortController;
  /** How often work has begun, at each answer as it is written and by now. */
  readonly begun: { atAnswer: number[]; now: number };
  readonly hasBegun: Promise<unknown>;
}

async function started(rests: { readonly answered: number; readonly unasked: number }): Promise<Started> {
  const begun: Started["begun"] = { atAnswer: [], now: 0 };
  const ending = new AbortController();
  const server = createServer((_question, answer) => {
    begun.atAnswer.push(begun.now);
    answer.end("a page");
  }).listen(0);
  await once(server, "listening");
  const told = new EventEmitter();
  const hasBegun = once(told, "begun");
  const begin = () => {
    begun.now += 1;
    told.emit("begun");
  };
  afterFirstAnswer(server, ending.signal, begin, rests);
  const { port } = server.address() as AddressInfo;
  return { server, base: `http://127.0.0.1:${port}`, ending, begun, hasBegun };
}

async function stop({ server, ending }: Started): Promise<void> {
  ending.abort();
  server.closeAllConnections();
  server.close();
  await once(server, "close");
}

describe("work ahead of readers", () => {
  it("begins once, a little after the first answer: its style comes first", async () => {
    const server = await started({ answered: 300, unasked: long });
    await (await fetch(server.base)).text();
    await (await fetch(server.base)).text();
    await server.hasBegun;
    await (await fetch(server.base)).text();
    await stop(server);
    expect(server.begun).toEqual({ atAnswer: [0, 0, 1], now: 1 });
  });

  it("begins also where nobody asks", async () => {
    const server = await started({ answered: long, unasked: 1 });
    await server.hasBegun;
    await stop(server);
    expect(server.begun).toEqual({ atAnswer: [], now: 1 });
  });

  it("never begins once the server ends", async () => {
    const server = await started({ answered: 1, unasked: long });
    server.ending.abort();
    await (await fetch(server.base)).text();
    await pause(50);
    await stop(server);
    expect(server.begun).toEqual({ atAnswer: [0], now: 0 });
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
    const start = performance.now();
    expect(await listed(answersWith(ask))).toEqual(new Map());
    expect(performance.now() - start).toBeLessThan(200);
    expect(ask.mock.calls).toHaveLength(3);
  });

  it("are not asked for at the first page of a server, which starts no worker", async () => {
    const ask = vi.fn(async () => undefined);
    expect(await listed(answersWith(ask, false))).toEqual(new Map());
    expect(ask).not.toHaveBeenCalled();
  });
});
