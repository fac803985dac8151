import type { Page } from "puppeteer";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Bench, openBench } from "./bench.js";

let bench: Bench;
let own = "";
let page: Page;
const complaints: string[] = [];

beforeAll(async () => {
  bench = await openBench();
  page = await bench.visitor();
  page.on("console", (message) => {
    if (message.type() === "error" && !/status of 4\d\d/.test(message.text()))
      complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(String(error)));
  own = bench.shelf.copy("example-ninemoss", "Ada").id;
});

afterAll(() => bench.close());

/** Pages with scripts, charts, pictures and forms; OWN stands for a study that can be changed. */
const pages = [
  "/",
  "/sign-in",
  "/verify",
  "/api",
  "/studies/new",
  "/compare?left=example-ninemoss&right=example-ninemoss",
  "/studies/OWN",
  "/studies/OWN/report",
  "/studies/OWN/assumptions",
  "/studies/OWN/assumptions/cleaning.rack.visit",
  "/studies/OWN/revisions",
  "/studies/OWN/issues",
  "/studies/OWN/edit/names",
  "/studies/OWN/edit/levels",
  "/studies/OWN/edit/structures/0",
  "/studies/OWN/structures/table",
  "/studies/OWN/odds",
];

describe("the policy for pages", () => {
  it.each(pages)("%s keeps it: the browser refuses nothing and complains of nothing", async (path) => {
    complaints.splice(0);
    await page.goto(bench.base + path.replace("OWN", own), { waitUntil: "load" });
    expect(complaints).toEqual([]);
  });

  it("is in force: a script that got into a page does not run", async () => {
    await page.goto(`${bench.base}/sign-in`);
    const refused = await page.evaluate(
      () =>
        new Promise<string>((resolve) => {
          document.addEventListener("securitypolicyviolation", (event) => resolve(event.effectiveDirective));
          const script = document.createElement("script");
          script.textContent = "document.title = 'run'";
          document.body.append(script);
        }),
    );
    expect(refused).toBe("script-src-elem");
    expect(await page.title()).not.toBe("run");
  });
});
