import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { exampleText } from "../study/example.js";
import { starting } from "./serving.js";

const text = exampleText("thistledown");
const writer = { author: "Ida Marsh", note: "", origin: "form" } as const;
const rack = { structure: "town-intake", part: "trash rack" };
let web: Awaited<ReturnType<typeof starting>>;

beforeAll(async () => {
  web = await starting();
});
afterAll(() => web.close());

const made = () => {
  const { id } = web.studies.create(text, writer);
  const list = `/studies/${id}/plans`;
  return { id, list, one: (more: object = {}) => `${list}?${new URLSearchParams({ ...rack, ...more })}` };
};

const pageAt = async (path: string) => (await web.ask(path)).text();
const post = (path: string, fields: Record<string, string>) =>
  web.ask(path, { method: "POST", body: new URLSearchParams(fields), redirect: "manual" });
const textOf = (id: string) => web.studies.find(id)?.text ?? "";

/** Cells of the row of a plan. */
function rowOf(page: string, plan: string): string[] {
  const row = page.split("<tr>").find((part) => part.includes(`value="${plan}"`)) ?? "";
  return [...row.matchAll(/<td[^>]*>(.*?)<\/td>/gs)].map(([, cell = ""]) =>
    cell.replace(/<[^>]*>/g, "").trim(),
  );
}

describe("the page of plans", () => {
  it("lists every part with its plan and opens each", async () => {
    const { list, one } = made();
    const page = await pageAt(list);
    expect(page).toContain(one().replace("&", "&amp;").replace(/=/g, "&#x3D;"));
    expect((await web.ask(`${list}?structure=town-intake&part=attic`)).status).toBe(404);
  });

  it("prices every plan of a part, with what it keeps and breaks, the cheapest first", async () => {
    const page = await pageAt(made().one());
    const [, , cheapestMore, cheapestKeeps, cheapestBreaks, cheapestMark] = rowOf(page, "divers-12");
    expect([cheapestMore, cheapestBreaks, cheapestMark]).toEqual(["–", "", "chosen: cheapest"]);
    expect(cheapestKeeps).toContain("every limit");
    const [, , more, keeps, breaks] = rowOf(page, "leave");
    expect(Number(more?.replace(/[^\d]/g, ""))).toBeGreaterThan(0);
    expect([keeps, breaks]).toEqual(["not every limit", "head loss above the limit"]);
    expect(page).toContain("next best");
    expect(page).toContain('id="chart-intervals-1"');
    expect(page).toContain("Not feasible here");
  });

  it("tries a plan without saving it", async () => {
    const { id, one } = made();
    const page = await pageAt(one({ plan: "leave" }));
    expect(page).toContain("What this plan would do");
    expect(page).toContain("Nothing was saved.");
    expect(textOf(id)).toBe(text);
  });

  it("prescribes the plan picked and takes it back", async () => {
    const { id, list, one } = made();
    const picked = { ...rack, plan: "divers-24", reason: "Crew every other year", base: "1", author: "Ida" };
    expect((await post(list, picked)).status).toBe(303);
    expect(textOf(id)).toContain("Crew every other year");
    const page = await pageAt(one());
    expect(rowOf(page, "divers-24").at(-1)).toBe("prescribed");
    expect(rowOf(page, "divers-12").at(-1)).toBe("cheapest");
    await post(list, { ...rack, base: "2" });
    expect(textOf(id)).not.toContain("Crew every other year");
  });

  it.each([
    ["without a reason", { plan: "divers-24" }, 400, "A reason is missing"],
    [
      "that is none of the catalogue",
      { plan: "prayer", reason: "hope" },
      400,
      "pinned[0].plan: found &quot;prayer&quot;",
    ],
  ])("keeps nothing of a plan %s, and shows what was picked again", async (_what, fields, status, words) => {
    const { id, list } = made();
    const response = await post(list, { ...rack, base: "1", ...fields });
    expect(response.status).toBe(status);
    expect(await response.text()).toContain(words);
    expect(textOf(id)).toBe(text);
  });

  it("keeps nothing where someone else prescribed a plan for the part meanwhile", async () => {
    const { id, list } = made();
    await post(list, { ...rack, plan: "divers-24", reason: "mine", base: "1", author: "Ola" });
    const response = await post(list, { ...rack, plan: "leave", reason: "yours", base: "1" });
    expect(response.status).toBe(409);
    const page = await response.text();
    expect(page).toContain("Ola prescribed divers-24");
    expect(page).toContain('value="yours"');
    expect(textOf(id)).not.toContain("yours");
  });
});
