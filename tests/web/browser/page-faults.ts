import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults, RunOptions } from "axe-core";
import type { Page } from "puppeteer";

declare const axe: { run: (context: Document, options: RunOptions) => Promise<AxeResults> };

const require = createRequire(import.meta.url);
const axeSource = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");

/** Gives the judge to every document that the page will open: to send it anew for each takes longer than some judgements. */
export async function judgeAtHand(page: Page): Promise<void> {
  await page.evaluateOnNewDocument(axeSource);
}

/** What breaks WCAG 2.2 AA on a page, at desktop and at phone width. */
export async function violations(page: Page): Promise<string[]> {
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(axeSource);
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
