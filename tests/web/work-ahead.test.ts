import { EventEmitter, once } from "node:events";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { describe, expect, it } from "vitest";
import { afterFirstAnswer } from "../../src/web/work-ahead.js";

const longRest = 600_000;

interface Started {
  readonly server: Server;
  readonly base: string;
  readonly ending: AbortController;
  /** How often work has begun, at each answer as it is written and by now. */
  readonly begun: { atAnswer: number[]; now: number };
  readonly hasBegun: Promise<unknown>;
}

async function started(restMilliseconds: number): Promise<Started> {
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
  afterFirstAnswer(server, ending.signal, begin, restMilliseconds);
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
  it("begins once, after the first answer", async () => {
    const server = await started(longRest);
    await (await fetch(server.base)).text();
    await server.hasBegun;
    await (await fetch(server.base)).text();
    await stop(server);
    expect(server.begun).toEqual({ atAnswer: [0, 1], now: 1 });
  });

  it("begins also where nobody asks", async () => {
    const server = await started(1);
    await server.hasBegun;
    await stop(server);
    expect(server.begun).toEqual({ atAnswer: [], now: 1 });
  });

  it("never begins once the server ends", async () => {
    const server = await started(longRest);
    server.ending.abort();
    await (await fetch(server.base)).text();
    await stop(server);
    expect(server.begun).toEqual({ atAnswer: [0], now: 0 });
  });
});
