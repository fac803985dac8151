import { describe, expect, it } from "vitest";
import { serving } from "./serving.js";

type Served = Awaited<ReturnType<typeof serving>>;

const send = ({ ask, studies }: Served, path: string, fields: Readonly<Record<string, string>>) => {
  const revision = String(studies.find(path.split("/")[2] ?? "")?.revision);
  const headers = { referer: `http://127.0.0.1${path.replace(/\/(undo|redo)$/, "/edit/lake")}` };
  const body = new URLSearchParams({
    "#base": revision,
    "#expected": revision,
    expected: revision,
    ...fields,
  });
  return ask(path, { method: "POST", headers, body });
};

const page = async ({ ask }: Served, path: string) => (await ask(path)).text();

describe("undo and redo on a page of a study", () => {
  it("are offered where something can be taken back, and lead back to the page", async () => {
    const served = await serving();
    const { id } = served.studies.copy("example-ninemoss", "Ada");
    const lake = `/studies/${id}/edit/lake`;
    expect(await page(served, lake)).not.toContain(`/studies/${id}/undo`);
    const first = served.studies.find(id)?.text;
    await send(served, lake, { "lake/thermoclineDepth": "9 m" });
    expect(await page(served, lake)).toContain(
      'Undo<span class="said">: Lake and water: Thermocline depth</span>',
    );
    const undone = await send(served, `/studies/${id}/undo`, {});
    expect(undone.headers.get("location")).toBe(lake);
    expect(served.studies.find(id)?.text).toBe(first);
    expect(await page(served, lake)).toContain(`/studies/${id}/redo`);
  });

  it("take back the removal of a structure, which is called by its name", async () => {
    const served = await serving();
    const { id } = served.studies.copy("example-ninemoss", "Ada");
    const list = `/studies/${id}/edit/structures`;
    const before = served.studies.find(id)?.text;
    await send(served, list, { act: "remove:structures/0" });
    expect(await page(served, list)).toContain("Structures: removed “Village water intake”");
    await send(served, `/studies/${id}/undo`, {});
    expect(served.studies.find(id)?.text).toBe(before);
  });

  it("overwrite nothing that somebody else saved meanwhile", async () => {
    const served = await serving();
    const { id } = served.studies.copy("example-ninemoss", "Ada");
    await send(served, `/studies/${id}/edit/lake`, { "lake/thermoclineDepth": "9 m" });
    await send(served, `/studies/${id}/edit/lake`, { "lake/thermoclineDepth": "8 m" });
    const late = await send(served, `/studies/${id}/undo`, { expected: "2" });
    expect(late.status).toBe(409);
  });
});

describe("the history of a study", () => {
  it("stands together by sittings: another person, or a pause of more than half an hour, begins anew", async () => {
    const served = await serving();
    const { id } = served.studies.copy("example-ninemoss", "Ada");
    const save = (minutes: number, author: string, depth: string) => {
      served.clock.now = new Date(served.clock.now.getTime() + minutes * 60_000);
      return send(served, `/studies/${id}/edit/lake`, { "#author": author, "lake/thermoclineDepth": depth });
    };
    await save(30, "Ada", "9 m");
    await save(31, "Ada", "8 m");
    await save(1, "Bo", "7 m");
    const html = await page(served, `/studies/${id}/revisions`);
    expect([...html.matchAll(/<summary>([^<]*: \d+ revisions?)/g)].map(([, told]) => told)).toEqual([
      "2026-01-02 04:06, Bo: 1 revision",
      "2026-01-02 04:05, Ada: 1 revision",
      "2026-01-02, 03:04 to 03:34, Ada: 2 revisions",
    ]);
  });

  it("has names for versions, which may go again", async () => {
    const served = await serving();
    const { id } = served.studies.copy("example-ninemoss", "Ada");
    await send(served, `/studies/${id}/revisions/1/name`, { name: "For the May meeting" });
    expect(await page(served, `/studies/${id}/revisions`)).toContain("“For the May meeting”");
    await send(served, `/studies/${id}/revisions/1/name`, { name: "" });
    expect(await page(served, `/studies/${id}/revisions`)).not.toContain("May meeting");
    expect((await send(served, `/studies/${id}/revisions/9/name`, { name: "x" })).status).toBe(404);
  });
});

describe("the list of studies", () => {
  it("tells of each its answer and its last change", async () => {
    const served = await serving();
    const { id } = served.studies.copy("example-ninemoss", "Ada");
    await send(served, `/studies/${id}/edit/lake`, { "lake/thermoclineDepth": "9 m" });
    await page(served, `/studies/${id}`);
    const html = await page(served, "/");
    expect(html).toContain("Last change: Lake and water: Thermocline depth");
    expect(html).toMatch(
      /(Pays|Costs more than it saves): damage avoided \$[\d,]+\/yr, spent at the ramp \$[\d,]+\/yr/,
    );
  });
});

describe("pages outside of the workbench", () => {
  it("keep the menu of the study that they were opened from", async () => {
    const served = await serving();
    const { id } = served.studies.copy("example-ninemoss", "Ada");
    const link = `href="/studies/${id}/edit/boats"`;
    for (const path of [
      `/studies/${id}/report`,
      `/compare?left=${id}&right=example-sorrel-bend`,
      `/verify?from=${id}`,
    ]) {
      await page(served, path);
      expect(await page(served, path)).toContain(link);
    }
  });
});
