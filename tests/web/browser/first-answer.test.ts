import type { Page } from "puppeteer";
import { extractText, getDocumentProxy } from "unpdf";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Bench, fill, openBench, press, shownIn } from "./bench.js";
import { visit } from "./waiting.js";

let bench: Bench;
beforeAll(async () => {
  bench = await openBench();
});
afterAll(() => bench.close());

/** How long a person takes, as the project reckons it: by hand, for want of somebody to watch. */
const seconds = { field: 2, choice: 4, word: 60 / 200 };

/** Somebody who reads every page from top to bottom, types and chooses. */
function person(page: Page) {
  const done = { inputs: 0, seconds: 0, words: 0 };
  const choose = () => {
    done.inputs += 1;
    done.seconds += seconds.choice;
  };
  return {
    done,
    read: async () => {
      const words = await page.$eval("main", (main) => {
        const read = main.cloneNode(true) as HTMLElement;
        // Pictures and tables are looked over, what is folded stays so, and nobody sees a chart’s data.
        const lookedOver =
          "option, script, .unseen, svg, table, .picture > :not(.picture-title, .note), details:not([open]) > :not(summary)";
        for (const skipped of read.querySelectorAll(lookedOver)) skipped.remove();
        return (read.textContent ?? "").trim().split(/\s+/).length;
      });
      done.words += words;
      done.seconds += words * seconds.word;
    },
    type: async (values: Readonly<Record<string, string>>) => {
      await fill(page, values);
      const count = Object.keys(values).length;
      done.inputs += count;
      done.seconds += count * seconds.field;
    },
    choose: async (values: Readonly<Record<string, string>>) => {
      await fill(page, values);
      Object.keys(values).forEach(choose);
    },
    press: async (selector: string) => {
      await press(page, selector);
      choose();
    },
    choose1: choose,
  };
}

describe("a program manager without a manual", () => {
  it("comes from the start page to a printed board's part with at most 60 inputs, in less than ten minutes", async () => {
    const page = await bench.visitor();
    const { done, read, type, choose, press: go, choose1 } = person(page);
    await visit(page, bench.base);
    await go('a[href="/start"]');
    await read();
    await type({
      ...{ name: "Sorrel Bend Reservoir", place: "Idaho", summerLevel: "2136", winterLevel: "2100" },
      ...{ area: "5000", depth: "76", warmestMonth: "76" },
      ...{ "intakes/0/flow": "66", "intakes/0/pipe": "60", "intakes/0/depth": "50" },
    });
    await choose({ hardness: "hard", "intakes/0/use": "town" });
    await go('button[value="more:intakes"]');
    await type({ "intakes/1/flow": "150", "intakes/1/depth": "27" });
    await choose({ "intakes/1/use": "irrigation" });
    await type({
      "plant/power": "44 MW",
      "plant/head": "240",
      "plant/units": "2",
      "docks/area": "36000",
      ramps: "3",
    });
    await go('form button[value="next"]:not(.unseen)');
    await read();
    await type({ launches: "26600", fromAway: "54", nearestInfested: "8 h" });
    await choose({
      "wanted/from": "mar",
      "wanted/until": "oct",
      "inForce/from": "apr",
      "inForce/until": "sep",
    });
    await type({ "wanted/hours": "12", "wanted/stations": "1", "wanted/cost": "154,000" });
    await type({ "inForce/hours": "5", "inForce/cost": "99,000", horizon: "30", author: "Ada" });
    await go('button[value="finish"]');
    await read();
    await go('a[href$="/report"]');
    const boardPart = await page.$eval('a[href*="part=board"]', (link) => (link as HTMLAnchorElement).href);
    choose1();
    const response = await fetch(boardPart);
    const document = await getDocumentProxy(new Uint8Array(await response.arrayBuffer()));
    const { text } = await extractText(document);
    expect(text[0]).toContain("Sorrel Bend Reservoir");
    expect(done.inputs).toBeLessThanOrEqual(60);
    expect(done.seconds).toBeLessThan(600);
    expect(bench.faults).toEqual([]);
  });

  it("comes back to what was typed, after a page that was left before it was sent", async () => {
    const page = await bench.visitor();
    await visit(page, `${bench.base}/start`);
    await fill(page, { name: "Long Lake", summerLevel: "1000", winterLevel: "1010", ramps: "2" });
    await page.keyboard.press("Tab");
    await page.waitForFunction(() =>
      document.querySelector("#balance .note")?.textContent?.includes("winter"),
    );
    await visit(page, `${bench.base}/help`);
    await Promise.all([page.waitForNavigation(), page.goBack()]);
    expect([await shownIn(page, "name"), await shownIn(page, "ramps")]).toEqual(["Long Lake", "2"]);
    expect(await page.$eval("#f-winterLevel-note", ({ textContent }) => textContent)).toContain(
      "Above the level in summer",
    );
    await page.close();
  });

  it("sees the list of what is wrong grow shorter as it is mended, until it is gone", async () => {
    const page = await bench.visitor();
    await visit(page, `${bench.base}/start?act=next&depth=deep&ramps=many`);
    const lines = () =>
      page.$$eval(".summary-of-errors li", (all) =>
        all.filter((each) => each.checkVisibility()).map((each) => each.textContent),
      );
    expect(await lines()).toHaveLength(2);
    await fill(page, { ramps: "2" });
    await page.waitForFunction(() => document.querySelector("#f-ramps[aria-invalid]") === null);
    expect(await page.$eval("#f-ramps-error", (each) => each.checkVisibility())).toBe(false);
    await fill(page, { depth: "low" });
    await page.waitForFunction(() => document.querySelector("#f-depth-error")?.textContent?.includes("low"));
    expect(await lines()).toEqual([expect.stringContaining('Greatest depth: Found "low"')]);
    await fill(page, { depth: "80" });
    await page.waitForFunction(() => !document.querySelector(".summary-of-errors")?.checkVisibility());
    expect(await lines()).toEqual([]);
    await page.close();
  });

  it("can do it on a screen 360 pixels wide, where no page is wider than the screen", async () => {
    const page = await bench.visitor(360);
    for (const path of ["/start", "/start?screen=2&intakes%2F0%2Fuse=town"]) {
      await visit(page, bench.base + path);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    }
  });
});
