import type { Browser, Page } from "puppeteer";
import { launchBrowser } from "./browser.js";
import { openPress, type PrintSettings, printPdf } from "./pdf.js";
import { drawPictures, type Picture } from "./pictures.js";

export interface Printer {
  /** Starts the browser ahead of the first print. */
  readonly warm: () => void;
  readonly print: (body: string, settings: PrintSettings) => Promise<Uint8Array>;
  /** The charts of a report one by one. */
  readonly draw: (body: string, title: string) => Promise<Picture[]>;
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
  const inTurn = <Result>(work: (page: Page) => Promise<Result>): Promise<Result> => {
    const done = queue.then(async () => work((await warmPress()).page));
    queue = done.catch(() => undefined);
    return done;
  };
  return {
    warm: () => {
      warmPress().catch(() => undefined);
    },
    print: (body, settings) => inTurn((page) => printPdf(page, body, settings)),
    draw: (body, title) => inTurn((page) => drawPictures(page, body, title)),
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
