import type { Server } from "node:http";
import type { AddressInfo } from "node:net";
import type { Browser, ElementHandle, Page } from "puppeteer";
import { newAccessKey } from "../../../src/app/keys.js";
import { askedRuns, usualRuns } from "../../../src/app/runs.js";
import { type Studies, studiesOf } from "../../../src/app/studies.js";
import { launchBrowser } from "../../../src/report/print/browser.js";
import { createPrinter, type Printer } from "../../../src/report/print/printer.js";
import { accessStore } from "../../../src/store/access.js";
import { storeConnection } from "../../../src/store/connection.js";
import { studyStore } from "../../../src/store/studies.js";
import { createApp } from "../../../src/web/app.js";
import { patience } from "../../patience.js";
import { assumptions } from "../../report/runs.js";
import { sampleOdds } from "../../report/sample-odds.js";
import { searchedHere } from "../../report/searched-here.js";
import { inventedOdds } from "../../trials/invented-odds.js";
import { accessIn } from "../access/entering.js";
import { answersInTest } from "../answering.js";
import { issuingIn } from "../issuing.js";
import { inventedSwings } from "../judging.js";
import { leads } from "./waiting.js";

/** The application in memory, with a browser before it. Futures are not drawn: every study is given the sample odds of Ninemoss. */
export interface Bench {
  readonly base: string;
  readonly studies: Studies;
  /** A page whose cookies and storage nobody else has. */
  readonly visitor: (width?: number) => Promise<Page>;
  readonly faults: readonly unknown[];
  /** Sets a key, so that from now on nobody comes in without one. */
  readonly lock: () => Promise<void>;
  readonly close: () => Promise<void>;
}

/** @param isPrintRead whether a test reads what is printed; where none does, pictures are drawn and pages are left out */
export async function openBench(isPrintRead = true): Promise<Bench> {
  const faults: unknown[] = [];
  const connection = storeConnection(":memory:");
  const studies = studiesOf(
    studyStore(connection),
    () => assumptions,
    () => new Date(),
  );
  const browser: Browser = await launchBrowser();
  const drawing = createPrinter({ launch: async () => browser });
  const stub = new TextEncoder().encode("%PDF-stub");
  const printer: Printer = isPrintRead ? drawing : { ...drawing, print: async () => stub };
  const runs = askedRuns({
    ...usualRuns,
    draw: async (study) =>
      study.document.study.requestedOption === "summer-checks" ? sampleOdds("ninemoss") : inventedOdds(study),
  });
  const app = createApp({
    ...{
      answers: answersInTest(),
      studies,
      printer,
      runs,
      few: runs,
      search: async (study) => searchedHere(study),
      judge: inventedSwings,
      issuing: issuingIn(connection),
      access: accessIn(connection),
    },
    report: (error) => faults.push(error),
  });
  const server: Server = app.listen(0, "127.0.0.1");
  await new Promise((resolve) => server.once("listening", resolve));
  return {
    base: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    studies,
    faults,
    visitor: async (width = 1280) => {
      const context = await browser.createBrowserContext();
      const page = await context.newPage();
      await page.setViewport({ width, height: 900 });
      page.setDefaultTimeout(patience);
      return page;
    },
    lock: async () => {
      const { kept } = await newAccessKey("Ada", "edit", new Date());
      accessStore(connection).add(kept);
    },
    close: async () => {
      await printer.close();
      await browser.close();
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
      connection.close();
    },
  };
}

const attribute = (name: string, value: string) => `[${name}="${value.replaceAll('"', '\\"')}"]`;

/** Types values into inputs, or chooses them, by the names of the inputs. */
export async function fill(page: Page, values: Readonly<Record<string, string>>): Promise<void> {
  for (const [name, value] of Object.entries(values)) {
    const input = await found(page, attribute("name", name));
    const isSelect = await input.evaluate((element) => element instanceof HTMLSelectElement);
    if (isSelect) await input.select(value);
    else {
      await input.focus();
      await input.evaluate((element) => (element as HTMLInputElement).select());
      await page.keyboard.sendCharacter(value);
    }
  }
}

async function found(page: Page, selector: string): Promise<ElementHandle> {
  const element = await page.$(selector);
  if (!element) throw new Error(`nothing on ${page.url()} is ${selector}`);
  return element;
}

/**
 * Presses what leads to another page, and waits for it. By the keyboard: what a save brings moves the page, and a slow
 * machine's mouse would miss.
 */
export async function press(page: Page, selector: string): Promise<void> {
  await (await found(page, selector)).focus();
  await leads(page, () => page.keyboard.press("Enter"));
}

export const act = (page: Page, value: string) => press(page, `button${attribute("value", value)}`);

export const text = (page: Page, selector: string) =>
  page.$eval(selector, (element) => element.textContent?.replace(/\s+/g, " ").trim() ?? "");

export const shownIn = (page: Page, name: string) =>
  page.$eval(attribute("name", name), (element) => (element as HTMLInputElement).value);

/** A value for each month, by the names of the inputs. */
export const months = (name: string, value: string) =>
  Object.fromEntries(
    ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"].map((month) => [
      `${name}/${month}`,
      value,
    ]),
  );

/** The words of what has the focus. */
export const focused = (page: Page) => page.evaluate(() => document.activeElement?.textContent?.trim() ?? "");

/** Presses Tab until the element of that name has the focus. */
export async function tabTo(page: Page, name: string): Promise<void> {
  const most = 60;
  for (let step = 0; step < most; step += 1) {
    const found = await page.evaluate(() => {
      const element = document.activeElement;
      const label = element instanceof HTMLInputElement ? element.labels?.[0] : element;
      return label?.textContent?.trim() ?? "";
    });
    if (found.startsWith(name)) return;
    await page.keyboard.press("Tab");
  }
  throw new Error(`${name} is not reached by the keyboard`);
}
