import { accessSync, constants } from "node:fs";
import { delimiter, join } from "node:path";
import type { Browser, LaunchOptions } from "puppeteer";
import { PlainError } from "../../plain-error.js";

/** No browser for printing: for the operator. */
export class BrowserError extends PlainError {}

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
export async function findBrowser(): Promise<string | undefined> {
  const named = process.env.PUPPETEER_EXECUTABLE_PATH;
  const found = [...(named ? [named] : []), ...inFolders(names), ...usualPlaces].find(isExecutable);
  if (found) return found;
  const downloaded = (await printingLibrary()).executablePath({ headless: "shell" });
  return isExecutable(downloaded) ? downloaded : undefined;
}

/** Loaded when first needed: it takes longer than a comparison, which prints nothing. */
const printingLibrary = async () => (await import("puppeteer")).default;

/** Where programs may be on the search path. */
function inFolders(programs: readonly string[]): string[] {
  const folders = (process.env.PATH ?? "").split(delimiter);
  return programs.flatMap((name) => folders.map((folder) => join(folder, name)));
}

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

export interface LaunchSettings {
  /** Is not ended by the signals that ask this process to stop: for who closes it himself. */
  readonly outlivesSignals: boolean;
  /** How much its processes stand back for others on Linux, from 0 to 19. */
  readonly niceness: number;
}

const alone: LaunchSettings = { outlivesSignals: false, niceness: 0 };

/** Beside a server's pages, which come before what is printed. */
export const besidePages: LaunchSettings = { outlivesSignals: true, niceness: 10 };

/**
 * Starts the printing browser. It is sandboxed unless run as root, where the sandbox cannot work.
 * @throws BrowserError
 */
export async function launchBrowser({ outlivesSignals, niceness } = alone): Promise<Browser> {
  const executablePath = await findBrowser();
  if (!executablePath) {
    throw new BrowserError(
      'No browser for printing was found. Run "npm run prepare-browser", or set PUPPETEER_EXECUTABLE_PATH to a Chromium or Chrome.',
    );
  }
  const handlesSignals = !outlivesSignals;
  const library = await printingLibrary();
  const launched = library.launch({
    ...startOf(executablePath, niceness, library),
    handleSIGINT: handlesSignals,
    handleSIGTERM: handlesSignals,
    handleSIGHUP: handlesSignals,
  });
  return launched.catch((error: unknown) => {
    throw new BrowserError(
      `The browser for printing, ${executablePath}, could not be started. Start it by hand to see what it lacks, or set PUPPETEER_EXECUTABLE_PATH to another one.`,
      { cause: error },
    );
  });
}

/** All its processes take their priority from the program that starts it: it cannot be set for them later. */
function startOf(
  executablePath: string,
  niceness: number,
  library: Awaited<ReturnType<typeof printingLibrary>>,
): LaunchOptions {
  const isRoot = process.getuid?.() === 0;
  const args = [...(isRoot ? ["--no-sandbox"] : []), ...usualArguments];
  const nice = process.platform === "linux" && niceness > 0 ? inFolders(["nice"]).find(isExecutable) : "";
  if (!nice) return { executablePath, args };
  return {
    executablePath: nice,
    args: ["-n", String(niceness), executablePath, ...library.defaultArgs({ args })],
    ignoreDefaultArgs: true,
  };
}

const usualArguments = [
  "--disable-gpu",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--no-first-run",
  // It knows the address of nothing but this machine.
  "--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1",
  "--font-render-hinting=none",
];
