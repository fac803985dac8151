import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { examplesFolder, projectRoot } from "../../src/report/document/assets.js";
import { smallLakeText } from "../study/small-lake.js";

const folder = mkdtempSync(join(tmpdir(), "same-html-"));
afterAll(() => rmSync(folder, { recursive: true }));

const elsewhere = [
  { TZ: "Pacific/Kiritimati", LANG: "tr_TR.UTF-8", LC_ALL: "tr_TR.UTF-8" },
  { TZ: "America/Los_Angeles", LANG: "C", LC_ALL: "C" },
] as const;

function expectSame([first, second]: readonly Buffer[]): void {
  expect(first?.length).toBeGreaterThan(100_000);
  expect(Buffer.compare(first ?? Buffer.of(), second ?? Buffer.of(1))).toBe(0);
}

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
`;

const folders = elsewhere.map(({ LANG }) => join(folder, LANG));
const reports = (name: string) => folders.map((each) => readFileSync(join(each, name)));

beforeAll(() => {
  const few = join(folder, "few.yaml");
  writeFileSync(few, smallLakeText.replace("study:\n", "study:\n  uncertainty: { mostFutures: 256 }\n"));
  const studies = [few, join(examplesFolder, "sorrel-bend.yaml")];
  elsewhere.forEach((environment, place) => {
    const into = folders[place] ?? folder;
    mkdirSync(into);
    execFileSync(process.execPath, ["--input-type=module", "--eval", script, ...studies, into], {
      cwd: projectRoot,
      env: { ...process.env, ...environment },
    });
  });
});

it("the same study gives the same HTML to the byte in another process, time zone and language", () => {
  expectSame(reports("few.html"));
});

it("so does one with structures of every kind", () => {
  expectSame(reports("every.html"));
});
