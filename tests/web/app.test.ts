import { readFileSync } from "node:fs";
import type { Server } from "node:http";
import type { AddressInfo } from "node:net";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { askedRuns, usualRuns } from "../../src/app/runs.js";
import { studiesOf } from "../../src/app/studies.js";
import { examplesFolder } from "../../src/report/document/assets.js";
import { BrowserError } from "../../src/report/print/browser.js";
import type { Printer } from "../../src/report/print/printer.js";
import { storeConnection } from "../../src/store/connection.js";
import { studyStore } from "../../src/store/studies.js";
import { createApp } from "../../src/web/app.js";
import { assumptions } from "../report/runs.js";
import { inventedOdds } from "../trials/invented-odds.js";
import { accessIn } from "./access/entering.js";
import { answersInTest } from "./answering.js";
import { issuingIn } from "./issuing.js";
import { inventedSwings } from "./judging.js";

const example = readFileSync(join(examplesFolder, "ninemoss.yaml"), "utf8");
const own = example.replace("name: Ninemoss Lake, inspection program request", "name: Our lake");
const faults: unknown[] = [];
const connection = storeConnection(":memory:");
const store = studyStore(connection);
let printing: Printer["print"] = async () => new TextEncoder().encode("%PDF-stub");
let server: Server;
let base = "";

beforeAll(async () => {
  const studies = studiesOf(
    store,
    () => assumptions,
    () => new Date("2026-01-02T03:04:05Z"),
  );
  const printer: Printer = {
    warm: () => undefined,
    print: (html, settings) => printing(html, settings),
    draw: async () => [],
    close: async () => undefined,
  };
  const runs = askedRuns({ ...usualRuns, draw: inventedOdds });
  server = createApp({
    answers: answersInTest(),
    issuing: issuingIn(),
    access: accessIn(connection),
    studies,
    printer,
    runs,
    few: runs,
    search: () => Promise.reject(new Error("no search here")),
    judge: inventedSwings,
    report: (error) => faults.push(error),
  }).listen(0, "127.0.0.1");
  await new Promise((resolve) => server.once("listening", resolve));
  base = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
});

afterAll(async () => {
  await new Promise((resolve) => server.close(resolve));
  connection.close();
});

const get = (path: string) => fetch(base + path);

function upload(text: string): Promise<Response> {
  const body = new FormData();
  body.set("study", new Blob([text]), "our-lake.yaml");
  return fetch(`${base}/studies`, { method: "POST", body, redirect: "manual" });
}

describe("reading", () => {
  it("tells where the chance of a study comes from, with ways to its fields", async () => {
    const page = await get("/studies/example-ninemoss/chance");
    expect(page.status).toBe(200);
    const text = await page.text();
    expect(text).toContain("<h1>Where the chance comes from</h1>");
    expect(text).toContain('aria-current="page">Where the chance comes from</a>');
    expect(text).toContain('id="table-chance-regions"');
    expect(text).toContain('href="/studies/example-ninemoss/edit/boats"');
    expect((await get("/studies/none/chance")).status).toBe(404);
  });

  it("lists the examples", async () => {
    const page = await (await get("/")).text();
    expect(page).toContain("Sorrel Bend Reservoir");
    expect(page).toContain("Ninemoss Lake");
  });

  it("lists the answer of an example once its balance was asked for", async () => {
    await answersInTest().ask("balance", { text: example, fileName: "ninemoss.yaml" });
    const page = await (await get("/")).text();
    expect(page).toMatch(/Ninemoss Lake[^<]*<\/a> <span[^>]*>invented example\. [^<]+: damage avoided €/);
  });

  it.each(["", "/report"])("shows a study at %s", async (path) => {
    const response = await get(`/studies/example-ninemoss${path}`);
    expect(response.status).toBe(200);
    const page = await response.text();
    expect(page).toContain("costs more than it saves");
    expect(page).toContain("Compared with “Signs and self-declaration”, the current program");
    expect(page).toContain("Cost of one inspection");
    expect(page).toContain("nobody pays, so no fee can cover it");
  });

  it("gives the results as JSON with amounts that add up", async () => {
    const results = (await (await get("/studies/example-ninemoss/results.json")).json()) as {
      structures: { years: { amount: string; type: string }[][] }[];
      infestationByYear: string[];
    };
    const first = results.structures
      .flatMap(({ years }) => years[9] ?? [])
      .filter(({ type }) => type !== "apart");
    const sum = first.reduce((total, { amount }) => total + Number(amount), 0);
    expect(sum).toBeCloseTo(Number(results.infestationByYear[9]), 2);
  });

  it("gives the study file as it was written", async () => {
    expect(await (await get("/studies/example-ninemoss/study")).text()).toBe(example);
  });

  it("gives the report as PDF, and a way out if there is no browser", async () => {
    const response = await get("/studies/example-ninemoss/report.pdf");
    expect(response.headers.get("content-type")).toBe("application/pdf");
    printing = async () => {
      throw new BrowserError("No browser for printing was found.");
    };
    const refused = await get("/studies/example-ninemoss/report.pdf");
    expect(refused.status).toBe(503);
    expect(await refused.text()).toContain("No browser for printing was found.");
  });

  it("says so when there is no such study or page", async () => {
    expect((await get("/studies/none")).status).toBe(404);
    expect((await get("/elsewhere")).status).toBe(404);
  });

  it("hides the inside of a fault and reports it", async () => {
    printing = async () => {
      throw new Error("secret detail");
    };
    const response = await get("/studies/example-ninemoss/report.pdf");
    expect(response.status).toBe(500);
    expect(await response.text()).not.toContain("secret");
    expect(String(faults.at(-1))).toContain("secret detail");
  });
});

describe("uploading", () => {
  it("keeps a sound study and shows it; a second of the same name is another study", async () => {
    const first = await upload(own);
    expect(first.status).toBe(303);
    expect(first.headers.get("location")).toBe("/studies/our-lake");
    expect((await get("/studies/our-lake")).status).toBe(200);
    expect((await upload(own)).headers.get("location")).toBe("/studies/our-lake-2");
    expect(store.latest("our-lake")?.revision).toBe(1);
    expect(await (await get("/")).text()).toContain("revision 1, saved 2026-01-02");
  });

  it("refuses a wrong study with every place, and keeps nothing", async () => {
    const wrong = own
      .replace("species: quagga", "species: carp")
      .replace("diameter: 250 mm", "diameter: 250 kg");
    const response = await upload(wrong.replace("name: Our lake", "name: Wrong lake"));
    const page = await response.text();
    expect(response.status).toBe(400);
    expect(page).toContain("lake.species");
    expect(page).toContain("conduit.diameter");
    expect(page).not.toMatch(/at \w+ \(.*:\d+:\d+\)/);
    expect(store.latest("wrong-lake")).toBeUndefined();
  });

  it.each([
    ["an empty file", ""],
    ["broken YAML", "study: {name: [}"],
    ["20 MB", "a".repeat(20 * 1024 * 1024)],
  ])("refuses %s with a clear message", async (_what, text) => {
    const response = await upload(text);
    expect(response.status).toBe(400);
    expect(await response.text()).toMatch(/cannot be used yet|too large/);
  });

  it("refuses a form without a file", async () => {
    const response = await fetch(`${base}/studies`, { method: "POST", body: new FormData() });
    expect(response.status).toBe(400);
  });

  it("takes and refuses studies as JSON messages at the other address", async () => {
    const post = (body: string) => fetch(`${base}/api/studies`, { method: "POST", body });
    const kept = await post(own.replace("name: Our lake", "name: Sent lake"));
    expect(kept.status).toBe(201);
    expect(await kept.json()).toMatchObject({ id: "sent-lake", revision: 1 });
    const refused = await post("lake: 3");
    expect(refused.status).toBe(400);
    const { problems } = (await refused.json()) as { problems: { path: string }[] };
    expect(problems.map(({ path }) => path)).toContain("lake");
    expect((await post("a".repeat(3 * 1024 * 1024))).status).toBe(400);
  });
});
