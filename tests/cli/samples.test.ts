import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { readStudyFile } from "../../src/study/reading/read.js";
import { examplePath } from "../study/example.js";
import { run } from "./command.js";

const folder = mkdtempSync(join(tmpdir(), "samples-command-"));
afterAll(() => rmSync(folder, { recursive: true }));

const study = join(folder, "lake.yaml");
const file = join(folder, "tows.csv");
/** The example without its clean years of 2025 and 2026, which then come from the file. */
const example = readFileSync(examplePath("sorrel-bend"), "utf8");
writeFileSync(study, example.replace(/^ +- \{ from: 2025,.*\n/m, ""));
const { startYear } = readStudyFile(study).money;
const tows = (year: number) =>
  Array.from({ length: 30 }, (_, index) => `${year}-07-${10 + (index % 20)};J. Doe;clear`);
const csv = `Taken;By;Seen\n${[startYear - 2, startYear - 1].flatMap(tows).join("\n")}\n`;
writeFileSync(file, csv);
const columns = ["--set", "date=Taken", "--set", "result=Seen", "--set", "all=planktonTows"];
const option = readStudyFile(study).options.at(-1)?.id ?? "";

describe("the samples command", () => {
  it("asks for columns and words of a first file, and changes nothing", async () => {
    const before = readFileSync(study, "utf8");
    expect((await run("samples", study, file)).stderr).toContain("line 1: found the columns Taken, By, Seen");
    const asked = await run("samples", study, file, ...columns);
    expect(asked.status).toBe(2);
    expect(asked.stderr).toContain("found the results “clear” in 60 lines");
    const strange = await run("samples", study, file, ...columns, "--set", "under=nobody");
    const long = await run("samples", study, file, ...columns, "--set", `origin=${"o".repeat(201)}`);
    expect(long.stderr).toContain("allowed: at most 200 characters");
    expect(strange.stderr).toContain('under is "nobody"; allowed: the id of an option: none, ');
    expect(readFileSync(study, "utf8")).toBe(before);
  });

  it("adds clean years with their counts, and the counts to an option's monitoring", async () => {
    const before = readStudyFile(study).boats.cleanPeriods.length;
    const words = ["--set", "results=clear=none", "--set", `watching=${option}`];
    const { status, stdout } = await run("samples", study, file, ...columns, ...words);
    expect(status).toBe(0);
    expect(stdout).toContain(`2 clean years: ${startYear - 2} to ${startYear - 1}.`);
    expect(stdout).toContain("Dropped and not kept: By.");
    expect(stdout).toContain(`${startYear - 1}: 30 plankton tows; 0 with mussels, 0 unconfirmed.`);
    const { boats, options } = readStudyFile(study);
    expect(boats.cleanPeriods.length).toBe(before + 1);
    expect(boats.cleanPeriods.at(-1)).toMatchObject({
      ...{ from: startYear - 2, to: startYear - 1 },
      origin: "60 plankton tows in tows.csv, none with mussels",
    });
    expect(options.at(-1)?.monitoring).toMatchObject({
      ...{ planktonTows: 30, settlementPlates: 12 },
      origin: `plankton tows: mean of ${startYear - 2} to ${startYear - 1} in tows.csv; others: invented: the tows and plates of the yearly lines`,
    });
    expect(readFileSync(study, "utf8")).not.toContain("Doe");
  });

  it("reads the next file without a setting, and does not count a year twice", async () => {
    const { status, stdout } = await run("samples", study, file);
    expect(status).toBe(0);
    expect(stdout).toContain(`${startYear - 1} is not added: it is in the study’s clean years already.`);
    expect(readStudyFile(study).boats.cleanPeriods.at(-1)?.to).toBe(startYear - 1);
  });

  it("refuses lines with faults, or goes on without them if asked to", async () => {
    writeFileSync(file, csv.replace(`${startYear - 1}-07-10`, `${startYear - 1}-02-30`));
    const { status, stderr } = await run("samples", study, file);
    expect([status, stderr]).toEqual([2, expect.stringContaining("allowed: a day that the month has.")]);
    expect((await run("samples", study, file, "--partly")).stdout).toContain("Left out: tows.csv, line 32");
  });
});
