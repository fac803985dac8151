import { randomBytes } from "node:crypto";
import type { Browser, HTTPRequest, Page } from "puppeteer";
import { faceData, type OtherFace, otherFacesFor } from "../document/fallback-fonts.js";
import { renderPress } from "../document/render-page.js";

type FaceWithData = OtherFace & { readonly data: string };

/** What the page's own script offers; see browser/press.ts. */
declare global {
  var loadFonts: () => Promise<void>;
  var addFaces: (faces: readonly FaceWithData[]) => Promise<void>;
  var putFoot: (css: string) => void;
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

/** All that the page itself asks for: its faces. */
const isOwnFont = (request: HTTPRequest) =>
  request.resourceType() === "font" && request.url().startsWith("data:font/woff2;base64,");

/** Files of the faces that a press was given beside those of its style sheet; a report without their characters never meets them. */
const facesOf = new WeakMap<Page, Set<string>>();

/**
 * Puts a report on a press, with the faces that its characters need.
 * @param body from `renderReportBody`
 */
export async function putBody(press: Page, body: string, title: string): Promise<void> {
  const known = facesOf.get(press) ?? new Set();
  facesOf.set(press, known);
  const lacking = otherFacesFor(title + body).filter(({ file }) => !known.has(file));
  if (lacking.length > 0) {
    await press.evaluate(
      (faces) => globalThis.addFaces(faces),
      lacking.map((face) => ({ ...face, data: faceData(face) })),
    );
    for (const { file } of lacking) known.add(file);
  }
  await press.evaluate((text, name) => globalThis.putReport(text, name), body, title);
}
