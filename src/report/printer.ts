import type { Browser, Page } from "puppeteer";
import { launchBrowser } from "./browser.js";
import { openPress, type PrintSettings, printPdf } from "./pdf.js";

export interface Printer {
  /** Starts the browser ahead of the first print. */
  readonly warm: () => void;
  readonly print: (body: string, settings: PrintSettings) => Promise<Uint8Array>;
  readonly close: () => Promise<void>;
}

interface Press {
  readonly browser: Browser;
  readonly page: Page;
}

/** A printer that starts its browser when first needed, keeps it warm, and prints one report at a time. */
export function createPrinter(): Printer {
  let press: Promise<Press> | undefined;
  let queue: Promise<unknown> = Promise.resolve();
  const warmPress = async (): Promise<Press> => {
    const running = await press?.catch(() => undefined);
    if (running?.browser.connected && !running.page.isClosed()) return running;
    press = startPress();
    return press;
  };
  return {
    warm: () => {
      warmPress().catch(() => undefined);
    },
    print: (body, settings) => {
      const printed = queue.then(async () => printPdf((await warmPress()).page, body, settings));
      queue = printed.catch(() => undefined);
      return printed;
    },
    close: async () => {
      const running = await press?.catch(() => undefined);
      await running?.browser.close();
    },
  };
}

async function startPress(): Promise<Press> {
  const browser = await launchBrowser();
  return { browser, page: await openPress(browser) };
}
