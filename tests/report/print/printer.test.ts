import { getPriority } from "node:os";
import type { Browser, Page } from "puppeteer";
import { afterEach, describe, expect, it } from "vitest";
import { BrowserError, besidePages, launchBrowser } from "../../../src/report/print/browser.js";
import { createPrinter, type Printer, PrinterBusyError } from "../../../src/report/print/printer.js";

const settings = { title: "Lake", paper: "letter", edition: "Draft" } as const;
const started: Printer[] = [];

afterEach(async () => {
  for (const printer of started.splice(0)) await printer.close();
});

/** A printer whose first browsers are killed as soon as they print. */
function printerKilled(times: number) {
  let starts = 0;
  const launch = async () => {
    const browser = await launchBrowser();
    starts += 1;
    if (starts <= times) killAtPrint(browser);
    return browser;
  };
  const printer = createPrinter({ launch });
  started.push(printer);
  return { printer, starts: () => starts };
}

function killAtPrint(browser: Browser): void {
  const newPage = browser.newPage.bind(browser);
  browser.newPage = async () => {
    const page = await newPage();
    const pdf = page.pdf.bind(page);
    page.pdf = (options) => {
      const printing = pdf(options);
      process.kill(-(browser.process()?.pid ?? Number.NaN), "SIGKILL");
      return printing;
    };
    return page;
  };
}

describe("a browser that is killed while it prints", () => {
  it("is started once more, and the report is printed", async () => {
    const { printer, starts } = printerKilled(1);
    const pdf = await printer.print("<p>A lake.</p>", settings);
    expect(Buffer.from(pdf.slice(0, 5)).toString()).toBe("%PDF-");
    expect(starts()).toBe(2);
  });

  it("and killed again tells what to do, and the next report is printed", async () => {
    const { printer } = printerKilled(2);
    const refused = printer.print("<p>A lake.</p>", settings);
    await expect(refused).rejects.toThrow(BrowserError);
    await expect(refused).rejects.toThrow(/ended twice while it printed.*try again/);
    expect((await printer.print("<p>A lake.</p>", settings)).byteLength).toBeGreaterThan(1000);
  });
});

describe("a browser beside the pages of a server", () => {
  it("stands back for them with all its processes, where they have a priority of their own, and prints", async () => {
    const niceness: number[] = [];
    const launch = async () => {
      const browser = await launchBrowser(besidePages);
      niceness.push(getPriority(browser.process()?.pid));
      return browser;
    };
    const printer = createPrinter({ launch });
    started.push(printer);
    const pdf = await printer.print("<p>A lake.</p>", settings);
    expect(Buffer.from(pdf.slice(0, 5)).toString()).toBe("%PDF-");
    // nice(1), where 19 is the lowest; done on Linux alone.
    const further = process.platform === "linux" ? besidePages.niceness : 0;
    expect(niceness).toEqual([Math.min(19, getPriority() + further)]);
  });
});

/**
 * A printer whose first page never finishes a print; tells when it has begun, and how often a browser was started. No time
 * passes for it: the longest time of a print, in their order, is over when its alarm rings.
 */
function printerStuck() {
  const alarms: { readonly milliseconds: number; readonly ring: () => void }[] = [];
  const wait = (milliseconds: number) =>
    new Promise<void>((resolve) => alarms.push({ milliseconds, ring: resolve }));
  let starts = 0;
  let begin: () => void = () => undefined;
  const begun = new Promise<void>((resolve) => {
    begin = resolve;
  });
  const launch = async () => {
    const browser = await launchBrowser();
    starts += 1;
    const newPage = browser.newPage.bind(browser);
    let pages = 0;
    browser.newPage = async () => {
      const page = await newPage();
      pages += 1;
      if (starts === 1 && pages === 1) page.pdf = () => stuckOn(page);
      return page;
    };
    return browser;
  };
  const stuckOn = (page: Page) => {
    begin();
    // The page's own work, which ends with it: a script that never returns.
    return page.evaluate(() => new Promise<Uint8Array>(() => undefined));
  };
  const printer = createPrinter({ launch, wait });
  started.push(printer);
  return { printer, begun, alarms, starts: () => starts };
}

describe("a print under way", () => {
  it("ends when its reader leaves, and the next is printed by the same browser", async () => {
    const { printer, begun, starts } = printerStuck();
    const reader = new AbortController();
    const left = printer.print("<p>A lake.</p>", settings, reader.signal);
    const next = printer.print("<p>Another.</p>", settings);
    await begun;
    reader.abort(new Error("gone"));
    await expect(left).rejects.toThrow("gone");
    expect(Buffer.from((await next).slice(0, 5)).toString()).toBe("%PDF-");
    expect(starts()).toBe(1);
  });

  it("ends after the longest time, says so, and the next is printed by another browser", async () => {
    const { printer, begun, alarms, starts } = printerStuck();
    const late = printer.print("<p>A lake.</p>", settings);
    await begun;
    expect(alarms.map(({ milliseconds }) => milliseconds)).toEqual([2 * 60 * 1000]);
    alarms[0]?.ring();
    await expect(late).rejects.toThrow(BrowserError);
    await expect(late).rejects.toThrow(/did not finish in two minutes/);
    expect((await printer.print("<p>A lake.</p>", settings)).byteLength).toBeGreaterThan(1000);
    expect(starts()).toBe(2);
  });
});

describe("reports lined up for the printer", () => {
  const never = () => new Promise<Browser>(() => undefined);

  it("are refused beyond as many as may wait", async () => {
    const printer = createPrinter({ launch: never, mostLinedUp: 2 });
    void printer.print("", settings);
    void printer.print("", settings);
    await expect(printer.print("", settings)).rejects.toThrow(PrinterBusyError);
  });

  it("are left out when their reader has gone before their turn", async () => {
    const failing = async () => Promise.reject(new BrowserError("no browser"));
    const printer = createPrinter({ launch: failing });
    const reader = new AbortController();
    const first = printer.print("", settings);
    const second = printer.print("", settings, reader.signal);
    reader.abort(new Error("gone"));
    await expect(first).rejects.toThrow("no browser");
    await expect(second).rejects.toThrow("gone");
  });
});
