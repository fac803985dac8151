import { execFileSync, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { serialize } from "node:v8";
import type { AssumptionSet } from "#product/assumptions/entry.js";
import { fewFuturesOf } from "#product/odds/draw.js";
import { workerPool } from "#product/odds/pool.js";
import { projectRoot } from "#product/project-root.js";
import { examplesFolder } from "#product/report/document/assets.js";
import type { StudyDocument } from "#product/study/format/schema.js";
import { oddsSettings } from "#product/study/format/uncertainty-schema.js";
import { median } from "../median.js";
import { startServer } from "../soak/server.js";

const repeats = 5;
const port = 4173;
/** A reader looks at the first page before asking for another. */
const readingMilliseconds = 3000;

/** Milliseconds of processes that are new, medians. */
export interface ColdTimes {
  /** The engine by itself, against which the others can be told on any machine. */
  readonly bare: number;
  readonly help: number;
  /** `compare` of the first example, all but its draws. */
  readonly compare: number;
  /** From the start of a server to the first page with its style, and an example's page when first asked for. */
  readonly firstPage: number;
  readonly example: number;
}

export async function timeCold(study: StudyDocument, assumptions: AssumptionSet): Promise<ColdTimes> {
  const folder = mkdtempSync(join(tmpdir(), "ramp-and-rack-cold-"));
  try {
    const odds = join(folder, "odds");
    writeFileSync(odds, await drawnOdds(study, assumptions));
    const command = join(projectRoot, "dist", "cli", "main.js");
    const compare = gatheredCompare();
    const servers = [];
    for (let repeat = 0; repeat < repeats; repeat++)
      servers.push(await serverTimes(join(folder, `${repeat}`)));
    return {
      bare: await medianOf(["-e", "0"]),
      help: await medianOf([command, "--help"]),
      compare: await medianOf([compare, join(examplesFolder, "sorrel-bend.yaml"), odds]),
      firstPage: median(servers.map(({ firstPage }) => firstPage)),
      example: median(servers.map(({ example }) => example)),
    };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** In few files, as the command itself is after the build. */
function gatheredCompare(): string {
  const file = fileURLToPath(new URL("cold-compare.js", import.meta.url));
  execFileSync(process.execPath, [join(projectRoot, ".gather.js"), file]);
  return file;
}

async function drawnOdds(document: StudyDocument, assumptions: AssumptionSet): Promise<Uint8Array> {
  const pool = workerPool(() => assumptions);
  const study = { document, settings: oddsSettings(document.study.uncertainty) };
  const { signal } = new AbortController();
  const odds = await fewFuturesOf(pool, study, { signal, onProgress: () => undefined });
  await pool.close();
  return serialize(odds);
}

async function medianOf(args: readonly string[]): Promise<number> {
  const times: number[] = [];
  for (let repeat = 0; repeat < repeats; repeat++) {
    const start = performance.now();
    const [code] = await once(spawn(process.execPath, args, { stdio: "ignore" }), "exit");
    if (code !== 0) throw new Error(`node ${args.join(" ")} ended with ${code}`);
    times.push(performance.now() - start);
  }
  return median(times);
}

async function serverTimes(folder: string) {
  const start = performance.now();
  const server = await startServer(folder, port);
  await styledPage(server.base);
  const firstPage = performance.now() - start;
  await pause(readingMilliseconds);
  const asked = performance.now();
  await wholePage(`${server.base}/studies/example-sorrel-bend`);
  const example = performance.now() - asked;
  await server.stop();
  return { firstPage, example };
}

/** A browser shows nothing before it has the style sheet, for which it asks once it has the page. */
async function styledPage(base: string): Promise<void> {
  const page = await (await fetch(`${base}/`)).text();
  const [, style] = /<link rel="stylesheet" href="([^"]+)"/.exec(page) ?? [];
  if (style === undefined) throw new Error("the first page names no style sheet");
  await (await fetch(base + style)).arrayBuffer();
}

/** A page that is being worked out says so, and is there once it is awaited. */
async function wholePage(address: string): Promise<void> {
  const page = await fetch(address);
  await page.arrayBuffer();
  if (page.status !== 202) return;
  await fetch(`${address}?awaited=1`);
  await (await fetch(address)).arrayBuffer();
}
