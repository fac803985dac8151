import { afterAll, expect, it } from "vitest";
import { workerPool } from "../../src/odds/pool.js";
import { swingsBy } from "../../src/odds/swings-by-workers.js";
import { drawingThreads } from "../../src/odds/threads.js";
import { assumptions, exampleDocument } from "../report/runs.js";
import { judgeHere } from "../web/judging.js";

const few = {
  ...assumptions,
  entries: new Map(
    [...assumptions.entries].map(([id, entry]) =>
      id !== "steps.dependence"
        ? ([id, { ...entry, low: entry.value, high: entry.value }] as const)
        : ([id, entry] as const),
    ),
  ),
};
const pool = workerPool(() => few, drawingThreads(2));
afterAll(() => pool.close());

it("gives the swings that the same thread gives, from workers", async () => {
  const document = exampleDocument("ninemoss");
  const swings = await swingsBy(pool, document, few, new AbortController().signal);
  expect(swings.map(({ id }) => id)).toEqual(["steps.dependence"]);
  expect(swings).toEqual(await judgeHere(few)(document));
});
