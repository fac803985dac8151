import type { Browser, Page } from "puppeteer";
import { openPress } from "./press-page.js";

/** A browser with a page on which reports are printed. */
interface Press {
  readonly browser: Browser;
  readonly page: Page;
}

/** Keeps a press warm: its browser is started when it is first needed, and again once it ended. */
export interface PressKeeper {
  readonly warm: () => Promise<Press>;
  /** Gives up a press whose browser does not answer; the next is warmed on a new one. */
  readonly drop: (press: Press) => void;
  readonly close: () => Promise<void>;
}

export function pressKeeper(launch: () => Promise<Browser>): PressKeeper {
  let kept: Promise<Press> | undefined;
  return {
    warm: async () => {
      const running = await kept?.catch(() => undefined);
      if (running?.browser.connected && !running.page.isClosed()) return running;
      kept = running?.browser.connected ? pressOn(running.browser) : launch().then(pressOn);
      return kept;
    },
    drop: ({ browser }) => {
      kept = undefined;
      void browser.close().catch(() => undefined);
    },
    close: async () => {
      const running = await kept?.catch(() => undefined);
      await running?.browser.close();
    },
  };
}

const pressOn = async (browser: Browser): Promise<Press> => ({ browser, page: await openPress(browser) });
