import { expect, it } from "vitest";
import type { Answering } from "../../src/app/answers/questions.js";
import { answersInTest } from "./answering.js";
import { serving } from "./serving.js";

/** Answers at once, but for results and reports, which come when told. */
function heldBack() {
  const here = answersInTest();
  let release: () => void = () => undefined;
  const released = new Promise<void>((resolve) => {
    release = resolve;
  });
  const askLatest: Answering["askLatest"] = async (kind, latest, signal) => {
    await released;
    return here.askLatest(kind, latest, signal);
  };
  return { answers: { ...here, askLatest }, release };
}

/** The address in a page, without the escapes of HTML. */
const awaitedIn = (page: string) =>
  (/data-awaits="([^"]+)"/.exec(page)?.[1] ?? "").replaceAll("&#x3D;", "=").replaceAll("&amp;", "&");

it.each(["", "/report"])(
  "the page at %s says that it is being worked out, and then is there",
  async (path) => {
    const { answers, release } = heldBack();
    const { ask } = await serving(":memory:", {}, { answers });
    const address = `/studies/example-ninemoss${path}`;
    const waiting = await ask(address);
    expect(waiting.status).toBe(202);
    expect(waiting.headers.get("retry-after")).toBe("2");
    const page = await waiting.text();
    expect(page).toContain("Being worked out");
    // the balance is there already; a page without scripts asks again by itself
    expect(page).toContain("/yr");
    expect(page).toContain('<meta http-equiv="refresh" content="2">');
    const ready = awaitedIn(page);
    release();
    expect((await ask(ready)).status).toBe(204);
    const done = await ask(address);
    expect(done.status).toBe(200);
    expect(await done.text()).toContain("Benefit–cost ratio");
  },
);

it("a page that is worked out is awaited with the other words of its address", async () => {
  const { answers, release } = heldBack();
  const { ask } = await serving(":memory:", {}, { answers });
  const page = await (await ask("/studies/example-ninemoss/report?part=board")).text();
  const ready = awaitedIn(page);
  expect(ready).toBe("/studies/example-ninemoss/report?part=board&awaited=1");
  release();
  expect((await ask(ready)).status).toBe(204);
});
