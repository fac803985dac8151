import { afterAll, beforeAll, expect, it } from "vitest";
import { type Bench, fill, openBench, press, text } from "./bench.js";
import { visit } from "./waiting.js";

let bench: Bench;
beforeAll(async () => {
  bench = await openBench();
});
afterAll(() => bench.close());

it("lets an engineer try a value, keep it with a reason, and go back to the usual one", async () => {
  const page = await bench.visitor();
  const { id } = bench.studies.copy("example-ninemoss", "Ada");
  const address = `${bench.base}/studies/${id}/assumptions/arrival.founding-unknown`;
  await visit(page, address);
  await fill(page, { value: "1 %" });
  await press(page, "form.plain-form .buttons button");
  expect(await text(page, "#effect")).toBe("What this value would do");
  expect(bench.studies.find(id)?.revision).toBe(1);

  await fill(page, { value: "1 %" });
  await press(page, 'button[formmethod="post"]:not([formaction])');
  expect(await text(page, "#reason-error")).not.toBe("");
  expect(await page.$eval("#value", (input) => (input as HTMLInputElement).value)).toBe("1 %");

  await fill(page, { reason: "A survey of our own" });
  await press(page, 'button[formmethod="post"]:not([formaction])');
  await visit(page, address);
  expect(await text(page, "#effect")).toBe("What the own value does");
  expect(bench.studies.find(id)?.text).toContain("A survey of our own");

  await press(page, 'button[formaction$="/reset"]');
  expect(bench.studies.find(id)?.text).not.toContain("A survey of our own");
  expect(bench.studies.find(id)?.revision).toBe(3);
  expect(bench.faults).toEqual([]);
});

it("narrows the table of assumptions while somebody types, names first, and says what to do where nothing is left", async () => {
  const page = await bench.visitor();
  await visit(page, `${bench.base}/studies/example-ninemoss/assumptions`);
  const shown = () =>
    page.$$eval("#table-all tbody tr", (rows) =>
      rows.filter((row) => row.checkVisibility()).map((row) => row.querySelector("th a")?.textContent ?? ""),
    );
  await fill(page, { q: "velocities" });
  const names = await shown();
  const byName = names.filter((name) => /velocity/i.test(name));
  expect(byName.length).toBeGreaterThan(0);
  expect(names.slice(0, byName.length)).toEqual(byName);
  expect(await text(page, "#table-all-count")).toMatch(new RegExp(`^${names.length} of \\d+ shown`));
  await fill(page, { q: "zzz" });
  expect(await shown()).toEqual([]);
  expect(await text(page, "#table-all-count")).toContain("Try fewer words, or other words of the trade");
  await page.close();
});
