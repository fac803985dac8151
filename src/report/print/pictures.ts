import type { ElementHandle, Page } from "puppeteer";
import { putBody } from "./press-page.js";

/** A chart of the report by itself. */
export interface Picture {
  /** Of the chart in the report, for a file name: "yearly". */
  readonly name: string;
  /** States the finding. */
  readonly title: string;
  /** What a reader who cannot see it should know. */
  readonly alternative: string;
  readonly svg: string;
  readonly png: Uint8Array;
}

/** What the press's own script offers; see browser/lone-pictures.ts. */
declare global {
  var lonePictures: () => Array<Omit<Picture, "png">>;
  var putPictures: (svgs: readonly string[]) => void;
}

/** Dots of a PNG for one pixel of a page: 384 to the inch at the size of the report. */
const dotsPerPixel = 4;

/**
 * The charts of a report, drawn on a press and taken out one by one.
 * @param body from `renderReportBody`
 */
export async function drawPictures(press: Page, body: string, title: string): Promise<Picture[]> {
  await putBody(press, body, title);
  const drawn = await press.evaluate(() => globalThis.lonePictures());
  const before = press.viewport();
  await press.setViewport({ width: 900, height: 900, deviceScaleFactor: dotsPerPixel });
  await press.evaluate(
    (list) => globalThis.putPictures(list),
    drawn.map(({ svg }) => svg),
  );
  const frames = await press.$$(".lone-picture");
  const pictures: Picture[] = [];
  for (const [index, picture] of drawn.entries()) {
    pictures.push({ ...picture, png: await pngOf(frames[index], picture.name) });
  }
  await press.setViewport(before);
  return pictures;
}

async function pngOf(frame: ElementHandle | undefined, name: string): Promise<Uint8Array> {
  if (!frame) throw new Error(`the picture ${name} was not drawn`);
  return frame.screenshot({ type: "png" });
}
