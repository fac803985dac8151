import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it, vi } from "vitest";
import { projectRoot } from "../../src/project-root.js";
import { examplesFolder } from "../../src/report/document/assets.js";
import { renderReport } from "../../src/report/document/html.js";
import { inlineAssets } from "../../src/report/document/render-page.js";
import { computedAnew } from "../report/runs.js";
import { smallLakeText } from "../study/small-lake.js";
import { run } from "./command.js";

const folder = mkdtempSync(join(tmpdir(), "same-html-"));
const [here, elsewhere] = ["here", "elsewhere"].map((name) => join(folder, name)) as [string, string];
afterAll(() => rmSync(folder, { recursive: true }));

const locale = () => Intl.NumberFormat().resolvedOptions().locale;
const otherLanguage = locale().startsWith("tr") ? "C" : "tr_TR.UTF-8";

/** One far in the west, with a summer time, for this process, one far in the east, without, for the other. */
const zones = { here: "America/Los_Angeles", elsewhere: "Pacific/Kiritimati" } as const;
const hoursBehind = () => new Date("2026-01-01T00:00:00Z").getTimezoneOffset() / 60;

/**
 * Gives the command that writes the report, and then writes that on every structure of an example, without odds, which
 * take long and which a study of few has too.
 */
const script = `
  import { writeFileSync } from "node:fs";
  import { loadAssumptions } from "./dist/assumptions/load.js";
  import { commandLine } from "./dist/cli/command-line.js";
  import { assumptionsFolder } from "./dist/report/document/assets.js";
  import { renderReport } from "./dist/report/document/html.js";
  import { inlineAssets } from "./dist/report/document/render-page.js";
  import { runStudy } from "./dist/study/prepare/compute.js";
  import { readStudyFile } from "./dist/study/reading/read.js";
  const [few, example, folder] = process.argv.slice(1);
  process.exitCode = await commandLine(["report", few, "--out", folder + "/few.html"]);
  const run = runStudy(readStudyFile(example), loadAssumptions(assumptionsFolder));
  writeFileSync(folder + "/every.html", renderReport(run, inlineAssets()));
  const locale = (${locale})();
  const hours = (${hoursBehind})();
  writeFileSync(folder + "/place.json", JSON.stringify({ locale, hours }));
`;

beforeAll(async () => {
  for (const each of [here, elsewhere]) mkdirSync(each);
  const few = join(folder, "few.yaml");
  writeFileSync(few, smallLakeText.replace("study:\n", "study:\n  uncertainty: { mostFutures: 256 }\n"));
  const started = ["--input-type=module", "--eval", script, few, join(examplesFolder, "sorrel-bend.yaml")];
  execFileSync(process.execPath, [...started, elsewhere], {
    cwd: projectRoot,
    env: { ...process.env, TZ: zones.elsewhere, LANG: otherLanguage, LC_ALL: otherLanguage },
  });
  vi.stubEnv("TZ", zones.here);
  await run("report", few, "--out", join(here, "few.html"));
  writeFileSync(join(here, "every.html"), renderReport(computedAnew("sorrel-bend"), inlineAssets()));
  writeFileSync(join(here, "place.json"), JSON.stringify({ locale: locale(), hours: hoursBehind() }));
});
afterAll(() => vi.unstubAllEnvs());

function expectSame(name: string): void {
  const [first, second] = [here, elsewhere].map((each) => readFileSync(join(each, name)));
  expect(first?.length).toBeGreaterThan(100_000);
  expect(Buffer.compare(first ?? Buffer.of(), second ?? Buffer.of(1))).toBe(0);
}

it("the same study gives the same HTML to the byte in another process, time zone and language", () => {
  const [place, other] = [here, elsewhere].map((each) =>
    JSON.parse(readFileSync(join(each, "place.json"), "utf8")),
  );
  expect([place.hours, other.hours]).toEqual([8, -14]);
  expect(other.locale).not.toBe(place.locale);
  expectSame("few.html");
});

it("so does one with structures of every kind", () => {
  expectSame("every.html");
});
