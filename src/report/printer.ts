import type { Browser, Page } from "puppeteer";
import { BrowserError, launchBrowser } from "./browser.js";
import { openPress, type PrintSettings, printPdf } from "./pdf.js";
import { drawPictures, type Picture } from "./pictures.js";

/** As many wait for the printer as may. */
export class PrinterBusyError extends Error {}

export interface Printer {
  /** Starts the browser ahead of the first print. */
  readonly warm: () => void;
  /**
   * @param signal ends the wait for its turn
   * @throws PrinterBusyError; BrowserError
   */
  readonly print: (body: string, settings: PrintSettings, signal?: AbortSignal) => Promise<Uint8Array>;
  /** The charts of a report one by one. @throws as print does */
  readonly draw: (body: string, title: string) => Promise<Picture[]>;
  readonly close: () => Promise<void>;
}

interface Press {
  readonly browser: Browser;
  readonly page: Page;
}

export interface PrinterSettings {
  readonly launch: () => Promise<Browser>;
  /** Prints that may be lined up, the one under way among them. */
  readonly mostLinedUp: number;
}

const usual: PrinterSettings = { launch: () => launchBrowser(), mostLinedUp: 8 };

/** A printer that starts its browser when first needed, keeps it warm, and prints one report at a time. */
export function createPrinter(settings: Partial<PrinterSettings> = {}): Printer {
  const { launch, mostLinedUp } = { ...usual, ...settings };
  let press: Promise<Press> | undefined;
  let queue: Promise<unknown> = Promise.resolve();
  let linedUp = 0;
  const warmPress = async (): Promise<Press> => {
    const running = await press?.catch(() => undefined);
    if (running?.browser.connected && !running.page.isClosed()) return running;
    press = startPress(launch);
    return press;
  };
  const inTurn = async <Result>(work: Work<Result>, signal?: AbortSignal): Promise<Result> => {
    if (linedUp >= mostLinedUp) throw new PrinterBusyError("as many reports wait to be printed as may");
    linedUp += 1;
    const done = queue.then(() => {
      signal?.throwIfAborted();
      return twiceAtMost(work, warmPress);
    });
    queue = done.catch(() => undefined);
    return done.finally(() => {
      linedUp -= 1;
    });
  };
  return {
    warm: () => {
      warmPress().catch(() => undefined);
    },
    print: (body, how, signal) => inTurn((page) => printPdf(page, body, how), signal),
    draw: (body, title) => inTurn((page) => drawPictures(page, body, title)),
    close: async () => {
      const running = await press?.catch(() => undefined);
      await running?.browser.close();
    },
  };
}

type Work<Result> = (page: Page) => Promise<Result>;

/** Does work again, on a new browser, if the browser ended meanwhile: it may have been killed for want of memory. */
async function twiceAtMost<Result>(work: Work<Result>, warmPress: () => Promise<Press>): Promise<Result> {
  for (let attempt = 1; ; attempt++) {
    const { browser, page } = await warmPress();
    try {
      return await work(page);
    } catch (error) {
      const isOver = !browser.connected || page.isClosed();
      if (isOver && attempt === 1) continue;
      if (isOver) throw new BrowserError(endedTwice, { cause: error });
      if (!isTimeout(error)) throw error;
      // A browser that does not answer would keep the next print waiting as well.
      void browser.close().catch(() => undefined);
      throw new BrowserError(tookTooLong, { cause: error });
    }
  }
}

const isTimeout = (error: unknown): boolean => error instanceof Error && /time(d )?out/i.test(error.message);

const endedTwice =
  "The browser for printing ended twice while it printed. Most often memory is short: close other programs and try again.";
const tookTooLong =
  "The browser for printing did not finish in two minutes. Try again, or print the board's part alone.";

async function startPress(launch: () => Promise<Browser>): Promise<Press> {
  const browser = await launch();
  return { browser, page: await openPress(browser) };
}
