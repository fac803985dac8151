import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { vesselChances } from "../../src/study/prepare/vessel-chances.js";
import { readStudyFile } from "../../src/study/reading/read.js";
import { assumptions } from "../report/runs.js";
import { examplePath } from "../study/example.js";
import { run } from "./command.js";

const folder = mkdtempSync(join(tmpdir(), "log-command-"));
afterAll(() => rmSync(folder, { recursive: true }));

const study = join(folder, "lake.yaml");
const file = join(folder, "boats.csv");
copyFileSync(examplePath("sorrel-bend"), study);

/** A class of which no boat is entered as certain: 100 screened, 10 held, 5 with mussels. */
const lines = Array.from({ length: 100 }, (_, index) =>
  [
    `7/${(index % 28) + 1}/2027`,
    "Out of state",
    "J. Doe",
    index < 10 ? "yes" : "no",
    index < 5 ? "Y" : "N",
    "2.5",
  ].join(),
);
const log = `Date,Kind,Owner,Held,Mussels,Min\n${lines.join("\n")}\n`;
writeFileSync(file, log);
const columns = ["date=Date", "class=Kind", "setAside=Held", "fouled=Mussels", "quickCheck=Min"];
const settings = [...columns, "classes=Out of state=infested-30-days"].flatMap((each) => ["--set", each]);

const meanOf = (path: string) => {
  const { boats } = readStudyFile(path);
  const index = boats.classes.findIndex(({ id }) => id === "infested-30-days");
  const assumed = (id: string) => assumptions.entries.get(id)?.value ?? Number.NaN;
  return vesselChances(boats, assumed)[index]?.fouled;
};

describe("the log command", () => {
  it("asks for the columns and classes of a first file", async () => {
    const first = await run("log", study, file);
    expect(first.status).toBe(2);
    expect(first.stderr).toContain("line 1: found the columns Date, Kind, Owner, Held, Mussels, Min");
    const second = await run("log", study, file, ...columns.flatMap((each) => ["--set", each]));
    expect(second.stderr).toContain("found the classes “Out of state” in 100 lines");
    const mapped = [...columns, "classes=Out of state=Infested"].flatMap((each) => ["--set", each]);
    const third = await run("log", study, file, ...mapped);
    expect(third.stderr).toContain('classes.Out of state: found "Infested"; allowed: lower-case letters');
    expect(third.stderr).not.toContain("found the columns");
    expect(readFileSync(study, "utf8")).toBe(readFileSync(examplePath("sorrel-bend"), "utf8"));
  });

  it("adds the season to those before, from which the class's chance is learned", async () => {
    const before = meanOf(study) ?? Number.NaN;
    const { status, stdout } = await run("log", study, file, ...settings, "--set", "stations=full-season");
    expect(status).toBe(0);
    expect(stdout).toContain("100 lines summed: 100 boats screened, 10 held, 5 with mussels.");
    expect(stdout).toContain("Dropped and not kept: Owner.");
    const { boats, options } = readStudyFile(study);
    expect(boats.seasons?.csv).toContain("2026,infested-30-days,150,121,4\n");
    expect(boats.seasons?.csv).toContain("2027,infested-30-days,100,10,5\n");
    expect(readFileSync(study, "utf8")).not.toContain("Doe");
    const after = meanOf(study) ?? Number.NaN;
    expect(before).toBeGreaterThan(0);
    expect(after).toBeGreaterThan(before);
    const station = options.find(({ id }) => id === "full-season")?.station;
    expect(station?.service.quickCheck.text).toBe("2.5 min");
    expect(station?.service.setAsideShare.text).toBe("10.0 %");
  });

  it("takes a word with a semicolon or an equals sign in quotes, and says so where it asks for it", async () => {
    const own = join(folder, "words.yaml");
    copyFileSync(examplePath("sorrel-bend"), own);
    const words = join(folder, "words.csv");
    writeFileSync(words, log.replaceAll("Out of state", "Out; of=state").replace("Out; of=state", "Local"));
    const asked = await run("log", own, words, ...columns.flatMap((each) => ["--set", each]));
    expect(asked.stderr).toContain("A word with “;” or “=” stands in single quotes.");
    const classes = "classes=Local=long-moored; 'Out; of=state'=infested-30-days";
    const { status, stderr } = await run(
      ...["log", own, words],
      ...[...columns, classes].flatMap((each) => ["--set", each]),
    );
    expect([status, stderr]).toEqual([0, ""]);
    expect(readStudyFile(own).boats.seasons?.csv).toContain("2027,infested-30-days,99,");
  });

  it("reads next season's file without a setting, and replaces a season that it has again", async () => {
    writeFileSync(file, log.replaceAll("2027,", "2028,"));
    expect((await run("log", study, file)).status).toBe(0);
    const { stdout } = await run("log", study, file);
    expect(stdout).toContain("Seasons of the log that the file replaces: 2028.");
    expect(readStudyFile(study).boats.seasons?.log.seasons).toEqual([2024, 2025, 2026, 2027, 2028]);
  });

  it("refuses lines with faults, or leaves them out if asked to and lists them", async () => {
    const before = readFileSync(study, "utf8");
    writeFileSync(file, log.replace("7/3/2027", "2/30/2027"));
    const { status, stderr } = await run("log", study, file);
    expect(status).toBe(2);
    expect(stderr).toContain('boats.csv, line 4: found date "2/30/2027"; allowed: a day that the month has.');
    expect(readFileSync(study, "utf8")).toBe(before);
    const { stdout } = await run("log", study, file, "--partly");
    expect(stdout).toContain("99 lines summed");
    expect(stdout).toContain("Left out: boats.csv, line 4");
  });
  it("takes no log in of which no line can be read", async () => {
    const before = readFileSync(study, "utf8");
    writeFileSync(file, log.replaceAll("7/", "17/"));
    const { status, stderr } = await run("log", study, file, "--partly", "--set", "dates=month-first");
    expect([status, readFileSync(study, "utf8")]).toEqual([2, before]);
    expect(stderr).toContain('boats.csv, line 2: found date "17/1/2027"');
  });

  it("writes nothing where the study would contradict itself", async () => {
    const own = join(folder, "sealed.yaml");
    copyFileSync(examplePath("sorrel-bend"), own);
    const before = readFileSync(own, "utf8");
    const boats = join(folder, "sealed.csv");
    writeFileSync(boats, log);
    // Boats of this class never left the lake, and the study enters a chance of 0 % for them.
    const classes = "classes=Out of state=never-left";
    const sets = [...columns, classes].flatMap((each) => ["--set", each]);
    const { status, stderr } = await run("log", own, boats, ...sets);
    expect([status, readFileSync(own, "utf8")]).toEqual([2, before]);
    expect(stderr).toContain("Nothing was written. sealed.yaml with sealed.csv: 1 problem.");
    expect(stderr).toContain('"never-left", whose share fouled is 0 %');
  });
});
