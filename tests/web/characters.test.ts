import { describe, expect, it } from "vitest";
import { serving } from "./serving.js";

const bell = "Nort\u0007h";
const told = "U+0007 at character 5";
const writer = { author: "Ada", note: "", origin: "form" } as const;

async function visiting() {
  const { ask, studies } = await serving();
  const post = (path: string, fields: Record<string, string>) =>
    ask(path, { method: "POST", body: new URLSearchParams(fields) });
  return { ask, studies, post };
}

const base = { "#base": "1", "#expected": "1" };

describe("a character that cannot be printed", () => {
  it.each([
    ["an author", "/edit/names", { ...base, "#author": bell, "study/board": "Board" }],
    ["an author", "/copy", { author: bell }],
    ["a new structure", "/edit/structures/new", { ...base, name: bell, kind: "dock" }],
  ])("is refused in the name of %s (%s), with its place", async (_whose, path, fields) => {
    const { post, studies } = await visiting();
    const { id } = studies.create("study: { name: Our lake }", writer);
    const answer = await post(`/studies/${id}${path}`, fields);
    expect(answer.status).toBe(400);
    expect(await answer.text()).toContain(told);
    expect(studies.find(id)?.revision).toBe(1);
    expect(studies.list().filter(({ isExample }) => !isExample)).toHaveLength(1);
  });

  it("is refused in the name of a new study, whose page keeps what was typed", async () => {
    const { post } = await visiting();
    const fields = { name: bell, lake: "Lake", units: "si", currency: "EUR" };
    const answer = await post("/studies/new", fields);
    expect(answer.status).toBe(400);
    const page = await answer.text();
    expect(page).toContain(told);
    expect(page).toContain('value="Lake"');
  });

  it("is told on the page of a table, which keeps what was pasted", async () => {
    const { ask, studies } = await visiting();
    const { id } = studies.create("study: { name: Our lake }", writer);
    const body = new FormData();
    const fields = { kind: "dock", csv: "name,count\nPier,2", author: bell, act: "take" };
    for (const [name, value] of Object.entries(fields)) body.set(name, value);
    const answer = await ask(`/studies/${id}/structures/table`, { method: "POST", body });
    expect(answer.status).toBe(400);
    const page = await answer.text();
    expect(page).toContain(told);
    expect(page).toContain("Pier,2");
  });

  it("is refused in the name of a file", async () => {
    const { post } = await visiting();
    const bytes = Buffer.from("study: { name: Our lake }").toString("base64");
    const answer = await post("/studies/unfinished", { bytes, fileName: `${bell}.yaml` });
    expect(answer.status).toBe(400);
    expect(await answer.text()).toContain(told);
  });

  it.each(["note", "author"])("is refused in the %s of a program's request", async (name) => {
    const { ask } = await visiting();
    const query = new URLSearchParams({ draft: "true", [name]: bell });
    const answer = await ask(`/api/studies?${query}`, {
      method: "POST",
      headers: { "Content-Type": "application/yaml" },
      body: "study: { name: Our lake }",
    });
    expect(answer.status).toBe(400);
    expect(await answer.text()).toContain(told);
  });

  it("keeps a study that holds one: it opens, tells it, and can be copied", async () => {
    const { ask, post, studies } = await visiting();
    const { id, name } = studies.create(JSON.stringify({ study: { name: bell } }), writer);
    expect(name).toBe("Nort\ufffdh");
    const page = await ask(`/studies/${id}/edit/names`);
    expect(page.status).toBe(200);
    expect(await page.text()).toContain(told);
    expect((await post(`/studies/${id}/copy`, { author: "Ada" })).status).toBe(303);
    expect(studies.find(id)?.text).toContain("\\u0007");
  });
});
