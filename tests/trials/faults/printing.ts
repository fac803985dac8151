import type { Browser } from "puppeteer";
import { BrowserError, launchBrowser } from "#product/report/print/browser.js";
import { createPrinter } from "#product/report/print/printer.js";
import type { Trial } from "./disk.js";

const settings = { title: "Lake", paper: "letter", edition: "Draft" } as const;
const page = `<main>${"<p>A lake.</p>".repeat(3000)}</main>`;

/** A printing browser killed while it prints: once, and each time that it is started. */
export async function printingFaults(): Promise<Trial[]> {
  return [
    await killedTimes(1, "browser killed while printing"),
    await killedTimes(9, "browser killed each time"),
  ];
}

async function killedTimes(times: number, what: string): Promise<Trial> {
  let starts = 0;
  const launch = async (): Promise<Browser> => {
    const browser = await launchBrowser();
    starts += 1;
    if (starts <= times) killAtFirstPrint(browser);
    return browser;
  };
  const printer = createPrinter({ launch });
  try {
    const pdf = await printer.print(page, settings);
    return {
      what,
      found: `${pdf.byteLength} bytes after ${starts} starts`,
      isGood: times === 1 && starts === 2,
    };
  } catch (error) {
    const found = `${error instanceof Error ? error.message : String(error)} (${starts} starts)`;
    return { what, found, isGood: times > 1 && error instanceof BrowserError && starts === 2 };
  } finally {
    await printer.close();
  }
}

/** Kills the browser once a page of it is given a report. */
function killAtFirstPrint(browser: Browser): void {
  const newPage = browser.newPage.bind(browser);
  browser.newPage = async () => {
    const opened = await newPage();
    const pdf = opened.pdf.bind(opened);
    opened.pdf = async (options) => {
      const printing = pdf(options);
      const pid = browser.process()?.pid;
      // The whole group: some systems start the browser by a script.
      if (pid !== undefined) process.kill(-pid, "SIGKILL");
      return printing;
    };
    return opened;
  };
}
