import type { ElementHandle, Page } from "puppeteer";
import { putBody } from "./press-page.js";

/** A chart or a picture of the report by itself. */
export interface Picture {
  /** Of the picture in the report, for a file name: "yearly". */
  readonly name: string;
  /** States the finding. */
  readonly title: string;
  /** What a reader who cannot see it should know. */
  readonly alternative: string;
  /** Absent where names beside the picture are text of the page, which wraps. */
  readonly svg?: string | undefined;
  readonly png: Uint8Array;
}

/** What the press's own script offers; see browser/lone-pictures.ts. */
declare global {
  var lonePictures: () => Array<Omit<Picture, "png"> & { svg: string }>;
  var putPictures: (svgs: readonly string[]) => void;
}

/** Dots of a PNG for one pixel of a page: 384 to the inch at the size of the report. */
const dotsPerPixel = 4;

/**
 * The charts of a report and the pictures of its board's part, drawn on a press and taken out one by one.
 * @param body from `renderReportBody`
 */
export async function drawPictures(press: Page, body: string, title: string): Promise<Picture[]> {
  await press.emulateMediaType();
  await putBody(press, body, title);
  const drawn = await press.evaluate(() => globalThis.lonePictures());
  const before = press.viewport();
  await roomFor(press, pagePicture);
  const ofPage = await pagePictures(press);
  await press.evaluate(
    (list) => globalThis.putPictures(list),
    drawn.map(({ svg }) => svg),
  );
  await roomFor(press, lonePicture);
  const frames = await press.$$(lonePicture);
  const pictures: Picture[] = [];
  for (const [index, picture] of drawn.entries()) {
    pictures.push({ ...picture, png: await pngOf(frames[index], picture.name) });
  }
  await press.setViewport(before);
  return [...pictures, ...ofPage];
}

const [pagePicture, lonePicture] = ["[data-picture]", ".lone-picture"];

/** A window that holds the highest of them whole: for what reaches beyond it the browser lays all out again. */
async function roomFor(press: Page, selector: string): Promise<void> {
  const sheet = { width: 900, height: 900, deviceScaleFactor: dotsPerPixel };
  await press.setViewport(sheet);
  const heights = await press.$$eval(selector, (frames) =>
    frames.map((frame) => Math.ceil(frame.getBoundingClientRect().height) + 1),
  );
  const height = Math.max(sheet.height, ...heights);
  if (height > sheet.height) await press.setViewport({ ...sheet, height });
}

/** The pictures of the board's part, with their titles, names and notes as the page has them. */
async function pagePictures(press: Page): Promise<Picture[]> {
  const pictures: Picture[] = [];
  for (const frame of await press.$$(pagePicture)) {
    const told = await frame.evaluate(tellPicture);
    pictures.push({ ...told, png: await pngOf(frame, told.name) });
  }
  return pictures;
}

/** Runs on the press. Alone, a picture names an appendix without the page on which it would be. */
function tellPicture(element: Element): Omit<Picture, "svg" | "png"> {
  for (const place of element.querySelectorAll("[data-page-of]")) {
    const before = place.previousSibling;
    if (before) before.textContent = before.textContent?.replace(/, page\s*$/, "") ?? "";
    place.remove();
  }
  element.setAttribute("style", "background: var(--sheet)");
  return {
    name: element.getAttribute("data-picture") ?? "",
    title: element.querySelector(".picture-title")?.textContent ?? "",
    alternative: element.querySelector("[aria-label]")?.getAttribute("aria-label") ?? "",
  };
}

async function pngOf(frame: ElementHandle | undefined, name: string): Promise<Uint8Array> {
  if (!frame) throw new Error(`the picture ${name} was not drawn`);
  return frame.screenshot({ type: "png", captureBeyondViewport: false });
}
