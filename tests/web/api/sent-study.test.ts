import { parse } from "csv-parse/sync";
import { describe, expect, it } from "vitest";
import { smallLakeText } from "../../study/small-lake.js";
import { serving } from "../serving.js";

async function posted(path: string, body: unknown) {
  const { ask, studies } = await serving();
  const before = studies.list().length;
  const text = typeof body === "string" ? body : JSON.stringify(body);
  const response = await ask(path, { method: "POST", body: text });
  expect(studies.list()).toHaveLength(before);
  return response;
}

const set = [{ id: "money.discountRate", values: ["1 %/yr", "oops", "5 %/yr"] }];

describe("a study that a program sends", () => {
  it("is computed and not kept", async () => {
    const response = await posted("/api/results", smallLakeText);
    expect(response.status).toBe(200);
    expect(await response.json()).toMatchObject({ baseline: { id: "none" }, odds: null });
  });

  it("is swept as JSON; a point that cannot be computed says why", async () => {
    const response = await posted("/api/sweep", { study: smallLakeText, set });
    const { points, currency } = await response.json();
    expect(currency).toBe("EUR");
    expect(points.map(({ options }: { options: object[] }) => options.length)).toEqual([3, 0, 3]);
    expect(points[1].problems[0].path).toBe("money.discountRate");
  });

  it("is swept as CSV, a line for each option and point", async () => {
    const response = await posted("/api/sweep/csv", { study: smallLakeText, set });
    expect(response.headers.get("content-type")).toContain("text/csv");
    const [head, ...lines] = parse(await response.text());
    expect(head?.slice(0, 3)).toEqual(["money.discountRate", "option", "name"]);
    expect(lines.map(([rate, option]) => [rate, option])).toEqual([
      ...["none", "signs", "summer-checks"].map((option) => ["1 %/yr", option]),
      ["oops", ""],
      ...["none", "signs", "summer-checks"].map((option) => ["5 %/yr", option]),
    ]);
    expect(lines[3]?.at(-1)).toContain('money.discountRate: found "oops"');
  });

  it.each([
    ["no JSON", "{", "no JSON"],
    ["values without an id", { study: smallLakeText, set: [{ values: [1] }] }, "set[0].id"],
    ["an unfinished study", { study: "study: {}" }, "lake"],
    ["an unknown id", { study: smallLakeText, set: [{ id: "arrival.shap", values: [1] }] }, "arrival.shap"],
  ])("is refused with its place for %s", async (_what, body, words) => {
    const response = await posted("/api/sweep", body);
    expect(response.status).toBe(400);
    expect(await response.text()).toContain(words);
  });
});
