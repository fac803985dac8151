import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { launchBrowser } from "#product/report/print/browser.js";
import { startServer } from "../soak/server.js";

const port = 4172;
const share = 0.95;

/** Fields of several parts, and the numbers that are typed there in turn. */
const fields = [
  { page: "boats", name: "boats/launches/jul", from: 4000, by: 37 },
  { page: "structures/0", name: "structures/0/conduit/diameter", from: 60, by: 0.5 },
  { page: "lake", name: "lake/chemistry/calcium", from: 30, by: 0.5 },
  { page: "options/1", name: "options/1/yearly/0/count", from: 10, by: 1 },
] as const;
const editsOfField = 30;
const edits = fields.length * editsOfField;

export interface TypingTimes {
  /** Milliseconds from a key to the new balance, on a copy of the first example, at the 95th percentile. */
  readonly balance: number;
  readonly edits: number;
  /** Of each page of the short path, with a warm server and a cold browser. */
  readonly pages: ReadonlyArray<{
    readonly path: string;
    readonly firstPaint: number;
    readonly kilobytes: number;
  }>;
}

type Browser = Awaited<ReturnType<typeof launchBrowser>>;

/** Speed of what somebody sees who types: in a browser, before a server in a process of its own. */
export async function timeTyping(): Promise<TypingTimes> {
  const folder = mkdtempSync(join(tmpdir(), "ramp-and-rack-typing-"));
  const server = await startServer(folder, port);
  const browser = await launchBrowser();
  try {
    const balance = await balanceTimes(
      browser,
      await made(server.base, "/studies/example-sorrel-bend/copy", {}),
    );
    const first = await made(server.base, "/start", { "intakes/0/flow": "20", name: "Mill Pond" });
    const paths = ["/", "/start", "/start?screen=2&intakes%2F0%2Fflow=20", first.slice(server.base.length)];
    const pages = [];
    for (const path of [...paths, `${first.slice(server.base.length)}/report?part=board`])
      pages.push(await pageTimes(browser, server.base + path, path));
    return { balance, edits, pages };
  } finally {
    await browser.close();
    await server.stop();
    rmSync(folder, { recursive: true });
  }
}

async function made(base: string, path: string, fields: Readonly<Record<string, string>>): Promise<string> {
  const answer = await fetch(base + path, {
    method: "POST",
    body: new URLSearchParams(fields),
    redirect: "manual",
  });
  return base + (answer.headers.get("Location") ?? "");
}

/** Types numbers into fields, each time another, and waits for the head of the page to change. */
async function balanceTimes(browser: Browser, study: string): Promise<number> {
  const page = await browser.newPage();
  const times: number[] = [];
  for (const { page: part, name, from, by } of fields) {
    await page.goto(`${study}/edit/${part}`);
    for (let edit = 0; edit < editsOfField; edit += 1)
      times.push(await page.evaluate(keyToBalance, name, from + by * edit));
  }
  await page.close();
  return times.sort((one, other) => one - other)[Math.floor(share * times.length)] ?? 0;
}

/** In the browser: milliseconds from a key until the new balance is painted. */
async function keyToBalance(name: string, number: number): Promise<number> {
  const input = document.getElementsByName(name)[0] as HTMLInputElement;
  const balance = document.getElementById("balance") as HTMLElement;
  const changed = new Promise<void>((resolve) => {
    const seen = new MutationObserver(() => {
      seen.disconnect();
      requestAnimationFrame(() => setTimeout(resolve));
    });
    seen.observe(balance, { childList: true, subtree: true });
  });
  const start = performance.now();
  input.value = String(number);
  input.dispatchEvent(new Event("input", { bubbles: true }));
  await changed;
  return performance.now() - start;
}

async function pageTimes(browser: Browser, address: string, path: string) {
  // Once before, so that what the server works out at first is known.
  await (await fetch(address)).arrayBuffer();
  const context = await browser.createBrowserContext();
  const page = await context.newPage();
  await page.goto(address, { waitUntil: "load" });
  await page.evaluate(async () => {
    await document.fonts.ready;
  });
  const found = await page.evaluate(() => ({
    firstPaint: performance.getEntriesByName("first-contentful-paint")[0]?.startTime ?? 0,
    bytes: [...performance.getEntriesByType("navigation"), ...performance.getEntriesByType("resource")]
      .map((entry) => (entry as PerformanceResourceTiming).encodedBodySize)
      .reduce((total, each) => total + each, 0),
  }));
  await context.close();
  return { path, firstPaint: found.firstPaint, kilobytes: found.bytes / 1000 };
}
