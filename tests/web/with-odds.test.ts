import { expect, it } from "vitest";
import { askedRuns, usualRuns } from "../../src/app/runs.js";
import type { StudyToDraw } from "../../src/odds/messages.js";
import type { Odds } from "../../src/study/odds/odds.js";
import { patience } from "../patience.js";
import { inventedOdds } from "../trials/invented-odds.js";
import { serving } from "./serving.js";

const ninemoss = "/studies/example-ninemoss";
/** Invented for every study: see inventedOdds. */
const chance = "mussels establish within 30 years is 31% without it and 31% with it";

/** Draws when told to. */
function drawing() {
  const begun: (() => void)[] = [];
  const draw = (study: StudyToDraw) =>
    new Promise<Odds>((resolve) => begun.push(() => resolve(inventedOdds(study))));
  return { begun, runs: askedRuns<Odds>({ ...usualRuns, draw }) };
}

it("a report says that it is being worked out until its odds are drawn, once, and then has them", async () => {
  const { begun, runs } = drawing();
  const { ask } = await serving(":memory:", {}, { runs });
  const first = await ask(`${ninemoss}/report`);
  expect(first.status).toBe(202);
  expect(await first.text()).toContain("are being worked out");
  expect(begun).toHaveLength(1);
  for (const end of begun) end();
  await expect.poll(async () => (await ask(`${ninemoss}/report`)).status, { timeout: patience }).toBe(200);
  const report = await (await ask(`${ninemoss}/report`)).text();
  expect(report).toContain(chance);
  expect(report).not.toContain("Odds were not drawn");
  expect(begun).toHaveLength(1);
});

const results = [`${ninemoss}/results.json`, `/api${ninemoss}/results`];

it("results are at central values, without a headline, until the odds are drawn, which asking for them starts", async () => {
  const { begun, runs } = drawing();
  const { ask } = await serving(":memory:", {}, { runs });
  for (const path of results) {
    expect(await (await ask(path)).json()).toMatchObject({ headline: null, odds: null });
  }
  expect(begun).toHaveLength(1);
});

it("a report waits for its turn where as many studies are drawn as may, and is not refused", async () => {
  const { begun, runs } = drawing();
  const { ask, studies } = await serving(":memory:", {}, { runs });
  const others = Array.from({ length: usualRuns.mostWaiting + 1 }, () =>
    studies.copy("example-ninemoss", "Ada"),
  );
  others.forEach(({ id }, index) => {
    const { text = "" } = studies.find(id) ?? {};
    studies.save(id, 1, `${text}# ${index}\n`, { author: "Ada", note: "", origin: "form" });
  });
  for (const { id } of others) expect((await ask(`/studies/${id}/report`)).status).toBe(202);
  expect((await ask(`${ninemoss}/report`)).status).toBe(202);
  expect(begun).toHaveLength(1);
});

it("results, by page and by program, and the page for a meeting give the same answer once they are", async () => {
  const { begun, runs } = drawing();
  const { ask } = await serving(":memory:", {}, { runs });
  await ask(`${ninemoss}/results.json`);
  for (const end of begun) end();
  const asked = [...results, `${ninemoss}/forms/summary.html`].map(async (path) => (await ask(path)).text());
  const [byPage = "", byProgram = "", summary = ""] = await Promise.all(asked);
  const [one, other] = [byPage, byProgram].map((text) => JSON.parse(text).headline);
  expect(one).toMatchObject({ requested: "summer-checks" });
  expect(other).toEqual(one);
  expect(summary).toContain(chance);
});
