import { spawnSync } from "node:child_process";
import { pathToFileURL } from "node:url";
import { BrowserError, findBrowser } from "../report/print/browser.js";

/** Ways to get a browser, tried in order: the system's packages as root, then the printing library's own download. */
const installers: ReadonlyArray<{
  readonly needsRoot: boolean;
  readonly commands: readonly (readonly string[])[];
}> = [
  {
    needsRoot: true,
    commands: [
      ["apt-get", "update", "-qq"],
      [
        "apt-get",
        "install",
        "-y",
        "-qq",
        "--no-install-recommends",
        "chromium-headless-shell",
        "fonts-dejavu-core",
      ],
    ],
  },
  {
    needsRoot: true,
    commands: [
      ["apt-get", "install", "-y", "-qq", "--no-install-recommends", "chromium", "fonts-dejavu-core"],
    ],
  },
  { needsRoot: false, commands: [["npx", "puppeteer", "browsers", "install", "chrome-headless-shell"]] },
];

/** Finds a browser for printing or installs one. @throws BrowserError saying what to do by hand */
export async function prepareBrowser(print: (text: string) => void): Promise<void> {
  if (await findBrowser()) return;
  print("No browser for printing was found. Installing one.");
  for (const { needsRoot, commands } of installers) {
    if (needsRoot && process.getuid?.() !== 0) continue;
    const done = commands.every(([command = "", ...rest]) => run(command, rest));
    if (done && (await findBrowser())) return;
  }
  throw new BrowserError(
    "No browser for printing could be installed. Install Chromium or Chrome with your system's packages, or set PUPPETEER_EXECUTABLE_PATH.",
  );
}

function run(command: string, rest: readonly string[]): boolean {
  return (
    spawnSync(command, rest, {
      stdio: ["ignore", "ignore", "inherit"],
      env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    }).status === 0
  );
}

const isMain = process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href;
if (isMain) {
  try {
    await prepareBrowser(console.log);
  } catch (error) {
    if (!(error instanceof BrowserError)) throw error;
    console.error(error.message);
    process.exitCode = 1;
  }
}
