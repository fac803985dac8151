import { describe, expect, it } from "vitest";
import { programVersion } from "../../src/assumptions/version.js";
import { BrowserError } from "../../src/report/print/browser.js";
import { onePagePrinter } from "../issue/issued.js";
import { locked } from "./access/locked.js";
import { serving } from "./serving.js";

describe("the page of the method", () => {
  it("is linked from the list, has its PDF beside it, and names its version", async () => {
    const { ask } = await serving();
    expect(await (await ask("/")).text()).toContain('href="/method"');
    const response = await ask("/method");
    expect(response.headers.get("content-type")).toContain("text/html");
    const page = await response.text();
    expect(page).toContain(`Method of version ${programVersion()}`);
    expect(page).toContain('href="/method.pdf"');
  });

  it("is printed once for all who ask, and again where a print failed", async () => {
    const bodies: string[] = [];
    const print = async (body: string) => {
      bodies.push(body);
      if (bodies.length === 1) throw new BrowserError("no browser");
      return new Uint8Array([37, 80, 68, 70]);
    };
    const { ask } = await serving(":memory:", {}, { printer: { ...onePagePrinter, print } });
    expect((await ask("/method.pdf")).status).toBe(503);
    expect((await ask("/method.pdf")).headers.get("content-type")).toContain("application/pdf");
    expect(await (await ask("/method.pdf")).text()).toBe("%PDF");
    expect(bodies).toHaveLength(2);
  });

  it("is printed with the sheets of a study, which has to be complete", async () => {
    const bodies: string[] = [];
    const print = async (body: string) => {
      bodies.push(body);
      return new Uint8Array();
    };
    const { ask, studies } = await serving(":memory:", {}, { printer: { ...onePagePrinter, print } });
    expect((await ask("/studies/example-ninemoss/method.pdf")).status).toBe(200);
    expect(bodies[0]).toContain('<h2 id="own-sheets">Sheets of ');
    const about = { author: "", note: "", origin: "upload" } as const;
    const { id } = studies.create("study: { name: Half }\n", about, "half.yaml");
    const unfinished = await ask(`/studies/${id}/method.pdf`);
    expect(unfinished.status).toBe(409);
    expect(await unfinished.text()).toContain("Not finished yet");
  });

  // As the page that verifies is: whoever is signed in, also for reading alone.
  it.each(["/method", "/method.pdf", "/studies/example-ninemoss/method.pdf"])(
    "%s is for those who are signed in, once a key is set",
    async (path) => {
      const place = await locked();
      for (const each of [path, "/verify"]) {
        const sent = await place.ask(each);
        expect([sent.status, sent.headers.get("location")]).toEqual([
          303,
          `/sign-in?next=${encodeURIComponent(each)}`,
        ]);
        const cookie = await place.in("Ben", place.keys.ben);
        expect((await place.ask(each, { headers: { cookie } })).status).toBe(200);
      }
    },
  );
});
