import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, it } from "vitest";
import { examplesFolder, projectRoot } from "../../src/report/document/assets.js";
import { smallLakeText } from "../study/small-lake.js";
import { runProgram } from "./command.js";

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

it("the same study gives the same HTML to the byte in another process, time zone and language", () => {
  const study = join(folder, "quick.yaml");
  writeFileSync(study, smallLakeText.replace("study:\n", "study:\n  uncertainty: { mostFutures: 1024 }\n"));
  const reports = elsewhere.map((environment) => {
    const out = join(folder, `${environment.LANG}.html`);
    expect(runProgram(["report", study, "--out", out], { environment })).toMatchObject({ status: 0 });
    return readFileSync(out);
  });
  expectSame(reports);
});

/** Writes the report on every structure of an example, without odds, which take long and which a study of few has too. */
const script = `
  import { loadAssumptions } from "./dist/assumptions/load.js";
  import { assumptionsFolder } from "./dist/report/document/assets.js";
  import { inlineAssets, renderReport } from "./dist/report/document/html.js";
  import { runStudy } from "./dist/study/prepare/compute.js";
  import { readStudyFile } from "./dist/study/reading/read.js";
  const run = runStudy(readStudyFile(process.argv[1]), loadAssumptions(assumptionsFolder));
  process.stdout.write(renderReport(run, inlineAssets()));
`;

it("so does one with structures of every kind", () => {
  const study = join(examplesFolder, "sorrel-bend.yaml");
  const reports = elsewhere.map((environment) =>
    execFileSync(process.execPath, ["--input-type=module", "--eval", script, study], {
      cwd: projectRoot,
      env: { ...process.env, ...environment },
      maxBuffer: 2 ** 26,
    }),
  );
  expectSame(reports);
});
