import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { ElementHandle, Page } from "puppeteer";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { edited } from "../../../src/editor/study-text.js";
import { smallLakeText } from "../../study/small-lake.js";
import { type Bench, focused, openBench, tabTo } from "./bench.js";
import { pages } from "./each-page.js";
import { judgeAtHand, violations } from "./page-faults.js";
import { leads, saveState, visit } from "./waiting.js";
import { keyboardFaults } from "./walk.js";

let bench: Bench;
let full = "";
let blank = "";
let first = "";
let searched = "";

beforeAll(async () => {
  bench = await openBench(false);
  full = `/studies/${bench.studies.copy("example-sorrel-bend", "Ada").id}`;
  const body = new URLSearchParams({ name: "Blank", lake: "Blank", units: "us", currency: "USD" });
  const made = await fetch(`${bench.base}/studies/new`, { method: "POST", body, redirect: "manual" });
  const facts = new URLSearchParams({ name: "Mill Pond", "intakes/0/flow": "20" });
  const estimate = await fetch(`${bench.base}/start`, { method: "POST", body: facts, redirect: "manual" });
  first = estimate.headers.get("location") ?? "";
  const hours = edited(smallLakeText, [{ at: ["search"], value: { vary: ["hours"] } }]);
  searched = `/studies/${bench.studies.create(hours, { author: "Ada", note: "", origin: "form" }).id}`;
  blank = (made.headers.get("location") ?? "").replace("/edit/names", "");
});
afterAll(() => bench.close());

describe("each page of the workbench", () => {
  // One for all: a browser's page of their own, with fonts and styles read anew, took a third of the time of each.
  let page: Page;
  beforeAll(async () => {
    page = await bench.visitor();
    await judgeAtHand(page);
  });
  afterAll(() => page.close());

  it.each(pages)("%s keeps WCAG 2.2 AA, by keyboard too, and fits a phone", async (_name, path) => {
    await page.setViewport({ width: 1280, height: 900 });
    await visit(page, bench.base + path({ full, blank, first, searched }));
    expect(await violations(page)).toEqual([]);
    expect(await keyboardFaults(page)).toEqual([]);
  });
});

describe("a log of boats that was read", () => {
  const columns = { date: "Season", class: "Kind", setAside: "Held", fouled: "Mussels" };

  it("keeps WCAG 2.2 AA, and shows sums, classes to choose and lines left out", async () => {
    const folder = mkdtempSync(join(tmpdir(), "boat-log-"));
    const file = join(folder, "boats.csv");
    writeFileSync(
      file,
      "Season,Kind,Owner,Held,Mussels\n2027,Slip,Doe,no,no\n13,Slip,Roe,no,no\n2027,Slip,Roe,?,no\n",
    );
    const page = await bench.visitor();
    await visit(page, `${bench.base}${full}/records/boats`);
    const input = (await page.$("#file")) as ElementHandle<HTMLInputElement>;
    await input.uploadFile(file);
    await Promise.all([page.waitForNavigation(), page.click("button[value=read]")]);
    for (const [key, name] of Object.entries(columns)) await page.select(`#column-${key}`, name);
    await Promise.all([page.waitForNavigation(), page.click("button[value=read]")]);
    expect(await violations(page)).toEqual([]);
    await page.select("#word-1", "long-moored");
    await Promise.all([page.waitForNavigation(), page.click("button[value=read]")]);
    expect(await violations(page)).toEqual([]);
    expect(await keyboardFaults(page)).toEqual([]);
    const text = await page.$eval("main", (main) => main.textContent ?? "");
    expect(text).toMatch(/2 lines left out[\s\S]*Keep the sums without the 2 lines/);
    rmSync(folder, { recursive: true });
    await page.close();
  });
});

describe("what comes of a file or a table that was sent", () => {
  it.each([
    [
      "a record",
      "records",
      "date=Day&level=Pool (ft)",
      "Day,Pool (ft),By\n1/13/2010,2130.5,A\n1/14/2010,Ice,A\n",
    ],
    ["own values", "own-values", "csv=growth.bulk-density,28,lb/ft3,weighed", ""],
    ["own values with faults", "own-values", "csv=growth.bulk-density,28,ft,weighed", ""],
  ])("keeps WCAG 2.2 AA, by keyboard too, and fits a phone: %s", async (_name, path, fields, file) => {
    const form = new FormData();
    for (const [name, value] of new URLSearchParams(fields)) form.set(name, value);
    if (file !== "") form.set("file", new Blob([file]), "gauge.csv");
    const answer = await fetch(`${bench.base}${full}/${path}`, { method: "POST", body: form });
    const html = await answer.text();
    expect(html).toMatch(/To be answered first|What they would do|Nothing was saved/);
    const page = await bench.visitor();
    await visit(page, `${bench.base}${full}/${path}`);
    await page.evaluate((sent) => {
      document.documentElement.innerHTML = sent;
    }, html);
    expect(await violations(page)).toEqual([]);
    expect(await keyboardFaults(page)).toEqual([]);
    await page.close();
  });
});

describe("the checks of accessibility", () => {
  it("find what is wrong: a page with a field that has no label", async () => {
    const page = await bench.visitor();
    await visit(page, `${bench.base}/studies/new`);
    await page.evaluate(() => document.querySelector("label[for=lake]")?.remove());
    expect((await violations(page)).join()).toContain("label");
  });

  it("find what hinders a keyboard: no mark of the focus, a trap, a field without a name, a head over what has the focus", async () => {
    const faults = async (spoil: () => void) => {
      const page = await bench.visitor();
      await visit(page, `${bench.base}/studies/new`);
      await page.evaluate(spoil);
      return (await keyboardFaults(page)).join();
    };
    const changed = await Promise.all([
      faults(() => document.getElementById("lake")?.style.setProperty("outline", "none")),
      faults(() =>
        document
          .getElementById("lake")
          ?.addEventListener("blur", ({ target }) => (target as HTMLElement).focus()),
      ),
      faults(() => document.querySelector("label[for=lake]")?.remove()),
      faults(() => {
        const cover = { position: "fixed", inset: "0", zIndex: "9", maxWidth: "none" };
        for (const head of document.querySelectorAll("nav")) Object.assign(head.style, cover);
      }),
    ]);
    expect(changed[0]).toContain("no line around Name of the lake");
    expect(changed[1]).toContain("Tab comes to");
    expect(changed[2]).toContain("has no name");
    expect(changed[3]).toContain("out of sight");
  });
});

describe("the first page", () => {
  it("weighs less than 200 KB with all that it loads, and asks nobody else", async () => {
    const page = await bench.visitor();
    const asked: string[] = [];
    page.on("request", (request) => asked.push(request.url()));
    await visit(page, bench.base);
    await page.evaluate(async () => {
      await document.fonts.ready;
    });
    const bytes = await page.evaluate(() =>
      [...performance.getEntriesByType("navigation"), ...performance.getEntriesByType("resource")]
        .map((entry) => (entry as PerformanceResourceTiming).encodedBodySize)
        .reduce((total, each) => total + each, 0),
    );
    expect(bytes).toBeGreaterThan(10_000);
    expect(bytes).toBeLessThan(200_000);
    expect(asked.filter((url) => !url.startsWith(bench.base))).toEqual([]);
  });
});

describe("with the keyboard alone", () => {
  it("a blank study is made, and its form filled in and saved", async () => {
    const page = await bench.visitor();
    await visit(page, bench.base);
    await page.keyboard.press("Tab");
    expect(await focused(page)).toBe("Skip to the page");
    await tabTo(page, "Make a new study");
    await leads(page, () => page.keyboard.press("Enter"));
    await tabTo(page, "Name of the study");
    await page.keyboard.type("Keyboard lake");
    await tabTo(page, "Name of the lake");
    await page.keyboard.type("Keyboard lake");
    await leads(page, () => page.keyboard.press("Enter"));
    expect(page.url()).toContain("/studies/keyboard-lake/edit/names");
    await tabTo(page, "Authority");
    // The list of what is needed leads to the field.
    await page.keyboard.press("Enter");
    await page.waitForFunction(() => document.activeElement?.id === "f-study-authority");
    await page.keyboard.type("District");
    await page.keyboard.press("Enter");
    await saveState(page, "Saved");
    expect(bench.studies.find("keyboard-lake")?.text).toContain("authority: District");
  });
});

describe("what opens and closes", () => {
  it.each([
    ["the parts of a study, on a phone", () => `${full}/edit/lake`, ".bench-parts", 360],
    ["somebody who is not in the list", () => `${full}/edit/structures/0`, ".makes", 1280],
    ["a sitting of revisions", () => `${full}/revisions`, ".sitting", 1280],
    ["the parts of a study, beside its report", () => `${full}/report`, ".study-menu", 1280],
  ])("does so by Enter and by Space, where the focus stays: %s", async (_name, path, selector, width) => {
    const page = await bench.visitor(width);
    await visit(page, bench.base + path());
    const isOpen = () => page.$eval(selector, (details) => (details as HTMLDetailsElement).open);
    const before = await isOpen();
    await page.focus(`${selector} > summary`);
    await page.keyboard.press("Enter");
    expect(await isOpen()).toBe(!before);
    await page.keyboard.press("Space");
    expect(await isOpen()).toBe(before);
    expect(await page.$eval(`${selector} > summary`, (summary) => summary === document.activeElement)).toBe(
      true,
    );
  });
});

describe("the page to sign in", () => {
  it("keeps WCAG 2.2 AA and fits a phone", async () => {
    await bench.lock();
    const page = await bench.visitor();
    await visit(page, bench.base);
    expect(new URL(page.url()).pathname).toBe("/sign-in");
    expect(await violations(page)).toEqual([]);
    expect(await keyboardFaults(page)).toEqual([]);
  });
});
