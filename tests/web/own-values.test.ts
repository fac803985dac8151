import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import type { Answering } from "../../src/app/answers/questions.js";
import { smallLakeText } from "../study/small-lake.js";
import { answersInTest } from "./answering.js";
import { starting } from "./serving.js";

const writer = { author: "Ida Marsh", note: "", origin: "form" } as const;
let web: Awaited<ReturnType<typeof starting>>;

beforeAll(async () => {
  web = await starting();
});
afterAll(() => web.close());

const made = () => {
  const { id } = web.studies.create(smallLakeText, writer);
  return { id, path: `/studies/${id}/own-values` };
};
const post = (path: string, fields: Record<string, string>) => {
  const form = new FormData();
  for (const [name, value] of Object.entries(fields)) form.set(name, value);
  return web.ask(path, { method: "POST", body: form });
};

const two = "growth.bulk-density;28;lb/ft3;weighed\narrival.founding-unknown;0.9;;counted";

describe("several own values at once", () => {
  it("are shown with what each does and all together, before anything is saved", async () => {
    const { id, path } = made();
    const page = await (await post(path, { csv: two, act: "check" })).text();
    expect(page).toContain("Net benefit of");
    expect(page).toContain("Chance that a fouled launch of unknown origin founds a population");
    expect(page).toMatch(/<td class="num">[+−]€[\d,]+<\/td>/);
    const cellsOf = (row: string) => row.match(/<t[dh][^>]*>/g)?.length;
    const [, table = ""] = page.split('<table id="table-own-effects"');
    const [head = "", ...rows] = table.split("</table>")[0]?.match(/<tr[\s\S]*?<\/tr>/g) ?? [];
    expect(rows.map(cellsOf)).toEqual([6, 6, 6]);
    expect(cellsOf(head)).toBe(6);
    expect(rows.at(-1)).toMatch(
      /All together.*<td class="num">[^<]*€[\d,]+<\/td><td class="num">[+−]€[\d,]+<\/td>/,
    );
    expect(page).toContain("Keep 2 own values in one revision");
    expect(web.studies.find(id)?.revision).toBe(1);
  });

  it("are kept in one revision", async () => {
    const { id, path } = made();
    const kept = await post(path, { csv: two, act: "take", author: "J. Okafor" });
    expect(kept.status).toBe(303);
    expect(kept.headers.get("location")).toBe(`/studies/${id}/assumptions`);
    expect(web.studies.find(id)).toMatchObject({
      revision: 2,
      author: "J. Okafor",
      note: "Assumptions: 2 own values from a table",
    });
    expect(web.studies.find(id)?.text).toMatch(/28 lb\/ft3[\s\S]*0\.9/);
  });

  it("with a fault in one line are not kept, and what was pasted comes back", async () => {
    const { id, path } = made();
    const refused = await post(path, { csv: `${two}\nno.such;1;;x`, act: "take" });
    const page = await refused.text();
    expect(refused.status).toBe(400);
    expect(page).toContain("Line 3: found no.such; allowed: an id from the assumptions");
    expect(page).toContain("growth.bulk-density;28;lb/ft3;weighed");
    expect(web.studies.find(id)?.revision).toBe(1);
  });

  it("are copied from another study into the box", async () => {
    const { id: from, path: first } = made();
    await post(first, { csv: two, act: "take" });
    const { path } = made();
    const copied = async (csv: string, of = from) =>
      (await post(path, { csv, from: of, act: "copy" })).text();
    const page = await copied("");
    expect(page).toContain("are in the box below. Nothing is saved yet.");
    expect(page).toContain("growth.bulk-density,28 lb/ft3,,weighed");
    const full = await copied("arrival.shape;2;;mine");
    expect(full).toContain("Nothing was copied: lines are in the box.");
    expect(full).toContain("arrival.shape;2;;mine");
    const none = await copied("arrival.shape;2;;mine", "example-ninemoss");
    expect(none).toContain("has no own values to copy.");
    expect(none).toContain("arrival.shape;2;;mine");
  });

  it("of an unfinished study can be kept, and what they do is told later", async () => {
    const { id } = web.studies.create("study: { name: Begun }\n", writer);
    const path = `/studies/${id}/own-values`;
    const page = await (await post(path, { csv: two, act: "check" })).text();
    expect(page).toContain("their effect is shown once the study is complete");
    expect((await post(path, { csv: two, act: "take" })).status).toBe(303);
  });

  it("do not change an example", async () => {
    const path = "/studies/example-ninemoss/own-values";
    expect((await post(path, { csv: two, act: "take" })).status).toBe(404);
    expect(await (await web.ask(path)).text()).not.toContain("Keep ");
  });

  it("are not worked out to the end for a reader who has left", async () => {
    const leave = new AbortController();
    let given: AbortSignal | undefined;
    const ask: Answering["ask"] = (kind, asked, signal) => {
      if (kind !== "ownEffects") return answersInTest().ask(kind, asked, signal);
      given = signal;
      setTimeout(() => leave.abort());
      return new Promise((_, reject) => signal?.addEventListener("abort", () => reject(signal.reason)));
    };
    const served = await starting(":memory:", {}, { answers: { ...answersInTest(), ask } });
    const { id } = served.studies.create(smallLakeText, writer);
    const body = new FormData();
    body.set("csv", two);
    const asked = served.ask(`/studies/${id}/own-values`, { method: "POST", body, signal: leave.signal });
    await expect(asked).rejects.toThrow("aborted");
    await vi.waitFor(() => expect(given?.aborted).toBe(true));
    await served.close();
  });
});
