import { expect, it } from "vitest";
import { newAccessKey } from "../../../src/app/keys.js";
import { askedRuns, usualRuns } from "../../../src/app/runs.js";
import { accessStore } from "../../../src/store/access.js";
import type { Odds } from "../../../src/study/odds/odds.js";
import { onePagePrinter } from "../../issue/issued.js";
import { patience } from "../../patience.js";
import { serving } from "../serving.js";

const ninemoss = "/api/studies/example-ninemoss";

it("tells how far the odds are, and then the odds", async () => {
  let done: (odds: Odds) => void = () => undefined;
  const draw = () =>
    new Promise<Odds>((resolve) => {
      done = resolve;
    });
  const { ask } = await serving(":memory:", {}, { runs: askedRuns<Odds>({ ...usualRuns, draw }) });
  const first = await ask(`${ninemoss}/odds`);
  expect([first.status, first.headers.get("retry-after")]).toEqual([202, "2"]);
  expect(await first.json()).toEqual({ state: "drawing", progress: { done: 0, planned: 0 } });
  done({ futures: 2048 } as Odds);
  await expect.poll(async () => (await ask(`${ninemoss}/odds`)).status, { timeout: patience }).toBe(200);
  expect(await (await ask(`${ninemoss}/odds`)).json()).toEqual({ futures: 2048 });
});

it("issues a report of a study of one's own, and lists it", async () => {
  const { ask, studies } = await serving(":memory:", {}, { printer: onePagePrinter });
  const { id } = studies.copy("example-ninemoss", "");
  const issues = `/api/studies/${id}/issues`;
  const made = await ask(`${issues}?author=Ada&note=For%20the%20board`, { method: "POST" });
  expect(made.status).toBe(201);
  const issue = await made.json();
  expect(issue).toMatchObject({ studyId: id, number: 1, author: "Ada", note: "For the board", revision: 1 });
  expect(await (await ask(issues)).json()).toEqual([issue]);
  expect((await ask(issue.links.pdf)).headers.get("content-type")).toContain("application/pdf");
  expect((await ask(`${ninemoss}/issues`, { method: "POST" })).status).toBe(404);
});

it("explains a comparison where that is asked for", async () => {
  const { ask, studies } = await serving();
  const { id, text } = studies.copy("example-ninemoss", "");
  const changed = text.replace(/discountRate: [^\n]+/, "discountRate: 4 %/yr");
  expect(changed).not.toBe(text);
  studies.save(id, 1, changed, { author: "", note: "", origin: "api" });
  const address = `/api/comparison?left=${id}&leftRevision=1&right=${id}`;
  expect(await (await ask(address)).json()).toMatchObject({ explanation: null });
  const { explanation } = await (await ask(`${address}&explained=true`)).json();
  expect(explanation.parts).toHaveLength(1);
  expect(explanation.parts[0].inputs).toEqual(["money/discountRate"]);
  // one change explains all of the difference
  expect(explanation.parts[0].netBenefitInCents).toBe(
    explanation.right.netBenefitInCents - explanation.left.netBenefitInCents,
  );
});

it("tells programs of the access key where there are keys, and only there", async () => {
  const open = await serving();
  expect(await (await open.ask("/api")).text()).not.toContain("Bearer");
  expect(await (await open.ask("/api/openapi.json")).json()).not.toHaveProperty("security");
  const { key, kept } = await newAccessKey("Ada", "edit", new Date(0));
  accessStore(open.connection).add(kept);
  const { ask } = open;
  const headers = { Authorization: `Bearer ${key}` };
  expect(await (await ask("/api", { headers })).text()).toContain("Authorization: Bearer");
  expect(await (await ask("/api/openapi.json", { headers })).json()).toMatchObject({
    components: { securitySchemes: { accessKey: { type: "http", scheme: "bearer" } } },
    security: [{ accessKey: [] }],
  });
});
