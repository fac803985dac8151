import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { realSet } from "../assumptions/real.js";
import { smallLakeText } from "../study/small-lake.js";
import { judgeOnce } from "./judging.js";
import { serving, starting } from "./serving.js";

const writer = { author: "Ida Marsh", note: "", origin: "form" } as const;
const chance = "arrival.founding-unknown";
let web: Awaited<ReturnType<typeof starting>>;

beforeAll(async () => {
  web = await starting(":memory:", {}, { judge: judgeOnce });
});
afterAll(() => web.close());

const made = () => {
  const { id } = web.studies.create(smallLakeText, writer);
  return { id, list: `/studies/${id}/assumptions`, one: `/studies/${id}/assumptions/${chance}` };
};

/** Text of each cell of a row of the table of effects, by the words it begins with. */
function cells(page: string, figure: string): string[] {
  const row =
    page
      .split("<tr")
      .filter((part) => part.includes(`<td>${figure}</td>`))
      .at(-1) ?? "";
  return [...row.matchAll(/<td[^>]*>([^<]*)<\/td>/g)].map(([, cell = ""]) => cell);
}

const pageAt = async (path: string) => (await web.ask(path)).text();
const post = (path: string, fields: Record<string, string>) =>
  web.ask(path, { method: "POST", body: new URLSearchParams(fields) });

describe("the page of assumptions", () => {
  it("lists those that the study uses with range, basis, source and note, and finds words", async () => {
    const { list } = made();
    const page = await pageAt(list);
    expect(page).toContain("Chance that a fouled launch of unknown origin founds a population");
    expect(page).toContain(`${realSet().entries.get(chance)?.value} share`);
    const found = await pageAt(`${list}?q=founds+population&show=all`);
    expect(found).toContain(`href="${list}/${chance}"`);
    expect(found).not.toContain(`href="${list}/hydraulics.closed-roughness-ratio"`);
    const nothing = await pageAt(`${list}?q=zzzz`);
    expect(nothing).toContain(
      `None of the ${realSet().entries.size} assumptions searched has all these words`,
    );
    expect(nothing).not.toContain('id="table-all"');
  });

  it("finds among all assumptions what none of those that the study uses has, and says so", async () => {
    const { list } = made();
    const found = await pageAt(`${list}?q=pipe+roughness`);
    expect(found).toContain(`href="${list}/typical.roughness"`);
    expect(found).toContain("none under “that this study uses” has these words, so all were searched");
    expect(await pageAt(`${list}?q=founds+population`)).not.toContain("all were searched");
    const own = await pageAt(`${list}?q=roughness&show=own`);
    expect(own).toContain("none under “with an own value” has these words, so all were searched");
  });

  it("orders the judged values by how far they move the answer, once that is worked out", async () => {
    const { list } = made();
    const { swings } = (await (await web.ask(`${list}/swings.json`)).json()) as {
      swings: { id: string; width: number }[];
    };
    expect(swings.length).toBeGreaterThan(5);
    swings.slice(1).forEach(({ width }, index) => {
      expect(width).toBeLessThanOrEqual(swings[index]?.width ?? 0);
    });
    const page = await pageAt(list);
    expect(page).not.toContain("data-awaits");
    const places = swings.slice(0, 3).map(({ id }) => page.indexOf(`href="${list}/${id}"`));
    expect(places).toEqual(places.toSorted((one, other) => one - other));
    expect(places[0]).toBeGreaterThan(0);
  });

  it("tells what cannot be known of an incomplete study, and lists everything", async () => {
    const { id } = web.studies.create("study: { name: Begun }\n", writer);
    const page = await pageAt(`/studies/${id}/assumptions`);
    expect(page).toContain("shown once the study is complete");
    expect(page).toContain("not known yet");
    const tried = await pageAt(`/studies/${id}/assumptions/${chance}?value=0.003&reason=x`);
    expect(tried).toContain("The value can be kept; what it does is shown once the study is complete.");
  });

  it("knows no assumption that there is not", async () => {
    expect((await web.ask(`${made().list}/no.such`)).status).toBe(404);
  });
});

describe("an own value", () => {
  it("is tried without being saved: the board's figures before and after", async () => {
    const { id, one } = made();
    const page = await pageAt(`${one}?value=0.9&reason=tried`);
    expect(page).toContain("Nothing was saved.");
    const [, before, after, change] = cells(page, "Net benefit, present value");
    expect(before).not.toBe(after);
    expect(change).toMatch(/^\+€/);
    expect(cells(page, "Program, per year")[3]).toBe("none");
    expect(web.studies.find(id)?.revision).toBe(1);
  });

  it("is saved with its reason as a revision, listed, and taken back again", async () => {
    const { id, list, one } = made();
    const fields = { base: "1", value: "0.01", reason: "counted in 2025", author: "J. Okafor" };
    const saved = await post(one, fields);
    expect(saved.headers.get("location")).toBe(one);
    expect(web.studies.find(id)).toMatchObject({
      revision: 2,
      author: "J. Okafor",
      note: "Assumptions: chance that a fouled launch of unknown origin founds a population 0.01",
    });
    const page = await pageAt(one);
    expect(page).toContain("What the own value does");
    expect(page).toContain("counted in 2025");
    expect(await pageAt(list)).toContain(`formaction="${one}/reset"`);
    const reset = await post(`${one}/reset`, { base: "2", author: "J. Okafor" });
    expect(reset.headers.get("location")).toBe(list);
    expect(web.studies.find(id)?.text).not.toContain(chance);
    expect(await pageAt(list)).toContain("all assumptions have their usual values");
  });

  it.each([
    ["a unit of another kind", { value: "3 kg", reason: "x" }, "Found “3 kg”; allowed:"],
    ["nothing", { value: "", reason: "x" }, "Found nothing; allowed:"],
    ["no reason", { value: "0.003", reason: "" }, "A reason is missing"],
    ["a long reason", { value: "0.003", reason: "y".repeat(201) }, "The reason has 201 characters"],
  ])("is refused beside its field for %s, and what was typed stays", async (_what, typed, told) => {
    const { id, one } = made();
    const refused = await post(one, { base: "1", author: "", ...typed });
    const page = await refused.text();
    expect(refused.status).toBe(400);
    expect(page).toContain(told);
    expect(page).toContain(`name="value" value="${typed.value}"`);
    expect(page).toContain(`name="reason" value="${typed.reason}"`);
    expect(web.studies.find(id)?.revision).toBe(1);
  });

  it("overwrites nobody's: the second of two is told of the first, and both changes elsewhere are kept", async () => {
    const { id, one } = made();
    await post(one, { base: "1", value: "0.01", reason: "first", author: "Ida" });
    const second = await post(one, { base: "1", value: "0.002", reason: "second", author: "Jo" });
    const page = await second.text();
    expect(second.status).toBe(409);
    expect(page).toContain("Ida gave it the value “0.01” (first) in revision 2");
    expect(page).toContain('name="reason" value="second"');
    expect(page).toContain('name="base" value="2"');
    const other = await post(`/studies/${id}/assumptions/steps.dependence`, {
      base: "1",
      value: "0.4",
      reason: "elsewhere",
      author: "Jo",
    });
    expect(other.status).toBe(303);
    expect(web.studies.find(id)?.text).toMatch(/first[\s\S]*elsewhere/);
  });

  it("cannot be kept in an example, but tried there", async () => {
    const one = `/studies/example-ninemoss/assumptions/${chance}`;
    expect((await post(one, { base: "1", value: "0.01", reason: "x" })).status).toBe(404);
    const page = await pageAt(`${one}?value=0.01&reason=x`);
    expect(page).toContain("Nothing was saved.");
    expect(page).toContain("Make a study from this example");
    expect(page).not.toContain("Save as own value");
  });
});

describe("the list of assumptions in a study's units", () => {
  it("tells US units with what the entry states beside them, and metric ones as they are", async () => {
    // Judged values of a whole lake take half a minute, also where nobody waits for them.
    const { ask } = await serving();
    const us = await (await ask("/studies/example-sorrel-bend/assumptions?show=all&q=rack+velocity")).text();
    // 1 m/s = 3.28084 ft/s
    expect(us).toMatch(/[\d.]+ ft\/s/);
    expect(us).toMatch(/stated as [\d.]+ m\/s/);
    const si = await (await ask("/studies/example-ninemoss/assumptions?show=all&q=rack+velocity")).text();
    expect(si).not.toContain("stated as");
  });
});
