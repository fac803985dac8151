import { mkdtempSync, rmSync } from "node:fs";
import { cpus, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { parseArgs } from "node:util";
import { randomStream } from "#product/model/random/generator.js";
import { type Crowd, edit, print, read, type Seen } from "./soak/people.js";
import { startServer } from "./soak/server.js";
import { statusesTold, timesTold } from "./soak/told.js";

const { values } = parseArgs({
  options: {
    seconds: { type: "string", default: "60" },
    readers: { type: "string", default: "50" },
    editors: { type: "string", default: "5" },
    printers: { type: "string", default: "2" },
    port: { type: "string", default: "4171" },
    seed: { type: "string", default: "1" },
  },
});

const seconds = Number(values.seconds);
/** Workers that nobody asks for half a minute end. */
const restMilliseconds = 40_000;
const folder = mkdtempSync(join(tmpdir(), "ramp-and-rack-soak-"));
const server = await startServer(folder, Number(values.port));
const times = (count: string) => Array.from({ length: Number(count) }, (_each, index) => index);

async function copyOfExample(): Promise<string> {
  const answer = await fetch(`${server.base}/studies/example-ninemoss/copy`, {
    method: "POST",
    redirect: "manual",
  });
  return (answer.headers.get("Location") ?? "").replace("/studies/", "");
}

const studies: string[] = [];
for (const _ of times(values.editors)) studies.push(await copyOfExample());
for (const path of [
  "/",
  "/studies/example-ninemoss",
  "/studies/example-sorrel-bend/report",
  "/studies/example-ninemoss/report.pdf",
]) {
  await (await fetch(server.base + path)).arrayBuffer();
}

const { uniform } = randomStream(Number(values.seed), "people");

async function work(forSeconds: number, seen: Crowd["seen"]): Promise<void> {
  const until = Date.now() + 1000 * forSeconds;
  const crowd: Crowd = { base: server.base, studies, until, random: uniform, seen };
  await Promise.all([
    ...times(values.readers).map(() => read(crowd)),
    ...studies.map((study) => edit(crowd, study)),
    ...times(values.printers).map(() => print(crowd)),
  ]);
}

const fresh = server.megabytes();
// Code that is compiled and caches that are full stay: the level to come back to is that of a server in use.
await work(seconds / 4, () => undefined);
await pause(restMilliseconds);

const answers: Seen[] = [];
const processorBefore = server.processorSeconds();
const before = server.megabytes();
let peak = before;
const watch = setInterval(() => {
  peak = Math.max(peak, server.megabytes());
}, 500);
await work(seconds, (each) => answers.push(each));
clearInterval(watch);
const processorTime = server.processorSeconds() - processorBefore;
await pause(restMilliseconds);
const after = server.megabytes();
const exitCode = await server.stop();
rmSync(folder, { recursive: true });

const [load = 0] = loadavg();
console.log(
  `${cpus().length} cores, load of the machine at the end ${load.toFixed(1)}, Node ${process.version}`,
);
const everybody = [
  "reader",
  "reader of a page worked out",
  "reader of results.json",
  "editor",
  "printer",
] as const;
for (const who of everybody) {
  const own = answers.filter((each) => each.who === who);
  console.log(`${who}: ${statusesTold(own)}; ${timesTold(own)}`);
  const pages = [...new Set(own.map(({ page }) => page))].sort();
  if (pages.length < 2) continue;
  for (const page of pages) console.log(`  ${page}: ${timesTold(own.filter((each) => each.page === page))}`);
}
const errors = answers.filter(({ status, isPolite }) => (status >= 400 || status === 0) && !isPolite).length;
const refused = answers.filter(({ status }) => status === 503);
const refusedPages = refused.filter(({ who }) => who.startsWith("reader")).length;
console.log(`refused with 503: ${refused.length} of ${answers.length}, of them ${refusedPages} to readers`);
console.log(`errors other than a polite refusal: ${errors}; the server stopped with ${exitCode}`);
console.log(`processor time of the server without its browser: ${processorTime.toFixed(1)} s`);
console.log(
  `memory of the server: ${fresh.toFixed(0)} MB when new; ${before.toFixed(0)} at rest after a first load, ${peak.toFixed(0)} at its peak, ${after.toFixed(0)} at rest after this one`,
);
process.exitCode = errors === 0 && refusedPages === 0 && exitCode === 0 ? 0 : 1;
