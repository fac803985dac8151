import Handlebars from "handlebars";
import type { Browser } from "puppeteer";

export interface PrintSettings {
  readonly title: string;
  readonly paper: "letter" | "a4";
}

const chartTimeout = 15_000;

/**
 * Prints a self-contained page as PDF with page numbers, bookmarks and tags. The page may load nothing: every
 * request is refused.
 */
export async function printPdf(browser: Browser, html: string, settings: PrintSettings): Promise<Uint8Array> {
  const page = await browser.newPage();
  try {
    await page.setRequestInterception(true);
    page.on("request", (request) => {
      void (request.url().startsWith("data:") ? request.continue() : request.abort());
    });
    await page.setContent(html, { waitUntil: "load" });
    await page.waitForFunction("document.documentElement.dataset.charts === 'drawn'", {
      timeout: chartTimeout,
    });
    return await page.pdf({
      format: settings.paper,
      printBackground: true,
      displayHeaderFooter: true,
      headerTemplate: "<span></span>",
      footerTemplate: footer(settings.title),
      margin: { top: "18mm", bottom: "18mm", left: "18mm", right: "18mm" },
      outline: true,
      tagged: true,
    });
  } finally {
    await page.close();
  }
}

function footer(title: string): string {
  return `<div style="width:100%;margin:0 18mm;font:8px sans-serif;color:#1d2b33;display:flex;justify-content:space-between">
    <span>${Handlebars.escapeExpression(title)} · planning estimate</span>
    <span>page <span class="pageNumber"></span> of <span class="totalPages"></span></span>
  </div>`;
}
