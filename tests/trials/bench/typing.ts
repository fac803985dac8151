import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { launchBrowser } from "#product/report/print/browser.js";
import { startServer } from "../soak/server.js";

const edits = 60;
const port = 4172;
/** The key by itself: the pause after the last one counts. */
const share = 0.95;

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

/** Types digits into a field, each time another number, and waits for the head of the page to change. */
async function balanceTimes(browser: Browser, study: string): Promise<number> {
  const page = await browser.newPage();
  await page.goto(`${study}/edit/boats`);
  const times: number[] = [];
  for (let edit = 0; edit < edits; edit += 1) {
    times.push(
      await page.evaluate(
        async (number) => {
          const input = document.getElementsByName("boats/launches/jul")[0] as HTMLInputElement;
          const balance = document.getElementById("balance") as HTMLElement;
          const changed = new Promise<number>((resolve) => {
            const seen = new MutationObserver(() => {
              seen.disconnect();
              resolve(performance.now());
            });
            seen.observe(balance, { childList: true, subtree: true });
          });
          const start = performance.now();
          input.value = String(number);
          input.dispatchEvent(new Event("input", { bubbles: true }));
          return (await changed) - start;
        },
        4000 + 37 * edit,
      ),
    );
  }
  await page.close();
  return times.sort((one, other) => one - other)[Math.floor(share * times.length)] ?? 0;
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
