import type { Server } from "node:http";
import type { AddressInfo } from "node:net";
import { afterEach, describe, expect, it, vi } from "vitest";
import { type AskedRunSettings, askedRuns, usualRuns } from "../../src/app/runs.js";
import { studiesOf } from "../../src/app/studies.js";
import { futuresPerBlock } from "../../src/model/futures/draw-plan.js";
import { drawLakes } from "../../src/odds/draw.js";
import { OddsError, type WorkerPool, workerPool } from "../../src/odds/pool.js";
import { drawingThreads } from "../../src/odds/threads.js";
import { storeConnection } from "../../src/store/connection.js";
import { studyStore } from "../../src/store/studies.js";
import { joinedFutures } from "../../src/study/odds/joined-futures.js";
import type { Odds } from "../../src/study/odds/odds.js";
import { createApp } from "../../src/web/app.js";
import { patience } from "../patience.js";
import { assumptions } from "../report/runs.js";
import { accessIn } from "./access/entering.js";
import { answersInTest } from "./answering.js";
import { issuingIn } from "./issuing.js";
import { inventedSwings } from "./judging.js";

const faults: unknown[] = [];
let server: Server | undefined;
let pool: WorkerPool | undefined;

/** A server whose odds are drawn as told; gives a function that asks it. */
async function asking(settings: Partial<AskedRunSettings<Odds>> & Pick<AskedRunSettings<Odds>, "draw">) {
  const studies = studiesOf(
    studyStore(storeConnection(":memory:")),
    () => assumptions,
    () => new Date(),
  );
  const printer = {
    warm: () => undefined,
    print: async () => new Uint8Array(),
    draw: async () => [],
    close: async () => undefined,
  };
  const runs = askedRuns<Odds>({ ...usualRuns, ...settings });
  const report = (error: unknown) => faults.push(error);
  const started = createApp({
    answers: answersInTest(),
    issuing: issuingIn(),
    access: accessIn(),
    studies,
    printer,
    runs,
    few: runs,
    search: () => Promise.reject(new Error("no search here")),
    judge: inventedSwings,
    report,
  }).listen(0, "127.0.0.1");
  server = started;
  await new Promise((resolve) => started.once("listening", resolve));
  const base = `http://127.0.0.1:${(started.address() as AddressInfo).port}`;
  return (path: string, init?: RequestInit) => fetch(base + path, { redirect: "manual", ...init });
}

afterEach(async () => {
  await new Promise((resolve) => (server ? server.close(resolve) : resolve(undefined)));
  await pool?.close();
});

const ninemoss = "/studies/example-ninemoss/odds";
const sorrelBend = "/studies/example-sorrel-bend/odds";

/** Never ends by itself; tells when it is ended. */
function endless() {
  const ended: string[] = [];
  const draw: AskedRunSettings<Odds>["draw"] = ({ document }, { signal, onProgress }) =>
    new Promise<Odds>((_, reject) => {
      onProgress({ done: 3, planned: 80 });
      signal.addEventListener("abort", () => {
        ended.push(document.study.name);
        reject(signal.reason);
      });
    });
  return { ended, draw };
}

describe("the page of a study's odds", () => {
  it("shows progress, asks again without scripts, and then has the figures, drawn once", async () => {
    const workers = workerPool(() => assumptions, drawingThreads(2));
    pool = workers;
    const draw = vi.fn<AskedRunSettings<Odds>["draw"]>(async (study, control) => {
      const futures = joinedFutures(await drawLakes(workers, study, { first: 0, count: 2 }, control));
      const summary = await workers.ask(study, "summary", { futures, end: "cap" }, control.signal);
      const inputs = await workers.ask(study, "inputs", { futures }, control.signal);
      return { ...summary, ...inputs, matters: { netBenefit: 0, tornado: [], ranks: [] } };
    });
    const get = await asking({ draw });
    const first = await get(ninemoss);
    expect(first.status).toBe(202);
    const page = await first.text();
    expect(page).toContain('<meta http-equiv="refresh"');
    expect(page).toContain("draws of the lake");
    await vi.waitFor(async () => expect((await get(`${ninemoss}.json`)).status).toBe(200), {
      timeout: patience,
      interval: 200,
    });
    const odds = (await (await get(`${ninemoss}.json`)).json()) as Odds;
    expect(odds.futures).toBe(2 * futuresPerBlock);
    const done = await (await get(ninemoss)).text();
    expect(done).not.toContain("http-equiv");
    expect(done).toContain("Pays on average, of assumption sets");
    for (const { name } of odds.options) expect(done).toContain(name);
    expect(draw).toHaveBeenCalledTimes(1);
  });

  it("tells a program how far it is", async () => {
    const get = await asking({ draw: endless().draw });
    const response = await get(`${ninemoss}.json`);
    expect(response.status).toBe(202);
    expect(response.headers.get("retry-after")).toBe("2");
    expect(await response.json()).toEqual({ state: "drawing", progress: { done: 3, planned: 80 } });
  });

  it("shows first figures while the rest is drawn, marked as preliminary, and tells a script that they are there", async () => {
    const option = { name: "Staffed summer checks", meanCost: 700_000, everInfested: 0.031 };
    const ends = { low: { input: 1, netBenefit: -700_000 }, high: { input: 2, netBenefit: -600_000 } };
    const bar = { id: "risk.rate", name: "yearly rate of an invented lake", ...ends };
    const early = {
      lakes: 128,
      options: [{ ...option, against: { netBenefit: -661_500, cheaper: 0.012 } }],
      matters: { netBenefit: -661_500, tornado: [bar], ranks: [] },
    };
    const draw: AskedRunSettings<Odds>["draw"] = (_, { onEarly }) => {
      onEarly?.(early);
      return new Promise(() => undefined);
    };
    const get = await asking({ draw });
    const page = await (await get(ninemoss)).text();
    expect(page).toContain("Preliminary, from the first 128 draws of the lake");
    expect(page).toContain("Staffed summer checks");
    expect(page).toContain("Reports wait for the final ones");
    expect(page).toContain('data-picture="tornado"');
    expect(page).toContain("Preliminary: other inputs may still come first");
    expect(page).not.toContain("tornado.csv");
    expect(page.toLowerCase()).toContain(bar.name);
    expect(page).toContain("draws of the lake.</label>");
    expect(await (await get(`${ninemoss}.json`)).json()).toMatchObject({ state: "drawing", early });
    // The agreed answer of the API has no figures that are not final.
    const asked = await get("/api/studies/example-ninemoss/odds");
    expect(asked.status).toBe(202);
    expect(await asked.json()).toEqual({ state: "drawing", progress: { done: 0, planned: 0 } });
  });

  it("does not exist for a study that does not", async () => {
    const get = await asking({ draw: endless().draw });
    expect((await get("/studies/none/odds")).status).toBe(404);
  });
});

describe("one run at a time", () => {
  it("lets a few wait and refuses more, with the time to come back", async () => {
    const get = await asking({ draw: endless().draw, mostWaiting: 0 });
    expect((await get(ninemoss)).status).toBe(202);
    expect((await get(ninemoss)).status).toBe(202);
    const refused = await get(sorrelBend);
    expect(refused.status).toBe(503);
    expect(refused.headers.get("retry-after")).toBe("30");
    expect(await refused.text()).toContain("Other studies are being drawn");
  });

  it("starts what waits when the first is stopped by its reader", async () => {
    const { ended, draw } = endless();
    const get = await asking({ draw });
    await get(ninemoss);
    const waiting = await get(`${sorrelBend}.json`);
    expect(await waiting.json()).toEqual({ state: "waiting", before: 1 });
    const stopped = await get(`${ninemoss}/cancel`, { method: "POST" });
    expect(stopped.status).toBe(303);
    expect(stopped.headers.get("location")).toBe("/studies/example-ninemoss");
    expect(ended).toEqual(["Ninemoss Lake, inspection program request"]);
    expect(await (await get(`${sorrelBend}.json`)).json()).toHaveProperty("state", "drawing");
  });

  it("ends a run for which nobody asks any more", async () => {
    const { ended, draw } = endless();
    const get = await asking({ draw, patienceMilliseconds: 50 });
    await get(ninemoss);
    await vi.waitFor(() => expect(ended).toHaveLength(1), { timeout: patience });
  });
});

describe("a run that fails", () => {
  it("is told once without its inside, and may be asked for again", async () => {
    let calls = 0;
    const draw: AskedRunSettings<Odds>["draw"] = async ({ document }) => {
      calls++;
      throw new OddsError(`${document.study.name}: a worker ended with code 7`);
    };
    const get = await asking({ draw });
    expect((await get(ninemoss)).status).toBe(202);
    const told = await get(ninemoss);
    expect(told.status).toBe(500);
    expect(await told.text()).not.toContain("code 7");
    expect(String(faults.at(-1))).toContain("Ninemoss Lake, inspection program request: a worker ended");
    expect((await get(ninemoss)).status).toBe(202);
    expect(calls).toBe(2);
  });
});
