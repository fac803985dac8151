import type { Server } from "node:http";
import type { AddressInfo } from "node:net";
import { afterEach, expect } from "vitest";
import { askedRuns, usualRuns } from "../../src/app/runs.js";
import { studiesOf } from "../../src/app/studies.js";
import { storeConnection } from "../../src/store/connection.js";
import { studyStore } from "../../src/store/studies.js";
import { type AppParts, createApp } from "../../src/web/app.js";
import { assumptions } from "../report/runs.js";
import { inventedOdds } from "../trials/invented-odds.js";
import { accessIn } from "./access/entering.js";
import { answersInTest } from "./answering.js";
import { issuingIn } from "./issuing.js";
import { inventedSwings } from "./judging.js";

const started: { readonly close: () => Promise<unknown> }[] = [];

afterEach(async () => {
  for (const { close } of started.splice(0)) await close();
});

type Given = Partial<Pick<AppParts, "answers" | "judge" | "printer" | "runs" | "few" | "search">> & {
  /** Before a wrong key is answered; at once if left out. */
  readonly wait?: (milliseconds: number) => Promise<unknown>;
};

/** The application over a store of its own, until the end of the test. @param place the store's folder */
export async function serving(
  place = ":memory:",
  environment: Readonly<Record<string, string>> = {},
  given: Given = {},
) {
  const served = await starting(place, environment, given);
  started.push(served);
  return served;
}

/** The same until it is closed. */
export async function starting(
  place = ":memory:",
  environment: Readonly<Record<string, string>> = {},
  given: Given = {},
) {
  const connection = storeConnection(place);
  const clock = { now: new Date("2026-01-02T03:04:05Z") };
  const studies = studiesOf(
    studyStore(connection),
    () => assumptions,
    () => clock.now,
  );
  const { wait, ...parts } = given;
  const access = accessIn(connection, () => clock.now, environment, wait);
  const printer = {
    warm: () => undefined,
    print: async () => new Uint8Array(),
    draw: async () => [],
    close: async () => undefined,
  };
  const runs = askedRuns({ ...usualRuns, draw: inventedOdds });
  const answers = answersInTest();
  const whole = {
    ...{ answers, printer, runs, few: runs, judge: inventedSwings, search: neverSearched, ...parts },
    ...{ issuing: issuingIn(connection), access, studies },
    report: (error: unknown) => expect.fail(String(error)),
  };
  const app = createApp(whole);
  const server: Server = app.listen(0, "127.0.0.1");
  await new Promise((resolve) => server.once("listening", resolve));
  const base = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  const ask = (path: string, init?: RequestInit) => fetch(base + path, { redirect: "manual", ...init });
  const close = () => new Promise((resolve) => server.close(resolve));
  return { app, studies, parts: whole, connection, clock, base, ask, close };
}

const neverSearched = () => Promise.reject(new Error("no search here"));
