import type { Page } from "puppeteer";
import { forXml } from "../../study/reading/characters.js";
import type { PdfDescription } from "./accessible-pdf.js";
import { putBody } from "./press-page.js";

/** What the page's own script offers; see browser/carry.ts. */
declare global {
  var carryTotals: (sheet: { width: number; height: number }) => void;
}

export interface PrintSettings {
  readonly title: string;
  readonly paper: "letter" | "a4";
  /** Which edition it is, for the footer: revision, and issue or draft. */
  readonly edition: string;
}

/**
 * Prints a report as PDF with page numbers and bookmarks. The page may load nothing: every request is refused.
 * @param body from `renderReportBody`
 */
export async function printPdf(press: Page, body: string, settings: PrintSettings): Promise<Uint8Array> {
  await press.evaluate((css) => globalThis.putFoot(css), footCss(settings));
  await putBody(press, body, forXml(settings.title));
  if (body.includes(carriesSums)) await carryOnPress(press, settings.paper);
  return press.pdf({
    format: settings.paper,
    printBackground: true,
    margin: { top: margin, bottom: margin, left: margin, right: margin },
    outline: true,
    tagged: true,
    // The printer has a limit of its own, for drawing and printing together.
    timeout: 0,
  });
}

const margin = "18mm";

/** CSS pixels of a sheet within its margins; see `margin`. */
const sheets = { letter: { width: 680, height: 920 }, a4: { width: 658, height: 986 } };

/** Mark of a table that may run over pages with sums to carry; see views/partials/table.hbs. */
const carriesSums = " data-carries=";

async function carryOnPress(press: Page, paper: PrintSettings["paper"]): Promise<void> {
  const sheet = sheets[paper];
  const before = press.viewport();
  await press.emulateMediaType("print");
  await press.setViewport(sheet);
  await press.evaluate((size) => globalThis.carryTotals(size), sheet);
  await press.setViewport(before);
  await press.emulateMediaType();
}

/** What a report's tags need to know of it; see accessible-pdf.ts. */
export const descriptionOf = (body: string, { title }: PrintSettings): PdfDescription => ({
  title,
  captions: captionsOf(body),
});

/** Captions of tables by their ids; see views/partials/table.hbs. */
const captionsOf = (body: string): Map<string, string> =>
  new Map(
    [...body.matchAll(/<caption id="([^"]*)-caption">([^<]*)/g)].map(([, id = "", text = ""]) => [id, text]),
  );

/** The foot of each sheet, in boxes of its margin so that it has the report's fonts. A name too long for the line is cut; the edition and the page are not. */
function footCss({ title, edition }: PrintSettings): string {
  return `@page {
    @bottom-left { content: ${cssText(title)}; width: 68%; overflow: hidden; text-overflow: ellipsis; }
    @bottom-right { content: ${cssText(`${edition} · page `)} counter(page) " of " counter(pages); width: 32%; }
  }`;
}

/** As a string of CSS: what could end it, and line breaks, are written by their numbers. */
const cssText = (text: string): string =>
  `"${forXml(text).replace(/[\\"<>\p{Cc}\u2028\u2029]/gu, (character) => `\\${character.codePointAt(0)?.toString(16)} `)}"`;
