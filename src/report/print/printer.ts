import { setTimeout as pause } from "node:timers/promises";
import type { Browser, Page } from "puppeteer";
import type { PdfDescription } from "./accessible-pdf.js";
import { BrowserError, launchBrowser } from "./browser.js";
import { descriptionOf, type PrintSettings, printPdf } from "./pdf.js";
import { drawPictures, type Picture } from "./pictures.js";
import { type PressKeeper, pressKeeper } from "./press.js";

/** As many wait for the printer as may. */
export class PrinterBusyError extends Error {}

export interface Printer {
  /** Starts the browser ahead of the first print. */
  readonly warm: () => void;
  /**
   * @param signal ends the wait for its turn, or the print under way
   * @throws PrinterBusyError; BrowserError
   */
  readonly print: (body: string, settings: PrintSettings, signal?: AbortSignal) => Promise<Uint8Array>;
  /** The charts of a report one by one. @throws as print does */
  readonly draw: (body: string, title: string) => Promise<Picture[]>;
  readonly close: () => Promise<void>;
}

interface PrinterSettings {
  readonly launch: () => Promise<Browser>;
  /** Prints that may be lined up, the one under way among them. */
  readonly mostLinedUp: number;
  /** What a print may take once its turn has come: one on 300 structures has over 200 pages, and machines may be slow. */
  readonly longestMilliseconds: number;
  /** Waits so long, unless the signal ends it before. */
  readonly wait: (milliseconds: number, signal: AbortSignal) => Promise<unknown>;
  /** Gives a report what readers need beside its pages and packs it once it is printed, while the next is. */
  readonly finish: (printed: Promise<Uint8Array>, description: PdfDescription) => Promise<Uint8Array>;
}

const usual: PrinterSettings = {
  launch: () => launchBrowser(),
  mostLinedUp: 8,
  longestMilliseconds: 120_000,
  wait: (milliseconds, signal) => pause(milliseconds, undefined, { signal }),
  // Loaded while the browser prints; the server has its prints finished elsewhere, and starts sooner without it.
  finish: async (printed, description) => {
    const [pdf, { finishPrint }] = await Promise.all([printed, import("./finished-pdf.js")]);
    return finishPrint(pdf, description);
  },
};

/** A printer that starts its browser when first needed, keeps it warm, and prints one report at a time. */
export function createPrinter(settings: Partial<PrinterSettings> = {}): Printer {
  const { launch, mostLinedUp, finish, ...limits } = { ...usual, ...settings };
  const presses = pressKeeper(launch);
  let queue: Promise<unknown> = Promise.resolve();
  let linedUp = 0;
  const inTurn = async <Result>(work: Work<Result>, signal?: AbortSignal): Promise<Result> => {
    if (linedUp >= mostLinedUp) throw new PrinterBusyError("as many reports wait to be printed as may");
    linedUp += 1;
    const done = queue.then(() => {
      signal?.throwIfAborted();
      return twiceAtMost(work, presses, { ...limits, signal });
    });
    queue = done.catch(() => undefined);
    return done.finally(() => {
      linedUp -= 1;
    });
  };
  return {
    warm: () => {
      presses.warm().catch(() => undefined);
    },
    print: (body, how, signal) =>
      finish(
        inTurn((page) => printPdf(page, body, how), signal),
        descriptionOf(body, how),
      ),
    draw: (body, title) => inTurn((page) => drawPictures(page, body, title)),
    close: presses.close,
  };
}

type Work<Result> = (page: Page) => Promise<Result>;

interface Limits extends Pick<PrinterSettings, "longestMilliseconds" | "wait"> {
  readonly signal: AbortSignal | undefined;
}

/** Does work again, on a new browser, if the browser ended meanwhile: it may have been killed for want of memory. */
async function twiceAtMost<Result>(
  work: Work<Result>,
  presses: PressKeeper,
  limits: Limits,
): Promise<Result> {
  for (let attempt = 1; ; attempt++) {
    const press = await presses.warm();
    const { browser, page } = press;
    try {
      return await limited(work, page, limits);
    } catch (error) {
      limits.signal?.throwIfAborted();
      const isOver = !browser.connected || page.isClosed();
      if (isOver && attempt === 1) continue;
      if (isOver) throw new BrowserError(endedTwice, { cause: error });
      if (!isTimeout(error)) throw error;
      // A browser that does not answer would keep the next print waiting as well.
      presses.drop(press);
      throw new BrowserError(tookTooLong, { cause: error });
    }
  }
}

/** Work that ends with its page when nobody waits for it any more, and after the longest time in any case. */
async function limited<Result>(
  work: Work<Result>,
  page: Page,
  { signal, longestMilliseconds, wait }: Limits,
): Promise<Result> {
  const ending = new AbortController();
  let left: Promise<unknown> | undefined;
  const leave = () => {
    left = page.close().catch(() => undefined);
  };
  signal?.addEventListener("abort", leave, { once: true });
  const late = wait(longestMilliseconds, ending.signal).then(() => {
    throw new Error("timeout of the printer");
  });
  late.catch(() => undefined);
  try {
    signal?.throwIfAborted();
    return await Promise.race([work(page), late]);
  } finally {
    ending.abort();
    signal?.removeEventListener("abort", leave);
    // The next print must not be put on a page that is closing.
    await left;
  }
}

const isTimeout = (error: unknown): boolean => error instanceof Error && /time(d )?out/i.test(error.message);

const endedTwice =
  "The browser for printing ended twice while it printed. Most often memory is short: close other programs and try again.";
const tookTooLong =
  "The browser for printing did not finish in two minutes. Try again, or print the board's part alone.";
