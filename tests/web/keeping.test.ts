import { truncateSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { databaseFile } from "../../src/store/connection.js";
import { folder } from "../store/places.js";
import { serving } from "./serving.js";

async function visiting(place?: string) {
  const { ask, ...served } = await serving(place);
  const post = (path: string, fields: Record<string, string> = {}) =>
    ask(path, { method: "POST", body: new URLSearchParams(fields) });
  return { ...served, get: ask, post };
}

const writer = { author: "Ada", note: "", origin: "form" } as const;

describe("keeping studies in the browser", () => {
  it("makes a copy of one's own from an example, under a name that tells them apart", async () => {
    const { studies, get, post } = await visiting();
    const made = await post("/studies/example-ninemoss/copy", { author: "Ada" });
    expect(made.status).toBe(303);
    const id = made.headers.get("location")?.replace("/studies/", "") ?? "";
    expect(studies.find(id)).toMatchObject({
      name: "Ninemoss Lake, inspection program request (copy)",
      author: "Ada",
      origin: "copy",
      isExample: false,
    });
    expect((await get(`/studies/${id}`)).status).toBe(200);
  });

  it("deletes with recovery: the page says so and offers it", async () => {
    const { studies, get, post } = await visiting();
    const { id } = studies.create("study: { name: Our lake }", writer);
    expect(await (await get("/")).text()).toContain(`formaction="/studies/${id}/delete"`);
    await post(`/studies/${id}/delete`);
    const gone = await get(`/studies/${id}`);
    expect(gone.status).toBe(410);
    expect(await gone.text()).toContain(`action="/studies/${id}/recover"`);
    expect(await (await get("/")).text()).toContain("Recover");
    expect((await post(`/studies/${id}/recover`)).headers.get("location")).toBe(`/studies/${id}`);
    expect(studies.list().map((card) => card.id)).toContain(id);
  });

  it.each(["cross-site", "same-site"])(
    "refuses a change that a page elsewhere (%s) asks for",
    async (site) => {
      const { studies, get } = await visiting();
      const { id } = studies.create("study: { name: Our lake }", writer);
      const headers = { "Sec-Fetch-Site": site };
      expect((await get(`/studies/${id}/delete`, { method: "POST", headers })).status).toBe(403);
      expect((await get(`/api/studies/${id}`, { method: "DELETE", headers })).status).toBe(403);
      expect(studies.find(id)?.state).toBe("active");
      expect((await get("/studies/example-ninemoss/study", { headers })).status).toBe(200);
    },
  );

  it("archives a study out of the list and back", async () => {
    const { studies, post } = await visiting();
    const { id } = studies.create("study: { name: Our lake }", writer);
    await post(`/studies/${id}/archive`);
    expect(studies.list().map((card) => card.id)).not.toContain(id);
    expect(studies.inState("archived")).toMatchObject([{ id, name: "Our lake" }]);
    await post(`/studies/${id}/recover`);
    expect(studies.inState("archived")).toEqual([]);
  });

  it("brings an earlier revision back as the next one", async () => {
    const { studies, get, post } = await visiting();
    const { id } = studies.create("study: { name: Our lake }\r\n", writer);
    studies.save(id, 1, "study: { name: Our lake }\nlake:\n", writer);
    const restored = await post(`/studies/${id}/revisions/1/restore`, { expected: "2", author: "Bo" });
    expect(restored.status).toBe(303);
    expect(studies.find(id)).toMatchObject({ revision: 3, note: "Revision 1 again", author: "Bo" });
    expect(await (await get(`/studies/${id}/revisions/3/study`)).text()).toBe(
      "study: { name: Our lake }\r\n",
    );
  });

  it("tells the second of two writers who was first, and overwrites nothing", async () => {
    const { studies, post } = await visiting();
    const { id } = studies.create("study: { name: Our lake }", writer);
    studies.save(id, 1, "study: { name: Our lake }\nlake:\n", { ...writer, author: "Cy" });
    const refused = await post(`/studies/${id}/revisions/1/restore`, { expected: "1" });
    expect(refused.status).toBe(409);
    const page = await refused.text();
    expect(page).toContain("Cy saved revision 2 on 2026-01-02 at 03:04 UTC");
    expect(page).toContain(`/studies/${id}/revisions/1/study`);
    expect(studies.find(id)?.revision).toBe(2);
  });

  it.each([
    ["/studies/none/copy", 404],
    ["/studies/none/delete", 404],
    ["/studies/example-ninemoss/delete", 404],
    ["/studies/example-ninemoss/revisions/one/restore", 400],
  ])("refuses %s", async (path, status) => {
    const { post } = await visiting();
    expect((await post(path)).status).toBe(status);
  });

  it("shows an incomplete study's place in the list without computing it", async () => {
    const { studies, get } = await visiting();
    studies.create("lake: 3", writer);
    const page = await (await get("/")).text();
    expect(page).toContain("Study without a name");
  });
});

describe("a damaged database", () => {
  it("is a clear page with the way out, and leaves the examples", async () => {
    const place = folder();
    const { studies, connection, get } = await visiting(place);
    studies.create("study: { name: Our lake }", writer);
    connection.close();
    truncateSync(databaseFile(place), 5000);
    const page = await get("/");
    expect(page.status).toBe(503);
    expect(await page.text()).toContain("ramp-and-rack restore FILE");
    expect((await get("/studies/example-ninemoss/study")).status).toBe(200);
  });
});
