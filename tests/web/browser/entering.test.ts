import type { HTTPRequest } from "puppeteer";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { patience } from "../../patience.js";
import { type Bench, fill, openBench, text } from "./bench.js";
import { saveState, visit } from "./waiting.js";

let bench: Bench;
let study = "";

beforeAll(async () => {
  bench = await openBench();
  study = bench.studies.copy("example-sorrel-bend", "Ada").id;
});
afterAll(() => bench.close());

const textOf = () => bench.studies.find(study)?.text ?? "";

describe("what is entered in a browser", () => {
  it("is converted with its unit, and a press says that the unit was wrong instead", async () => {
    const page = await bench.visitor();
    await visit(page, `${bench.base}/studies/${study}/edit/lake`);
    const depth = "#f-lake-thermoclineDepth";
    const value = () => page.$eval(depth, (input) => (input as HTMLInputElement).value);
    const before = await value();
    await page.select('[name="lake/thermoclineDepth#unit"]', "m");
    await saveState(page, "Saved");
    await page.waitForFunction(
      (id, old) => {
        const input = document.querySelector(id);
        return input instanceof HTMLInputElement && input.value !== old;
      },
      {},
      depth,
      before,
    );
    // A foot is 0.3048 m.
    expect(Number(await value())).toBeCloseTo(Number(before) * 0.3048, 6);
    await page.click("#save-state button");
    await page.waitForFunction(() => !document.querySelector("#save-state button"));
    await saveState(page, "Saved");
    expect(textOf()).toContain(`thermoclineDepth: "${before} m"`);
    await page.close();
  });

  it("fills twelve months from twelve pasted cells, and says so", async () => {
    const page = await bench.visitor();
    await visit(page, `${bench.base}/studies/${study}/edit/lake`);
    await page.$eval("#f-lake-humidity-jan", (input) => {
      const cells = new DataTransfer();
      cells.setData("text", Array.from({ length: 12 }, (_, index) => 41 + index).join("\t"));
      input.dispatchEvent(
        new ClipboardEvent("paste", { clipboardData: cells, bubbles: true, cancelable: true }),
      );
    });
    await saveState(page, "Saved");
    const told = await page.$eval("#paste-state", ({ textContent }) => textContent);
    expect(told).toContain("12 months filled");
    expect(textOf()).toContain("dec: 52 %");
    expect(textOf()).toContain("jan: 41 %");
    await page.close();
  });

  it("leaves a month as it is beside an empty cell, and moves no later one into it", async () => {
    const page = await bench.visitor();
    await visit(page, `${bench.base}/studies/${study}/edit/lake`);
    await page.$eval("#f-lake-humidity-jan", (input) => {
      const cells = new DataTransfer();
      cells.setData("text", "\t62\t\t64\r\n");
      input.dispatchEvent(
        new ClipboardEvent("paste", { clipboardData: cells, bubbles: true, cancelable: true }),
      );
    });
    await saveState(page, "Saved");
    const told = await page.$eval("#paste-state", ({ textContent }) => textContent);
    expect(told).toBe("2 months filled from 4 cells. Months beside an empty cell stay as they were: 2.");
    expect(textOf()).toMatch(/jan: 41 %, feb: 62 %, mar: 43 %, apr: 64 %/);
    await page.close();
  });
});

describe("the balance in view", () => {
  it("stays that of what was typed last, where a save of something before it ends later", async () => {
    const page = await bench.visitor();
    await visit(page, `${bench.base}/studies/${study}/edit/boats`);
    const saves: HTTPRequest[] = [];
    await page.setRequestInterception(true);
    page.on("request", (request) => {
      const isSave = request.method() === "POST" && !request.url().endsWith("?try");
      if (isSave) saves.push(request);
      else void request.continue();
    });
    const moved = async (before: string) => {
      const isNew = (old: string) =>
        document.querySelector("#balance")?.textContent?.replace(/\s+/g, " ").trim() !== old;
      await page.waitForFunction(isNew, {}, before);
      return text(page, "#balance");
    };
    const kept = await text(page, "#balance");
    await fill(page, { "boats/launches/jul": "1" });
    const first = await moved(kept);
    await page.keyboard.press("Tab");
    await vi.waitUntil(() => saves.length > 0, { timeout: patience });
    await fill(page, { "boats/launches/aug": "99000" });
    const last = await moved(first);
    await saves[0]?.continue();
    await saveState(page, "Saved");
    expect(await text(page, "#balance")).toBe(last);
    await page.close();
  });
});
