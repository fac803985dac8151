import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults, RunOptions } from "axe-core";
import type { Page } from "puppeteer";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Bench, openBench } from "./bench.js";
import { leads, saveState, visit } from "./waiting.js";

declare const axe: { run: (context: Document, options: RunOptions) => Promise<AxeResults> };

const require = createRequire(import.meta.url);
const axeSource = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");
let bench: Bench;
let full = "";
let blank = "";
let first = "";

beforeAll(async () => {
  bench = await openBench();
  full = `/studies/${bench.studies.copy("example-sorrel-bend", "Ada").id}`;
  const body = new URLSearchParams({ name: "Blank", lake: "Blank", units: "us", currency: "USD" });
  const made = await fetch(`${bench.base}/studies/new`, { method: "POST", body, redirect: "manual" });
  const facts = new URLSearchParams({ name: "Mill Pond", "intakes/0/flow": "20" });
  const estimate = await fetch(`${bench.base}/start`, { method: "POST", body: facts, redirect: "manual" });
  first = estimate.headers.get("location") ?? "";
  blank = (made.headers.get("location") ?? "").replace("/edit/names", "");
});
afterAll(() => bench.close());

/** What breaks WCAG 2.2 AA on a page, at desktop and at phone width. */
async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axeSource);
  const found: string[] = [];
  for (const width of [1280, 360]) {
    await page.setViewport({ width, height: 900 });
    // Colours are the same at each width, and take most of the time.
    const rules = { "color-contrast": { enabled: width > 360 } };
    const results = await page.evaluate(
      (each) =>
        axe.run(document, {
          runOnly: { type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] },
          resultTypes: ["violations"],
          rules: each,
        }),
      rules,
    );
    found.push(...results.violations.map(({ id, nodes }) => `${width}: ${id} at ${nodes[0]?.html}`));
    found.push(...(await outsideOf(page, width)));
  }
  // A window of 1280 pixels at 200 % zoom.
  await page.setViewport({ width: 640, height: 450, deviceScaleFactor: 2 });
  found.push(...(await outsideOf(page, 640)));
  return found;
}

/** What is wider than the window, and captions that are cut. */
async function outsideOf(page: Page, width: number): Promise<string[]> {
  const { overflow, cut } = await page.evaluate(() => ({
    overflow: document.documentElement.scrollWidth - window.innerWidth,
    cut: [
      ...document.querySelectorAll<HTMLElement>(
        "label, legend, caption, summary, dt, h1, h2, button, a.button",
      ),
    ]
      .filter(
        (each) =>
          each.checkVisibility() &&
          !each.closest(".unseen, .table-scroll") &&
          !each.matches(".unseen, .skip"),
      )
      .filter(
        (each) => getComputedStyle(each).display !== "inline" && each.scrollWidth > each.clientWidth + 1,
      )
      .map((each) => each.textContent?.trim().slice(0, 60) ?? ""),
  }));
  return [
    ...(overflow > 0 ? [`${width}: ${overflow} px wider than the window`] : []),
    ...cut.map((text) => `${width}: “${text}” is cut`),
  ];
}

describe("each page of the workbench", () => {
  const pages: [string, () => string][] = [
    ["the list of studies", () => "/"],
    ["a new study", () => "/studies/new"],
    ["results", () => full],
    ["names", () => `${full}/edit/names`],
    ["the lake", () => `${full}/edit/lake`],
    ["levels", () => `${full}/edit/levels`],
    ["structures", () => `${full}/edit/structures`],
    ["a structure", () => `${full}/edit/structures/0`],
    ["a table of structures", () => `${full}/structures/table`],
    ["boats", () => `${full}/edit/boats`],
    ["an option", () => `${full}/edit/options/1`],
    ["revisions", () => `${full}/revisions`],
    ["issued reports", () => `${full}/issues`],
    ["money", () => `${full}/edit/money`],
    ["what is printed", () => `${full}/edit/printed`],
    ["an unfinished study", () => blank],
    ["empty levels", () => `${blank}/edit/levels`],
    ["the first screen of a first answer", () => "/start"],
    ["the second, with its balance", () => "/start?screen=2&intakes%2F0%2Fuse=town"],
    ["the first screen with an entry that cannot be read", () => "/start?act=next&depth=lots"],
    ["a comparison", () => `/compare?left=${full.split("/")[2]}&right=example-ninemoss`],
    ["verification", () => "/verify"],
    ["help", () => "/help"],
    ["a list to be sent to the plant", () => "/help/checklist/hydropower"],
    ["what programs can do", () => "/api"],
    ["assumptions", () => `${full}/assumptions`],
    ["an assumption", () => `${full}/assumptions/cleaning.rack.visit`],
    ["the odds", () => `${full}/odds`],
    ["where the chance comes from", () => `${full}/chance`],
    ["downloads", () => `${full}/forms`],
    ["the report on a screen", () => `${full}/report`],
    ["what to replace first", () => `${first}/first`],
    ["a page with typical values", () => `${first}/edit/structures/0`],
    ["a page that is not there", () => "/studies/nobody"],
    ["an example, which is only read", () => "/studies/example-ninemoss/edit/lake"],
  ];

  it.each(pages)("%s keeps WCAG 2.2 AA and fits a phone", async (_name, path) => {
    const page = await bench.visitor();
    await visit(page, bench.base + path());
    expect(await violations(page)).toEqual([]);
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

  it("every stop is seen, and the way leads through the page and out of it", async () => {
    const page = await bench.visitor();
    await visit(page, `${bench.base}${full}/edit/levels`);
    const stops = await page.evaluate(
      () =>
        [
          ...document.querySelectorAll(
            "a[href], button:not([tabindex='-1']), input:not([type=hidden]), select, textarea, summary, [tabindex='0']",
          ),
        ].filter((each) => each.checkVisibility()).length,
    );
    const seen = new Set<string>();
    for (let step = 0; step < stops; step += 1) {
      await page.keyboard.press("Tab");
      const { key, outline } = await page.evaluate(() => {
        const element = document.activeElement;
        const all = [...document.querySelectorAll("*")];
        const style = element ? getComputedStyle(element) : undefined;
        return { key: String(element ? all.indexOf(element) : -1), outline: style?.outlineStyle ?? "none" };
      });
      seen.add(key);
      expect(outline).not.toBe("none");
    }
    expect(seen.size).toBe(stops);
  });
});

describe("the page to sign in", () => {
  it("keeps WCAG 2.2 AA and fits a phone", async () => {
    await bench.lock();
    const page = await bench.visitor();
    await visit(page, bench.base);
    expect(new URL(page.url()).pathname).toBe("/sign-in");
    expect(await violations(page)).toEqual([]);
  });
});

const focused = (page: Page) => page.evaluate(() => document.activeElement?.textContent?.trim() ?? "");

/** Presses Tab until the element of that name has the focus. */
async function tabTo(page: Page, name: string): Promise<void> {
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
