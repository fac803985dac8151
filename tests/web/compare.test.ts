import type { Server } from "node:http";
import type { AddressInfo } from "node:net";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { storeConnection } from "../../src/store/connection.js";
import { studyStore } from "../../src/store/studies.js";
import { createApp } from "../../src/web/app.js";
import { oddsDesk, usualDesk } from "../../src/web/odds-desk.js";
import { type StudyShelf, studyShelf } from "../../src/web/study-shelf.js";
import { assumptions } from "../report/runs.js";
import { editedText } from "../study/example.js";
import { issuingIn } from "./issuing.js";

const connection = storeConnection(":memory:");
let shelf: StudyShelf;
let server: Server;
let base = "";
let id = "";

const by = (author: string, note: string) => ({ author, note, origin: "form" }) as const;
const first = editedText([["study.name", "Our lake"]], "ninemoss");
const second = editedText(
  [
    ["study.name", "Our lake"],
    ["structures[lake-duties].items[0].cost", "€9,000/yr"],
  ],
  "ninemoss",
);

beforeAll(async () => {
  shelf = studyShelf(studyStore(connection), assumptions, () => new Date("2026-01-02T03:04:05Z"));
  ({ id } = shelf.create(first, by("Ida Marsh", "")));
  shelf.save(id, 1, second, by("J. Okafor", "duties as quoted"));
  const printer = {
    warm: () => undefined,
    print: () => Promise.reject(new Error("no")),
    draw: async () => [],
    close: async () => {},
  };
  const desk = oddsDesk({ ...usualDesk, draw: () => Promise.reject(new Error("not drawn here")) });
  server = createApp({ issuing: issuingIn(), shelf, printer, desk, report: () => undefined }).listen(
    0,
    "127.0.0.1",
  );
  await new Promise((resolve) => server.once("listening", resolve));
  base = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
});

afterAll(async () => {
  await new Promise((resolve) => server.close(resolve));
  connection.close();
});

const get = (path: string) => fetch(base + path);
const page = async (path: string) => (await get(path)).text();

describe("comparing", () => {
  it("offers all studies and, of those chosen, their revisions", async () => {
    const text = await page(`/compare?left=${id}`);
    expect(text).toContain("Ninemoss Lake");
    expect(text).toContain(`<option value="${id}" selected>`);
    expect(text).toContain(`<option value="${id}@1">`);
    expect(text).toContain("revision 2, 2026-01-02: duties as quoted");
  });

  it("tells as JSON what went in, what came out, and what explains it: all by the one change", async () => {
    const found = (await (await get(`/compare.json?left=${id}@1&right=${id}`)).json()) as {
      left: object;
      right: object;
      inputs: object[];
      results: { figure: string; id: string; difference: number }[];
      explanation: { parts: { inputs: string[]; infestationInCents: number }[] };
    };
    expect(found.left).toEqual({ id, revision: 1, name: "Our lake" });
    expect(found.right).toMatchObject({ revision: 2 });
    expect(found.inputs).toMatchObject([{ left: "€6,000/yr", right: "€9,000/yr" }]);
    const added = found.results.find((each) => each.id === "none" && each.figure === "infestation");
    const [part] = found.explanation.parts;
    expect(part?.inputs).toEqual(["structures/lake-duties/items/Monitoring after infestation/cost"]);
    expect(part?.infestationInCents).toBeCloseTo((added?.difference ?? 0) * 100, -1);
  });

  it("shows the same as a page once it is worked out, with a chart and the table behind it", async () => {
    await get(`/compare.json?left=${id}@1&right=${id}@2`);
    const text = await page(`/compare?left=${id}@1&right=${id}@2`);
    expect(text).toContain("Revision 1 beside Revision 2");
    expect(text).toContain("€9,000/yr");
    expect(text).toContain("1 input that moves figures differs");
    expect(text).toMatch(/<figcaption>The net benefit of “Staffed summer checks” rises by €\d/);
    expect(text).toContain('<table id="table-explained"');
    expect(text).not.toContain("http-equiv");
  });

  it("says plainly what two studies in different currencies cannot tell", async () => {
    const text = await page(`/compare?left=${id}&right=example-sorrel-bend`);
    expect(text).toContain("different currencies, EUR and USD");
    expect(text).not.toContain("table-explained");
  });

  it("knows no study or revision that is not kept", async () => {
    expect((await get(`/compare?left=${id}@7&right=${id}`)).status).toBe(404);
    expect((await get(`/compare?left=nothing&right=${id}`)).status).toBe(404);
    expect((await get("/compare.json")).status).toBe(404);
  });
});

describe("revisions", () => {
  it("are listed with time, author and note, each to be seen and compared with the one before", async () => {
    const text = await page(`/studies/${id}/revisions`);
    expect(text).toContain("Ida Marsh");
    expect(text).toContain("2026-01-02 03:04");
    expect(text).toContain("duties as quoted");
    expect(text).toContain(`/compare?left&#x3D;${id}@1&amp;right&#x3D;${id}@2`);
    expect(text).toContain(`formaction="/studies/${id}/revisions/1/restore"`);
  });

  it("show what came out of them", async () => {
    const [before, after] = await Promise.all(
      [1, 2].map((number) => page(`/studies/${id}/revisions/${number}`)),
    );
    expect(before).toContain("Revision 1, saved");
    expect(after).toContain("Revision 2, saved");
    expect(before).not.toBe(after);
    expect((await get(`/studies/${id}/revisions/1/report`)).status).toBe(200);
    expect((await get(`/studies/${id}/revisions/9`)).status).toBe(404);
  });

  it("are restored by the page's own form as a new revision", async () => {
    const response = await fetch(`${base}/studies/${id}/revisions/1/restore`, {
      method: "POST",
      body: new URLSearchParams({ expected: "2", author: "Ida Marsh" }),
      redirect: "manual",
    });
    expect(response.status).toBe(303);
    expect(shelf.find(id)).toMatchObject({ revision: 3, text: first, author: "Ida Marsh" });
  });

  it("of an example are one, and nothing is to be restored", async () => {
    const text = await page("/studies/example-ninemoss/revisions");
    expect(text).not.toContain("formaction");
    expect(text).toContain("An example has one revision");
  });
});
