import { randomBytes } from "node:crypto";
import Handlebars from "handlebars";
import type { Browser, HTTPRequest, Page } from "puppeteer";
import { renderPress } from "./html.js";

export interface PrintSettings {
  readonly title: string;
  readonly paper: "letter" | "a4";
  /** Which edition it is, for the footer: revision, and issue or draft. */
  readonly edition: string;
}

/** What the page's own script offers; see browser/draw-charts.ts. */
declare global {
  var loadFonts: () => Promise<void>;
  var putReport: (body: string, title: string) => void;
}

/** A page with style, fonts and scripts loaded, into which one report after another is put. */
export async function openPress(browser: Browser): Promise<Page> {
  const page = await browser.newPage();
  await page.setRequestInterception(true);
  page.on("request", (request) => {
    if (isOwnFont(request)) void request.continue();
    // Without content the page stays where it is; a refusal would put an error page in its place.
    else if (request.isNavigationRequest()) void request.respond({ status: 204 });
    else void request.abort();
  });
  await page.setContent(renderPress(randomBytes(16).toString("base64")), { waitUntil: "load" });
  await page.evaluate(() => globalThis.loadFonts());
  return page;
}

/** All that the page itself asks for: the faces in its style sheet. */
const isOwnFont = (request: HTTPRequest) =>
  request.resourceType() === "font" && request.url().startsWith("data:font/woff2;base64,");

/**
 * Prints a report as PDF with page numbers and bookmarks. The page may load nothing: every request is refused.
 * @param body from `renderReportBody`
 */
export async function printPdf(press: Page, body: string, settings: PrintSettings): Promise<Uint8Array> {
  await press.evaluate((text, title) => globalThis.putReport(text, title), body, settings.title);
  return press.pdf({
    format: settings.paper,
    printBackground: true,
    displayHeaderFooter: true,
    headerTemplate: "<span></span>",
    footerTemplate: footer(settings),
    margin: { top: "18mm", bottom: "18mm", left: "18mm", right: "18mm" },
    outline: true,
    tagged: true,
    // The printer has a limit of its own, for drawing and printing together.
    timeout: 0,
  });
}

/** A name too long for the line is cut; the edition and the page are not. */
function footer({ title, edition }: PrintSettings): string {
  const escaped = (text: string) => Handlebars.escapeExpression(text);
  return `<div style="width:100%;margin:0 18mm;font:8px sans-serif;color:#1d2b33;display:flex;gap:12px">
    <span style="flex:1;min-width:0;overflow:hidden;white-space:nowrap;text-overflow:ellipsis">${escaped(title)}</span>
    <span style="white-space:nowrap">${escaped(edition)}</span>
    <span style="white-space:nowrap">page <span class="pageNumber"></span> of <span class="totalPages"></span></span>
  </div>`;
}
