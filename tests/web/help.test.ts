import { describe, expect, it } from "vitest";
import { structureKinds } from "../../src/model/structures/kinds.js";
import { glossary } from "../../src/report/words/glossary.js";
import { serving } from "./serving.js";

const plain = (html: string) => html.replaceAll("&#x27;", "'").replaceAll("&amp;", "&");

describe("the page of help", () => {
  it("is one click away on each page, and has every word of the report's glossary", async () => {
    const { ask } = await serving();
    for (const path of ["/", "/start", "/studies/example-ninemoss/edit/lake"]) {
      expect(await (await ask(path)).text()).toContain('href="/help"');
    }
    const html = plain(await (await ask("/help")).text());
    for (const { term, meaning } of glossary) {
      expect(html).toContain(`<dt>${term}</dt>`);
      expect(html).toContain(meaning);
    }
  });
});

describe("lists of what to ask of whom", () => {
  it.each([
    ["dam", "The operating manual: full pool or normal maximum"],
    ["water", "Water-quality monitoring"],
    ["hydropower", "Plant records of generation"],
    ["office", "Climate normals of the nearest weather station"],
  ])("have what the %s knows, and where it is found", async (id, where) => {
    const { ask } = await serving();
    const html = await (await ask(`/help/checklist/${id}`)).text();
    expect(html).toContain(where);
    expect(html).toContain("A range is welcome");
  });

  it("are there for every kind of structure that has anything to look up", async () => {
    const { ask } = await serving();
    const html = await (await ask("/help")).text();
    const missing = structureKinds.filter(({ kind }) => !html.includes(`/help/checklist/${kind}"`));
    expect(missing.map(({ kind }) => kind)).toEqual(["lake-wide"]);
    expect((await ask("/help/checklist/nobody")).status).toBe(404);
  });
});

describe("a field", () => {
  it("shows what an example in the same units has, in a structure of the same kind; an example shows none", async () => {
    const { ask, studies } = await serving();
    const body = new URLSearchParams({ name: "Blue", lake: "Blue Lake", units: "si", currency: "EUR" });
    const made = await ask("/studies/new", { method: "POST", body });
    const lake = (made.headers.get("location") ?? "").replace("names", "lake");
    const metric = studies.find("example-ninemoss")?.text ?? "";
    const thermocline = /thermoclineDepth: (.+)/.exec(metric)?.[1]?.replaceAll('"', "") ?? "none";
    expect(await (await ask(lake)).text()).toContain(`For instance: ${thermocline}`);
    expect(await (await ask("/studies/example-ninemoss/edit/lake")).text()).not.toContain("For instance:");
  });
});
