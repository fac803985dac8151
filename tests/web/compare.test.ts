import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { editedText } from "../study/example.js";
import { starting } from "./serving.js";

let web: Awaited<ReturnType<typeof starting>>;
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
  web = await starting();
  ({ id } = web.studies.create(first, by("Ida Marsh", "")));
  web.studies.save(id, 1, second, by("J. Okafor", "duties as quoted"));
});
afterAll(() => web.close());

const pageAt = async (path: string) => (await web.ask(path)).text();
const post = (path: string, fields: Record<string, string>) =>
  web.ask(path, { method: "POST", body: new URLSearchParams(fields) });

describe("comparing", () => {
  it("offers all studies and, of those chosen, their revisions", async () => {
    const text = await pageAt(`/compare?left=${id}`);
    expect(text).toContain("Ninemoss Lake");
    expect(text).toContain(`<option value="${id}" selected>`);
    expect(text).toContain(`<option value="${id}@1">`);
    expect(text).toContain("revision 2, 2026-01-02: duties as quoted");
  });

  it("tells as JSON what went in, what came out, and what explains it: all by the one change", async () => {
    const found = (await (await web.ask(`/compare.json?left=${id}@1&right=${id}`)).json()) as {
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
    // No time passes: a busy machine may take longer than the page waits.
    vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
    const text = await pageAt(`/compare?left=${id}@1&right=${id}@2`).finally(() => vi.useRealTimers());
    expect(text).toContain("Revision 1 beside Revision 2");
    expect(text).toContain("€9,000/yr");
    expect(text).toContain("1 input that moves figures differs");
    expect(text).toMatch(/<figcaption>The net benefit of “Staffed summer checks” rises by €\d/);
    expect(text).toContain('<table id="table-explained"');
    expect(text).not.toContain("data-awaits");
    expect(text).not.toContain("table-requested");
    expect(text).toMatch(/<details class="more" open><summary><h2>What went in/);
  });

  it("says plainly what two studies in different currencies cannot tell", async () => {
    const text = await pageAt(`/compare?left=${id}&right=example-sorrel-bend`);
    expect(text).toContain("different currencies, EUR and USD");
    expect(text).not.toContain("table-explained");
    // What each lake asks for stands first, and the hundred inputs that differ are folded away.
    expect(text).toContain('<table id="table-requested"');
    expect(text).toContain("What each study requests, at central values");
    expect(text).toContain("Ninemoss Lake and Sorrel Bend Reservoir are different lakes.");
    expect(text).toMatch(
      /table-parts[\s\S]*Damage per year, once established<\/td><td class="num">€[\d,]+<\/td><td class="num">\$[\d,]+<\/td><td class="num">–</,
    );
    expect(text).toMatch(/<details class="more"><summary><h2>What went in/);
  });

  it("begins with what each of two studies requests, before what explains the difference", async () => {
    const other = web.studies.create(
      editedText([["study.requestedOption", "signs"]], "ninemoss"),
      by("", ""),
    );
    vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
    const address = `/compare?left=${id}&right=${other.id}`;
    const text = await pageAt(address).finally(() => vi.useRealTimers());
    expect(text).toMatch(
      /table-requested[\s\S]*Signs and self-declaration[\s\S]*What explains the difference/,
    );
  });

  it("knows no study or revision that is not kept", async () => {
    expect((await web.ask(`/compare?left=${id}@7&right=${id}`)).status).toBe(404);
    expect((await web.ask(`/compare?left=nothing&right=${id}`)).status).toBe(404);
    expect((await web.ask("/compare.json")).status).toBe(404);
  });
});

describe("revisions", () => {
  it("are listed with time, author and note, each to be seen and compared with the one before", async () => {
    const text = await pageAt(`/studies/${id}/revisions`);
    expect(text).toContain("Ida Marsh");
    expect(text).toContain("2026-01-02 03:04");
    expect(text).toContain("duties as quoted");
    expect(text).toContain(`/compare?left&#x3D;${id}@1&amp;right&#x3D;${id}@2`);
    expect(text).toContain(`formaction="/studies/${id}/revisions/1/restore"`);
  });

  it("show what came out of them", async () => {
    const [before, after] = await Promise.all(
      [1, 2].map((number) => pageAt(`/studies/${id}/revisions/${number}`)),
    );
    expect(before).toContain("Revision 1, saved");
    expect(after).toContain("Revision 2, saved");
    expect(before).not.toBe(after);
    expect((await web.ask(`/studies/${id}/revisions/1/report`)).status).toBe(200);
    expect((await web.ask(`/studies/${id}/revisions/9`)).status).toBe(404);
  });

  it("are restored by the page's own form as a new revision", async () => {
    const response = await post(`/studies/${id}/revisions/1/restore`, {
      expected: "2",
      author: "Ida Marsh",
    });
    expect(response.status).toBe(303);
    expect(web.studies.find(id)).toMatchObject({ revision: 3, text: first, author: "Ida Marsh" });
  });

  it("of an example are one, and nothing is to be restored", async () => {
    const text = await pageAt("/studies/example-ninemoss/revisions");
    expect(text).not.toContain("formaction");
    expect(text).toContain("An example has one revision");
  });
});
