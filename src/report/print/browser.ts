import { accessSync, constants } from "node:fs";
import { delimiter, join } from "node:path";
import puppeteer, { type Browser } from "puppeteer";

/** No browser for printing: for the operator. */
export class BrowserError extends Error {}

/** The headless builds first: they start in half the time and print in two thirds of it. */
const names = [
  "chromium-headless-shell",
  "chrome-headless-shell",
  "chromium",
  "chromium-browser",
  "google-chrome-stable",
  "google-chrome",
  "chrome",
  "microsoft-edge",
];

const usualPlaces = [
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe",
];

/**
 * Path of an installed browser: PUPPETEER_EXECUTABLE_PATH, then the search path, the usual places, and what the
 * printing library downloaded.
 */
export function findBrowser(): string | undefined {
  const named = process.env.PUPPETEER_EXECUTABLE_PATH;
  const folders = (process.env.PATH ?? "").split(delimiter);
  const candidates = [
    ...(named ? [named] : []),
    ...names.flatMap((name) => folders.map((folder) => join(folder, name))),
    ...usualPlaces,
    puppeteer.executablePath({ headless: "shell" }),
  ];
  return candidates.find(isExecutable);
}

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * Starts the printing browser. It is sandboxed unless run as root, where the sandbox cannot work.
 * @param outlivesSignals does not end it with the signals that ask this process to stop: for who closes it himself
 * @throws BrowserError
 */
export async function launchBrowser(outlivesSignals = false): Promise<Browser> {
  const executablePath = findBrowser();
  if (!executablePath) {
    throw new BrowserError(
      'No browser for printing was found. Run "npm run prepare-browser", or set PUPPETEER_EXECUTABLE_PATH to a Chromium or Chrome.',
    );
  }
  const isRoot = process.getuid?.() === 0;
  const handlesSignals = !outlivesSignals;
  const launched = puppeteer.launch({
    executablePath,
    handleSIGINT: handlesSignals,
    handleSIGTERM: handlesSignals,
    handleSIGHUP: handlesSignals,
    args: [
      ...(isRoot ? ["--no-sandbox"] : []),
      "--disable-gpu",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
      "--no-first-run",
      // It knows the address of nothing but this machine.
      "--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1",
      "--font-render-hinting=none",
    ],
  });
  return launched.catch((error: unknown) => {
    throw new BrowserError(
      `The browser for printing, ${executablePath}, could not be started. Start it by hand to see what it lacks, or set PUPPETEER_EXECUTABLE_PATH to another one.`,
      { cause: error },
    );
  });
}
