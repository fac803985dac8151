import { afterAll, expect, it } from "vitest";
import { judgedBy } from "../../src/odds/judged-by-workers.js";
import { workerPool } from "../../src/odds/pool.js";
import { assumptions, exampleDocument } from "../report/runs.js";
import { judgeHere } from "../web/judging.js";

const few = {
  ...assumptions,
  entries: new Map(
    [...assumptions.entries].map(([id, entry]) =>
      entry.basis === "judged" && id !== "steps.dependence"
        ? ([id, { ...entry, basis: "common practice" as const }] as const)
        : ([id, entry] as const),
    ),
  ),
};
const pool = workerPool(few, 2);
afterAll(() => pool.close());

it("gives the swings of judged values that the same thread gives, from workers", async () => {
  const document = exampleDocument("ninemoss");
  const swings = await judgedBy(pool, document, few, new AbortController().signal);
  expect(swings.map(({ id }) => id)).toEqual(["steps.dependence"]);
  expect(swings).toEqual(await judgeHere(few)(document));
});
