import type { Page } from "puppeteer";
import { PlainError } from "../../plain-error.js";
import { forXml } from "../../study/reading/characters.js";
import type { PdfDescription } from "./accessible-pdf.js";
import { type PageNumbers, pageNumbers } from "./page-numbers.js";
import { putBody } from "./press-page.js";

/** What the page's own scripts offer; see browser/carry.ts and browser/pages.ts. */
declare global {
  var carryTotals: (sheet: { width: number; height: number }) => void;
  var putPages: (pages: ReadonlyArray<readonly [id: string, page: number]>) => void;
  var tooWide: (width: number) => { readonly section: string; readonly text: string } | undefined;
}

/** What a report has is wider than its paper, and would be cut. */
export class TooWideError extends PlainError {
  override readonly isToCorrect = true;
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
  // Laid out as it prints from the start: each other layout of a long report takes a tenth of its print.
  await press.emulateMediaType("print");
  await press.setViewport(sheets[settings.paper]);
  await putBody(press, body, forXml(settings.title));
  await setOnSheets(press, settings);
  const refers = body.includes(refersToPages);
  return refers ? printWithPages(press, settings) : printOnce(press, settings);
}

/** In one call: a frame that the browser draws between two takes it a tenth of a print. @throws TooWideError where the sheet would cut something */
async function setOnSheets(press: Page, settings: PrintSettings): Promise<void> {
  const wide = await press.evaluate(
    (foot, pages, sheet) => {
      globalThis.putFoot(foot);
      globalThis.putPages(pages);
      globalThis.carryTotals(sheet);
      return globalThis.tooWide(sheet.width);
    },
    footCss(settings),
    [...(lastPages.get(press)?.pages ?? [])],
    sheets[settings.paper],
  );
  if (wide) throw new TooWideError(wideText(wide));
}

const printOnce = (press: Page, { paper }: PrintSettings, tagged = true): Promise<Uint8Array> =>
  press.pdf({
    format: paper,
    printBackground: true,
    margin: { top: margin, bottom: margin, left: margin, right: margin },
    outline: tagged,
    tagged,
    // They are loaded when the press opens.
    waitForFonts: false,
    // The printer has a limit of its own, for drawing and printing together.
    timeout: 0,
  });

/** Mark of a place for a page number; see document/page-references.ts. */
const refersToPages = " data-page-of=";

/** Page numbers of the report that a press printed last: the next of its title has most often the same again. */
const lastPages = new WeakMap<Page, { readonly title: string; readonly pages: PageNumbers }>();
const mostPasses = 4;

/**
 * Prints until the page numbers are those of the print itself: once where they were right from the start. Those of
 * another report are found first in a print without tags and bookmarks, which takes half as long.
 */
async function printWithPages(press: Page, settings: PrintSettings): Promise<Uint8Array> {
  const { title } = settings;
  const fill = async (pages: PageNumbers) => {
    lastPages.set(press, { title, pages });
    await putPageNumbers(press, pages);
  };
  if (lastPages.get(press)?.title !== title) await fill(pageNumbers(await printOnce(press, settings, false)));
  for (let pass = 1; ; pass++) {
    const pdf = await printOnce(press, settings);
    const found = pageNumbers(pdf);
    const isRight = [...found].every(([id, page]) => lastPages.get(press)?.pages.get(id) === page);
    if (isRight) return pdf;
    if (pass === mostPasses) throw new Error("page numbers differ from print to print");
    await fill(found);
  }
}

const putPageNumbers = (press: Page, pages: PageNumbers): Promise<void> =>
  press.evaluate((entries) => globalThis.putPages(entries), [...pages]);

const margin = "18mm";

/** CSS pixels of a sheet within its margins; see `margin`. */
const sheets = { letter: { width: 680, height: 920 }, a4: { width: 658, height: 986 } };

const wideText = ({ section, text }: { readonly section: string; readonly text: string }) =>
  `The report was not printed: in “${section}”, what begins with “${text}” is wider than the paper and would be cut. Shorten that name or text in the study, or break it with a space, and print again.`;

/** What a report's tags need to know of it; see accessible-pdf.ts. */
export const descriptionOf = (body: string, { title }: PrintSettings): PdfDescription => ({
  title,
  targets: new Map([...linesOfContents(body), ...captionsOf(body)]),
});

/** Texts of the links to sections by the ids of these; see views/partials/board-contents.hbs. */
const linesOfContents = (body: string) =>
  idsWithText(body, /<p[^>]*><a href="#([^"]*)">([^<]*)<\/a> <span data/g);

/** Captions of tables by their ids; see views/partials/table.hbs. */
const captionsOf = (body: string) =>
  idsWithText(body, /<caption id="([^"]*)-caption">([^<]*)/g).map(
    ([id, text]) => [id, `Table: ${text}`] as const,
  );

const idsWithText = (body: string, pattern: RegExp) =>
  [...body.matchAll(pattern)].map(([, id = "", text = ""]) => [id, unescaped(text)] as const);

/** What the views escape, as it is read. */
const unescaped = (text: string) =>
  text.replace(/&(amp|lt|gt|quot|#x27|#x60|#x3D);/g, (_, name: keyof typeof escaped) => escaped[name]);

const escaped = { amp: "&", lt: "<", gt: ">", quot: '"', "#x27": "'", "#x60": "`", "#x3D": "=" } as const;

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
