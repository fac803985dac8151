import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { edited } from "../../src/editor/study-text.js";
import { lakeTerms } from "../../src/model/search/lake-terms.js";
import { cheapestLevels } from "../../src/study/levels/level-plan.js";
import { drawnStudy } from "../../src/study/odds/draws.js";
import { runStudy } from "../../src/study/prepare/compute.js";
import { readStudyText } from "../../src/study/reading/read.js";
import { levelsIn, searchedIn, searchResult, studySearch } from "../../src/study/search/study-search.js";
import type { Searcher } from "../../src/web/search/search-routes.js";
import { patience } from "../patience.js";
import { assumptions } from "../report/runs.js";
import { serving } from "./serving.js";

const example = readFileSync(new URL("../../src/examples/thistledown.yaml", import.meta.url), "utf8");
const text = edited(example, [
  { at: ["search"], value: { levels: { lowest: ["3,186 ft"], from: ["11-01"], days: [30, 60] } } },
]);

/** In this thread, in one draw of the lake. */
const search: Searcher = async ({ document, settings }) => {
  const found = studySearch(document, assumptions);
  const levels = levelsIn(found, 0, 1);
  const drawn = drawnStudy(document, assumptions, settings);
  const terms = [lakeTerms(drawn.drawn(0, 0), searchedIn(found, cheapestLevels(levels)?.id))];
  return searchResult(found, { levels, terms });
};

async function found() {
  const web = await serving(":memory:", {}, { search });
  const writer = { author: "Ada", note: "", origin: "form" } as const;
  const { id } = web.studies.create(text, writer);
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

it("refuses what the search did not find", async () => {
  const { here, ...web } = await found();
  const chosen = await web.ask(`${here}/option`, {
    method: "POST",
    body: new URLSearchParams({ point: "drawdown-99" }),
  });
  expect(chosen.status).toBe(404);
});
