import type { Page } from "puppeteer";

/** Opens an address and waits for the whole page. */
export async function visit(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await whole(page);
}

/**
 * Waits for the page to be loaded and to await no answer of the server. One that does loads itself anew, and whoever goes
 * on meanwhile is taken to be where that leads.
 */
export async function whole(page: Page): Promise<void> {
  await page.waitForFunction(
    () => document.readyState === "complete" && document.querySelector("[data-awaits]") === null,
  );
}

/** Does what leads to another page, and waits for the whole of it. */
export async function leads(page: Page, act: () => Promise<unknown>): Promise<void> {
  await Promise.all([page.waitForNavigation(), act()]);
  await whole(page);
}

/** Waits until the page says that it keeps, or does not keep, what was entered. */
export async function saveState(page: Page, state: "Saved" | "Not saved"): Promise<void> {
  await page.waitForFunction(
    (words) => document.getElementById("save-state")?.textContent?.startsWith(words),
    {},
    state,
  );
}

/** Waits until everything typed on the page is kept by the server. */
export async function allSaved(page: Page): Promise<void> {
  await page.focus(".save-bar button");
  await page.keyboard.press("Enter");
  await page.waitForFunction(
    () =>
      document.getElementById("save-state")?.textContent?.startsWith("Saved, revision") &&
      localStorage.getItem(
        `ramp-and-rack:${document.querySelector<HTMLElement>("form[data-part]")?.dataset.part}`,
      ) === null,
  );
}
