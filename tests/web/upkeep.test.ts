import { writeFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import express from "express";
import { pino } from "pino";
import { afterEach, describe, expect, it } from "vitest";
import { programVersion } from "../../src/assumptions/version.js";
import { databaseFile, storeConnection } from "../../src/store/connection.js";
import { stopServing } from "../../src/web/stopping.js";
import { faultEntry, withUpkeep } from "../../src/web/upkeep.js";
import { folder } from "../store/places.js";
import { serving } from "./serving.js";

const started: Server[] = [];

afterEach(() => {
  for (const server of started.splice(0)) server.close().closeAllConnections();
});

async function listening(app: Parameters<typeof createServer>[1]) {
  const server = createServer(app).listen(0, "127.0.0.1");
  started.push(server);
  await new Promise((resolve) => server.once("listening", resolve));
  return { server, base: `http://127.0.0.1:${(server.address() as AddressInfo).port}` };
}

/** The application with its upkeep over a data folder, and the lines of its log. */
async function kept(place = ":memory:") {
  const lines: string[] = [];
  const log = pino({}, { write: (line: string) => lines.push(line) });
  const { app } = await serving();
  const { base } = await listening(withUpkeep(app, { log, connection: storeConnection(place) }));
  return { base, lines };
}

describe("the health of the server", () => {
  it("tells that the database answers and which version runs, and nothing else", async () => {
    const { base } = await kept();
    const answer = await fetch(`${base}/health`);
    expect(answer.status).toBe(200);
    expect(await answer.json()).toEqual({
      status: "ok",
      database: "reachable",
      version: programVersion(),
    });
  });

  it("is a fault where the database is damaged", async () => {
    const place = folder();
    writeFileSync(databaseFile(place), "no database at all".repeat(400));
    const { base } = await kept(place);
    const answer = await fetch(`${base}/health`);
    expect(answer.status).toBe(503);
    expect(await answer.json()).toMatchObject({ status: "fault", database: "damaged" });
  });
});

describe("the log", () => {
  it("has a line for each request with its pattern, and nothing that was typed", async () => {
    const { base, lines } = await kept();
    const form = new URLSearchParams({
      name: "Secret Lake",
      lake: "Secret Lake",
      units: "si",
      currency: "EUR",
    });
    await fetch(`${base}/studies/new?who=Ada`, { method: "POST", body: form, redirect: "manual" });
    const page = await fetch(`${base}/studies/secret-lake`);
    await page.text();
    expect(lines.map((line) => JSON.parse(line))).toMatchObject([
      { method: "POST", route: "/studies/new", status: 303, request: expect.any(String) },
      { method: "GET", route: "/studies/:id", status: 200, request: page.headers.get("X-Request-Id") },
    ]);
    expect(lines.join("")).not.toMatch(/secret|Ada|127\.0\.0\.1/i);
  });

  it("tells of a fault where it came about, without its words", () => {
    const entry = faultEntry(new RangeError("Secret Lake: no such thing"));
    expect(entry).toMatchObject({ fault: "RangeError" });
    expect(JSON.stringify(entry)).toContain("upkeep.test.ts");
    expect(JSON.stringify(entry)).not.toContain("Secret");
  });
});

describe("a stop", () => {
  it("lets a request under way end, takes no other, and puts everything away after it", async () => {
    const app = express();
    const order: string[] = [];
    let answer = () => {};
    const arrived = new Promise<void>((resolve) => {
      app.get("/", (_request, response) => {
        answer = () => response.on("finish", () => order.push("answered")).send("whole");
        resolve();
      });
    });
    const { server, base } = await listening(app);
    const asked = fetch(base).then((response) => response.text());
    await arrived;
    const stopped = stopServing(server, {
      patienceMilliseconds: 60_000,
      putAway: async () => {
        order.push("put away");
      },
    });
    await expect(fetch(base)).rejects.toThrow();
    answer();
    expect(await asked).toBe("whole");
    await stopped;
    expect(order).toEqual(["answered", "put away"]);
  });

  it("ends what takes longer than it may", async () => {
    const app = express();
    const arrived = new Promise<void>((resolve) => {
      app.get("/", () => resolve());
    });
    const { server, base } = await listening(app);
    const asked = fetch(base);
    const refused = expect(asked).rejects.toThrow();
    await arrived;
    await stopServing(server, { patienceMilliseconds: 1, putAway: async () => undefined });
    await refused;
  });
});
