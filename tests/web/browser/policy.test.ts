import type { Page } from "puppeteer";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Bench, openBench } from "./bench.js";
import { visit } from "./waiting.js";

let bench: Bench;
let own = "";

beforeAll(async () => {
  bench = await openBench();
  own = bench.studies.copy("example-ninemoss", "Ada").id;
});

afterAll(() => bench.close());

/** A visitor's page, and what his browser complains of. */
async function watched(): Promise<{ readonly page: Page; readonly complaints: readonly string[] }> {
  const page = await bench.visitor();
  const complaints: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error" && !/status of 4\d\d/.test(message.text()))
      complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(String(error)));
  return { page, complaints };
}

/** Pages with scripts, charts, pictures and forms; OWN stands for a study that can be changed. */
const pages = [
  "/",
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
  "/studies/OWN/chance",
  "/studies/OWN/odds",
];

describe("the policy for pages", () => {
  // One for all: each with fonts and styles of its own takes half as long again.
  let watching: Awaited<ReturnType<typeof watched>>;
  beforeAll(async () => {
    watching = await watched();
  });
  afterAll(() => watching.page.close());

  it.each(pages)("%s keeps it: the browser refuses nothing and complains of nothing", async (path) => {
    const { page, complaints } = watching;
    const before = complaints.length;
    const address = bench.base + path.replace("OWN", own);
    await visit(page, address);
    expect(page.url()).toBe(address);
    expect(complaints.slice(before)).toEqual([]);
  });

  it("is in force: a script that got into a page does not run", async () => {
    const page = await bench.visitor();
    await visit(page, bench.base);
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

  it("is kept by the page to sign in, which is shown once a key is set", async () => {
    await bench.lock();
    const { page, complaints } = await watched();
    await visit(page, bench.base);
    expect(new URL(page.url()).pathname).toBe("/sign-in");
    expect(complaints).toEqual([]);
  });
});
