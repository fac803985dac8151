import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { edited } from "../../src/editor/study-text.js";
import { runStudy } from "../../src/study/prepare/compute.js";
import { readStudyText } from "../../src/study/reading/read.js";
import type { Searcher } from "../../src/web/search/search-routes.js";
import { patience } from "../patience.js";
import { assumptions } from "../report/runs.js";
import { searchedHere } from "../report/searched-here.js";
import { smallLakeText } from "../study/small-lake.js";
import { serving } from "./serving.js";

const example = readFileSync(new URL("../../src/examples/thistledown.yaml", import.meta.url), "utf8");
const text = edited(example, [
  { at: ["search"], value: { levels: { lowest: ["3,186 ft"], from: ["11-01"], days: [30, 60] } } },
]);

const search: Searcher = async (study) => searchedHere(study);

async function found(searched = text) {
  const web = await serving(":memory:", {}, { search });
  const writer = { author: "Ada", note: "", origin: "form" } as const;
  const { id } = web.studies.create(searched, writer);
  const here = `/studies/${id}/search`;
  await expect.poll(async () => (await web.ask(`${here}.json`)).status, { timeout: patience }).toBe(200);
  return { ...web, id, here };
}

it("tells of an infested lake which levels cost least, and makes a drawdown an option of the study", async () => {
  const { here, id, ...web } = await found();
  const page = await (await web.ask(here)).text();
  expect(page).toContain("other schedules of levels");
  expect(page).toContain("3,186 ft by 1 Nov, held for 30 days");
  expect(page).toContain("Draw the lake down no faster than");
  expect(page).not.toContain("table-search-frontier");
  const value = /<option value="(drawdown-\d+)">/.exec(page)?.[1] ?? "";
  const chosen = await web.ask(`${here}/option`, {
    method: "POST",
    body: new URLSearchParams({ point: value }),
  });
  expect(chosen.headers.get("location")).toBe(`/studies/${id}/edit/options/2`);
  const after = readStudyText(web.studies.find(id)?.text ?? "", "study.yaml");
  const { comparison } = runStudy(after, assumptions);
  const option = comparison.options.at(-1)?.result.option;
  expect(option?.schedule).toBe(after.lake.otherSchedules[0]?.id);
  expect(after.lake.otherSchedules[0]?.drawdown?.length).toBeGreaterThan(3);
});

const uninfested = edited(smallLakeText, [{ at: ["search"], value: { vary: ["hours"] } }]);

const dot = /<a href="([^"]*#make-option)" aria-label="Choose ([^"]*)">/g;

it("leads from each dot of the frontier to its program in the form that makes it an option", async () => {
  const { here, id, ...web } = await found(uninfested);
  const page = await (await web.ask(here)).text();
  const dots = [...page.matchAll(dot)].map(([, href = "", name = ""]) => ({ href, name }));
  expect(dots.length).toBeGreaterThan(2);
  expect(dots).toHaveLength([...page.matchAll(/class="program"/g)].length);
  expect(page).toContain(`<form method="post" action="${here}/option" id="make-option">`);
  const last = dots.at(-1);
  const [address = ""] = last?.href.replaceAll("&#x3D;", "=").split("#") ?? [];
  const chosen = await (await web.ask(address)).text();
  const selected = [...chosen.matchAll(/<option value="([^"]*)" selected>([^<]*)<\/option>/g)];
  expect(selected.map(([, , name]) => name)).toEqual([last?.name]);
  const added = await web.ask(`${here}/option`, {
    method: "POST",
    body: new URLSearchParams({ point: selected[0]?.[1] ?? "" }),
  });
  expect(added.headers.get("location")).toMatch(new RegExp(`^/studies/${id}/edit/options/\\d+$`));
});

it("refuses what the search did not find", async () => {
  const { here, ...web } = await found();
  const chosen = await web.ask(`${here}/option`, {
    method: "POST",
    body: new URLSearchParams({ point: "drawdown-99" }),
  });
  expect(chosen.status).toBe(404);
});
