import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { askedRuns, usualRuns } from "#product/app/runs.js";
import { studiesOf } from "#product/app/studies.js";
import { assumptionFiles, readAssumptions } from "#product/assumptions/load.js";
import { signingKeyIn } from "#product/issue/signing-key.js";
import { assumptionsFolder } from "#product/report/document/assets.js";
import { accessStore } from "#product/store/access.js";
import { storeConnection } from "#product/store/connection.js";
import { issueStore } from "#product/store/issues.js";
import { studyStore } from "#product/store/studies.js";
import type { Odds } from "#product/study/odds/odds.js";
import { door } from "#product/web/access/door.js";
import { accessSettings } from "#product/web/access/settings.js";
import { slowing } from "#product/web/access/slowing.js";
import { createApp } from "#product/web/app.js";
import { answersHere } from "../answers-here.js";
import { inventedOdds } from "../invented-odds.js";
import { smallLakes } from "./studies.js";

const files = assumptionFiles(assumptionsFolder);
const assumptions = readAssumptions(files);
const now = () => new Date("2026-01-02T03:04:05Z");
const writer = { author: "Ada", note: "", origin: "upload" } as const;

/** What the application tells of faults that are its own. */
export interface Served {
  readonly base: string;
  readonly reported: unknown[];
  readonly close: () => Promise<void>;
}

/** The application with a few small studies in memory, printing and drawing left out. */
export async function served(): Promise<Served> {
  const connection = storeConnection(":memory:");
  const studies = studiesOf(studyStore(connection), () => assumptions, now);
  for (const lake of smallLakes().slice(0, 2)) studies.create(JSON.stringify(lake), writer);
  studies.create("study: { name: Blank }\nlake: { name: Blank }\n", writer);
  const reported: unknown[] = [];
  const printer = {
    warm: () => undefined,
    print: async () => new Uint8Array(),
    draw: async () => [],
    close: async () => undefined,
  };
  const runs = askedRuns<Odds>({ ...usualRuns, draw: inventedOdds });
  const folder = mkdtempSync(join(tmpdir(), "fuzz-key-"));
  const issuing = { issues: issueStore(connection), now, key: signingKeyIn(folder, now) };
  const answers = answersHere({ assumptions, files });
  const access = {
    door: door(
      accessStore(connection),
      now,
      false,
      slowing(async () => undefined),
    ),
    settings: accessSettings({}),
  };
  const app = createApp({
    ...{ access, studies, answers, printer, runs, few: runs, issuing },
    search: () => Promise.reject(new Error("no search here")),
    judge: () => new Promise(() => undefined),
    report: (error) => reported.push(error),
  });
  const server = createServer(app);
  // A machine under load may take longer between two requests than a connection is usually kept.
  server.keepAliveTimeout = 120_000;
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const address: string | AddressInfo | null = server.address();
  const port = typeof address === "object" ? address?.port : undefined;
  return {
    base: `http://127.0.0.1:${port}`,
    reported,
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => {
          connection.close();
          rmSync(folder, { recursive: true });
          resolve();
        });
      }),
  };
}
