import { describe, expect, it } from "vitest";
import { askedRuns, usualRuns } from "../../src/app/runs.js";
import { firstStudy } from "../../src/editor/first-study.js";
import type { StudyToDraw } from "../../src/odds/messages.js";
import { readStudyText } from "../../src/study/reading/read.js";
import { shortFactsOf } from "../../src/study/short/read-facts.js";
import { entries } from "../study/short/facts.js";
import { inventedOdds } from "../trials/invented-odds.js";
import { serving } from "./serving.js";

type Served = Awaited<ReturnType<typeof serving>>;

const page = async ({ ask }: Served, fields: Readonly<Record<string, string>>) => {
  const response = await ask(`/start?${new URLSearchParams(fields)}`);
  return { status: response.status, html: await response.text() };
};

const finish = ({ ask }: Served, fields: Readonly<Record<string, string>>) =>
  ask("/start", {
    method: "POST",
    headers: { "Content-Type": "application/x-www-form-urlencoded" },
    body: new URLSearchParams(fields).toString(),
  });

const hasValue = (html: string, name: string, value: string) =>
  new RegExp(`name="${name}" value="${value}"`).test(html);

describe("the two screens of a first answer", () => {
  it("offer nothing as the answer to every question, and tell what stands for it", async () => {
    const { status, html } = await page(await serving(), {});
    expect(status).toBe(200);
    expect(html).toContain("I don’t know");
    // 25 m in feet: 25/0.3048 = 82
    expect(html).toContain("Typical 82 ft (26 to 197)");
    // 500 m in feet: 500/0.3048 = 1640.4
    expect(html).toContain("typical 1,640 ft (328 to 5,910)");
    // 400 ha in acres: 4,000,000/4046.86 = 988.4
    expect(html).toContain("Typical 988 acres (124 to 9,880)");
    const boats = await page(await serving(), { screen: "2" });
    expect(boats.html).toContain("typical 45% (20 to 75)");
  });

  it("go on with the balance of what was said, and keep the first screen's answers", async () => {
    const said = { act: "next", screen: "1", depth: "80", "intakes/0/use": "town", "intakes/0/flow": "20" };
    const { html } = await page(await serving(), said);
    expect(html).toContain("Screen 2 of 2");
    expect(html).toContain('class="balance-line"');
    expect(hasValue(html, "intakes/0/flow", "20")).toBe(true);
    expect(hasValue(html, "depth", "80")).toBe(true);
  });

  it("go back with what was typed on the second, and come back from the address alone", async () => {
    const served = await serving();
    const back = await page(served, { act: "back", screen: "2", depth: "80", launches: "9000" });
    expect(back.html).toContain("Screen 1 of 2");
    expect(hasValue(back.html, "launches", "9000")).toBe(true);
    const again = await page(served, { screen: "2", launches: "9000" });
    expect(again.html).toContain("Screen 2 of 2");
    expect(hasValue(again.html, "launches", "9000")).toBe(true);
  });

  it("stay where something is wrong, say it beside the field, and keep all", async () => {
    const wrong = { act: "next", screen: "1", depth: "23,5", launches: "9000", "plant/power": "lots" };
    const { html } = await page(await serving(), wrong);
    expect(html).toContain("Screen 1 of 2");
    expect(html).toContain("Write decimals with a point");
    expect(html).toContain('href="#f-plant-power"');
    const [soFar = ""] = /<section class="so-far"[\s\S]*?<\/section>/.exec(html) ?? [];
    expect(soFar).toContain("It appears here once what is listed below is mended");
    expect(soFar).not.toContain("Found");
    expect(hasValue(html, "depth", "23,5")).toBe(true);
    expect(hasValue(html, "launches", "9000")).toBe(true);
  });

  it("cut no name that is too long, but say how long it may be", async () => {
    const name = "Lake".repeat(100);
    const { html } = await page(await serving(), { act: "next", screen: "1", name });
    expect(html).toContain("at most 180 characters. Shorten it.");
    expect(hasValue(html, "name", name)).toBe(true);
  });

  it("make a whole study of the longest names, several times the same", async () => {
    const name = "L".repeat(180);
    const intakes = [0, 1, 2].map(() => ({ name, use: "town", tastes: "yes" }));
    const text = firstStudy(
      shortFactsOf(JSON.stringify({ name, intakes }), "s", entries),
      entries,
      "2026-01-02",
    );
    expect(readStudyText(text, "s").structures.filter(({ kind }) => kind === "intake")).toHaveLength(3);
  });

  it("tell what is wrong with the second of two intakes beside the second, though the first is empty", async () => {
    const { html } = await page(await serving(), {
      act: "next",
      "intakes#count": "2",
      "intakes/1/flow": "lots",
    });
    expect(html).toContain('id="f-intakes-1-flow-error"');
    expect(html).not.toContain('id="f-intakes-0-flow-error"');
  });

  it("have room for another intake", async () => {
    const { html } = await page(await serving(), { act: "more:intakes", "intakes#count": "1" });
    expect(html).toContain('name="intakes/1/flow"');
  });

  it("show typical values in the units that are chosen", async () => {
    const { html } = await page(await serving(), { units: "si" });
    expect(html).toContain("Typical 25 m (8 to 60)");
  });

  it("make a study, whose results are shown next", async () => {
    const served = await serving();
    const made = await finish(served, {
      ...{ act: "finish", name: "Blue Lake", "intakes/0/use": "there", "plant/present": "there" },
      ...{ launches: "9,000", author: "Ada" },
    });
    expect(made.status).toBe(303);
    expect(made.headers.get("location")).toBe("/studies/blue-lake-first-estimate");
    const entry = served.studies.find("blue-lake-first-estimate");
    expect(entry?.author).toBe("Ada");
    const { structures } = readStudyText(entry?.text ?? "", "first.yaml");
    expect(structures.map(({ kind }) => kind)).toContain("hydropower");
    expect(structures[0]?.kind).toBe("intake");
  });

  it("make none while something is wrong, and keep what was typed", async () => {
    const served = await serving();
    const before = served.studies.list().length;
    const made = await finish(served, { act: "finish", launches: "many", name: "Blue Lake" });
    expect(made.status).toBe(400);
    expect(hasValue(await made.text(), "launches", "many")).toBe(true);
    expect(served.studies.list()).toHaveLength(before);
  });

  it("keep two people apart: each makes a study of their own", async () => {
    const served = await serving();
    const both = await Promise.all(
      ["Ada", "Bob"].map((author) => finish(served, { name: "Blue Lake", author })),
    );
    const places = both.map(({ headers }) => headers.get("location"));
    expect(new Set(places).size).toBe(2);
  });
});

describe("a study that rests on typical values", () => {
  /** Odds in which what is not known of the docks moves the answer most. */
  const draw = async (study: StudyToDraw) => {
    const odds = await inventedOdds(study);
    const docks = "structures/docks/wettedArea";
    const bar = {
      id: docks,
      name: "",
      low: { input: 1, netBenefit: -9e5 },
      high: { input: 2, netBenefit: 0 },
    };
    return { ...odds, matters: { ...odds.matters, tornado: [bar], typicalShare: 0.48 } };
  };

  const made = async (drawn: typeof draw = draw) => {
    const served = await serving(":memory:", {}, { runs: askedRuns({ ...usualRuns, draw: drawn }) });
    await finish(served, { name: "Blue Lake", "docks/slips": "80" });
    return { ...served, home: "/studies/blue-lake-first-estimate" };
  };

  it("tells its range with its results, and what to replace first, a press away from the field", async () => {
    const { ask, home } = await made();
    const results = await (await ask(home)).text();
    expect(results).toContain("Its range is being worked out");
    expect(results).toContain(`data-awaits="${home}/odds.json"`);
    await expect.poll(async () => (await ask(`${home}/odds.json`)).status).toBe(200);
    expect(await (await ask(home)).text()).toContain("First estimate: a net benefit between");
    expect(results).toContain(`href="${home}/first"`);
    const first = await (await ask(`${home}/first`)).text();
    expect(first).toContain("values are typical, not yours");
    expect(first).toContain("48%");
    const [, link = ""] = /<ol class="replace-first"><li><a href="([^"]+)"/.exec(first) ?? [];
    const [address = "", id = ""] = link.split("#");
    expect(await (await ask(address)).text()).toContain(`id="${id}"`);
  });

  it("has its results, and what they rest on, while its range is being worked out", async () => {
    const { ask, home } = await made(() => new Promise(() => undefined));
    for (const path of [home, `${home}/first`]) {
      const page = await (await ask(path)).text();
      expect(page).toContain("Its range is being worked out");
      expect(page).toContain("values are typical, not yours");
    }
    expect(await (await ask(home)).text()).toContain("What would change the answer");
  });

  it("marks them in its forms until they are edited", async () => {
    const { ask, home, studies } = await made();
    const marks = async () =>
      (await (await ask(`${home}/edit/structures/0`)).text()).split("Typical, not yours.").length - 1;
    const before = await marks();
    expect(before).toBeGreaterThan(3);
    const entry = studies.find("blue-lake-first-estimate");
    const body = new URLSearchParams({
      ...{ "#base": "1", "#expected": "1", "#author": "Ada", act: "" },
      ...{ "structures/0/depth": "2", "structures/0/depth#unit": "ft" },
    });
    const saved = await ask(`${home}/edit/structures/0`, {
      method: "POST",
      headers: { "Content-Type": "application/x-www-form-urlencoded" },
      body: body.toString(),
    });
    expect(saved.status).toBe(303);
    expect(entry?.text).toContain("structures/docks/depth:");
    expect(studies.find("blue-lake-first-estimate")?.text).not.toContain("structures/docks/depth:");
    expect(await marks()).toBe(before - 1);
  });

  it("is no study of somebody who entered everything", async () => {
    const { ask } = await serving();
    expect(await (await ask("/studies/example-ninemoss")).text()).not.toContain("First estimate");
    expect(await (await ask("/studies/example-ninemoss/first")).text()).toContain("no typical values");
  });
});
