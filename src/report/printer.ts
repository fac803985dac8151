import type { Browser } from "puppeteer";
import { launchBrowser } from "./browser.js";
import { type PrintSettings, printPdf } from "./pdf.js";

export interface Printer {
  readonly print: (html: string, settings: PrintSettings) => Promise<Uint8Array>;
  readonly close: () => Promise<void>;
}

/** A printer that starts its browser at the first print, keeps it warm, and prints one report at a time. */
export function createPrinter(): Printer {
  let browser: Promise<Browser> | undefined;
  let queue: Promise<unknown> = Promise.resolve();
  const warmBrowser = async () => {
    const running = await browser?.catch(() => undefined);
    if (running?.connected) return running;
    browser = launchBrowser();
    return browser;
  };
  return {
    print: (html, settings) => {
      const printed = queue.then(async () => printPdf(await warmBrowser(), html, settings));
      queue = printed.catch(() => undefined);
      return printed;
    },
    close: async () => {
      const running = await browser?.catch(() => undefined);
      await running?.close();
    },
  };
}
