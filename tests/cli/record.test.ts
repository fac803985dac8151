import {
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { readStudyFile } from "../../src/study/reading/read.js";
import { examplePath } from "../study/example.js";
import { datesFrom } from "../study/records.js";
import { run } from "./command.js";

const folder = mkdtempSync(join(tmpdir(), "record-command-"));
const data = process.env.RAMP_AND_RACK_DATA;
process.env.RAMP_AND_RACK_DATA = join(folder, "data");
afterAll(() => {
  process.env.RAMP_AND_RACK_DATA = data;
  if (data === undefined) delete process.env.RAMP_AND_RACK_DATA;
  rmSync(folder, { recursive: true });
});

const study = join(folder, "lake.yaml");
const file = join(folder, "gauge.txt");
copyFileSync(examplePath("thistledown"), study);

/** Of an invented network, in feet within the limits of the example, with a gap of twelve days in 2011. */
const exported = (last: string) => {
  const days = datesFrom("2010-01-01", last).filter((date) => !/^2011-05-(0[3-9]|1[0-4])/.test(date));
  const lines = days.map((date) => `GN\t${date}\t${date === "2012-01-05" ? "Ice" : "3200.50"}\tA`);
  return `# "Invented"\nagency\tdatetime\tlevel_00003\tcode\n5s\t20d\t14n\t10s\n${lines.join("\n")}\n`;
};
writeFileSync(file, exported("2013-12-31"));
const settings = ["--set", "date=datetime", "--set", "level=level_00003", "--set", "unit=ft"];
const recordFiles = () => readdirSync(join(folder, "records"));

describe("the record command", () => {
  it("asks before a schedule gives way, and changes nothing", async () => {
    const { status, stderr } = await run("record", study, file, ...settings);
    expect(status).toBe(2);
    expect(stderr).toContain("lake.drawdown: found a schedule that the lake follows");
    expect(readFileSync(study, "utf8")).toBe(readFileSync(examplePath("thistledown"), "utf8"));
  });

  it("tells the columns of a file that is read for the first time", async () => {
    const { status, stderr } = await run("record", study, file, "--replace");
    expect(status).toBe(2);
    expect(stderr).toContain("found the columns agency, datetime, level_00003, code");
    expect(stderr).toContain('--set date="datetime" --set level="level_00003"');
  });

  it("asks for words that may mean ice, by line and count", async () => {
    const { stderr } = await run("record", study, file, "--replace", ...settings);
    expect(stderr).toContain('found "Ice" in 1 line, the first in line 726;');
    expect(stderr).toContain("--set missing=WORD,WORD");
  });

  it("keeps the record beside the study, which remembers how it was read", async () => {
    const asked = [...settings, "--set", "missing=Ice,Eqp", "--set", "fillGapsUpTo=3"];
    const { status, stdout } = await run("record", study, file, "--replace", ...asked);
    expect(status).toBe(0);
    expect(stdout).toContain("3 years can be used: 2010, 2012 to 2013.");
    expect(stdout).toContain("Left out: 2011 (no level from 2011-05-03 to 2011-05-14).");
    expect(stdout).toContain("Joined across, having no level: 1 day, in 2012.");
    const [kept = "", ...others] = recordFiles();
    expect(others).toEqual([]);
    expect(readFileSync(join(folder, "records", kept), "utf8")).toMatch(
      /^date,elevation \(ft\)\n2010-01-01,3200.50\n/,
    );
    const { record } = readStudyFile(study).lake;
    expect(record).toMatchObject({
      kept: kept.slice(0, -4),
      name: "gauge.txt",
      export: { date: "datetime", level: "level_00003", unit: "ft", missing: ["Ice", "Eqp"] },
      fillGapsUpTo: 3,
      origin: "File gauge.txt",
    });
    expect(readFileSync(study, "utf8").split("\n").length).toBeLessThan(250);
  });

  it("reads next year's file without a setting", async () => {
    const next = join(folder, "next.txt");
    writeFileSync(next, exported("2014-12-31"));
    const { status, stdout } = await run("record", study, next);
    expect(status).toBe(0);
    expect(stdout).toContain("4 years can be used: 2010, 2012 to 2014.");
    expect(recordFiles()).toHaveLength(2);
    expect(readStudyFile(study).lake.record).toMatchObject({ name: "next.txt", origin: "File next.txt" });
  });

  it.each([
    [
      "a column is gone",
      (text: string) => text.replace("level_00003", "level_00011"),
      'no column "level_00003"',
    ],
    [
      "a day is 30 February",
      (text: string) => text.replace("2010-02-28", "2010-02-30"),
      'gauge.txt, line 62: found "2010-02-30"',
    ],
    ["nothing is in the file", () => "", "found an empty file"],
    [
      "a level is impossible",
      (text: string) => text.replace("3200.50", "9200.50"),
      "no farther above full pool",
    ],
  ])("refuses a file in which %s, and leaves the study as it is", async (_what, change, told) => {
    const before = readFileSync(study, "utf8");
    writeFileSync(file, change(exported("2013-12-31")));
    const { status, stderr } = await run("record", study, file);
    expect(status).toBe(2);
    expect(stderr).toContain(told);
    expect(readFileSync(study, "utf8")).toBe(before);
  });

  it("keeps what is sound of a file if asked to, and lists what is not", async () => {
    writeFileSync(file, exported("2013-12-31").replace("2010-02-28", "2010-02-30"));
    const { status, stdout } = await run("record", study, file, "--partly");
    expect(status).toBe(0);
    expect(stdout).toContain(
      'Left out: gauge.txt, line 62: found "2010-02-30"; allowed: a day that the month has.',
    );
  });

  it.each(["soon", "93", "-1", "1.5"])("refuses gaps of up to %s days, and changes nothing", async (days) => {
    const before = readFileSync(study, "utf8");
    const { status, stderr } = await run("record", study, file, "--set", `fillGapsUpTo=${days}`, "--partly");
    expect([status, readFileSync(study, "utf8")]).toEqual([2, before]);
    expect(stderr).toContain(`fillGapsUpTo: found ${days === "soon" ? '"soon"' : days}; allowed: `);
  });

  it("refuses another encoding by its line", async () => {
    writeFileSync(file, Buffer.concat([Buffer.from("date,level\n"), Buffer.from([0x50, 0xfc, 0x0a])]));
    const { stderr } = await run("record", study, file);
    expect(stderr).toContain("line 2: found bytes in another encoding; allowed: text in UTF-8.");
  });

  it("reads a record for another schedule, which has to be there", async () => {
    const { status, stderr } = await run("record", study, file, "--schedule", "none");
    expect(status).toBe(2);
    expect(stderr).toContain('--schedule is "none"');
  });
});

describe("a study with a kept record", () => {
  it("is imported and exported with it, to the byte", async () => {
    const { stdout } = await run("import", study);
    const id = /Kept as (\S+)\./.exec(stdout)?.[1] ?? "";
    expect(stdout).not.toContain("not complete");
    const out = join(folder, "out");
    mkdirSync(out);
    await run("export", id, "--out", join(out, "lake.yaml"));
    expect(readFileSync(join(out, "lake.yaml"))).toEqual(readFileSync(study));
    expect(readStudyFile(join(out, "lake.yaml")).lake.record?.levels.years.length).toBeGreaterThan(0);
    const [kept = ""] = readdirSync(join(out, "records"));
    expect(readFileSync(join(out, "records", kept))).toEqual(readFileSync(join(folder, "records", kept)));
  });
});
