import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { examplesFolder } from "../../src/report/document/assets.js";
import { smallLakeText } from "../study/small-lake.js";
import { run, runProgram } from "./command.js";

const folder = mkdtempSync(join(tmpdir(), "ramp-and-rack-cli-"));
afterAll(() => rmSync(folder, { recursive: true }));

const study = join(examplesFolder, "ninemoss.yaml");
const quickStudy = join(folder, "quick.yaml");

/** The example without what takes long to draw, of which few futures are drawn. */
beforeAll(() => {
  const few = "study:\n  uncertainty: { mostFutures: 256 }\n";
  writeFileSync(quickStudy, smallLakeText.replace("study:\n", few));
});

describe("the command line", () => {
  it("says that a sound study is complete", async () => {
    expect(await run("check", study)).toMatchObject({ status: 0, stderr: "" });
  });

  it("tells what is unusual of a study that is complete: an intake above the lake in winter, while it delivers", async () => {
    const above = join(folder, "above.yaml");
    const text = readFileSync("src/examples/sorrel-bend.yaml", "utf8");
    writeFileSync(above, text.replace('elevation: "2,086 ft"', 'elevation: "2,130 ft"'));
    const { status, stdout } = await run("check", above);
    expect(status).toBe(0);
    // The lake falls to 2,100 ft.
    expect(stdout).toContain(
      'structures[0 "city-intake"].elevation: City raw-water intake, water over it on the lowest day of a month with flow: −30 ft; usually at least 0 ft.',
    );
  });

  it("prints the comparison as text, with one answer by the odds", async () => {
    const { status, stdout } = await run("compare", quickStudy);
    expect(status).toBe(0);
    expect(stdout).toContain("costs more than it saves");
    expect(stdout).toContain("Staffed summer checks");
    expect(stdout).toContain(
      "Compared with “Signs and self-declaration”, the current program, it takes 1,300 more staff hours a year",
    );
    expect(stdout).toContain("Cost of one inspection");
    expect(stdout).toContain("nobody pays, so no fee can cover it");
    expect(stdout).toContain("on average over all that is uncertain");
    expect(stdout).toMatch(/^At central values the net benefit is /m);
  });

  it("prints the comparison as JSON that parses, with that answer beside the case at central values, and nothing on an error stream that is no terminal", () => {
    const { status, stdout, stderr } = runProgram(["compare", quickStudy, "--json"]);
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    const { baseline, headline, options, odds } = JSON.parse(stdout);
    expect(baseline).toMatchObject({ id: "none" });
    const asked = options.find(({ id }: { id: string }) => id === headline.requested);
    expect(headline.centralNetBenefit).toBeCloseTo(Number(asked.netBenefit), 2);
    expect(odds.futures).toBe(256);
  });

  it("compares with values set for once, and says what they change", async () => {
    const { status, stdout } = await run("compare", quickStudy, "--set", "money.discountRate=6 %/yr");
    expect(status).toBe(0);
    expect(stdout).toContain("Set for this run only: money.discountRate = 6 %/yr. The file is unchanged.");
    expect(stdout).toContain("The board’s figures before and after, at central values");
  });

  it("sweeps over values in steps and in lists, as CSV and as JSON", async () => {
    const rates = "money.discountRate=1..3 by 0.5 %/yr";
    const { stdout } = await run("sweep", quickStudy, "--set", rates, "--set", "arrival.shape=1,2");
    const lines = stdout.trim().split("\n");
    expect(lines).toHaveLength(1 + 5 * 2 * 3);
    expect(lines.at(-1)).toMatch(/^3 %\/yr,2,summer-checks,/);
    const json = await run("sweep", quickStudy, "--json", "--set", "arrival.shape=1;2");
    expect(JSON.parse(json.stdout).points).toHaveLength(2);
  });

  it.each([
    ["an assignment without a value", ["compare", study, "--set", "arrival.shape="], "ID=VALUE"],
    ["an unknown id", ["compare", study, "--set", "arrival.shap=1"], "arrival.shape"],
    ["a sweep of nothing", ["sweep", study], "--set ID=VALUES is missing"],
    [
      "steps that go nowhere",
      ["sweep", study, "--set", "arrival.shape=3..1 by 1"],
      "from the smaller to the larger",
    ],
    ["too fine steps", ["sweep", study, "--set", "arrival.shape=1..2 by 0.00001"], "at most 2,000 points"],
  ])("refuses %s", async (_what, args, words) => {
    const { status, stderr } = await run(...args);
    expect(status).toBe(2);
    expect(stderr).toContain(words);
  });

  it("writes the report as one HTML file, its futures drawn as the study says, also where none are asked for", async () => {
    const out = join(folder, "report.html");
    const { status, stdout, stderr } = await run("report", quickStudy, "--without-odds", "--out", out);
    expect(status).toBe(0);
    expect(stdout).toContain(`Wrote ${out}`);
    expect(stderr).toContain("--without-odds is ignored");
    const report = readFileSync(out, "utf8");
    expect(report).toContain("Appendix C. Assumptions");
    expect(report).toContain("256 outcomes were simulated");
  });

  it("writes the method document, and with a study its own sheets", async () => {
    const out = join(folder, "method.html");
    expect(await run("method", "--out", out)).toMatchObject({ status: 0, stdout: `Wrote ${out}\n` });
    expect(readFileSync(out, "utf8")).not.toContain("Sheets of");
    expect((await run("method", study, "--out", out)).status).toBe(0);
    expect(readFileSync(out, "utf8")).toContain('<h2 id="own-sheets">Sheets of Ninemoss Lake');
  });

  it("tells of sections that went to the method document, and goes on", async () => {
    const old = join(folder, "old.yaml");
    writeFileSync(old, `${readFileSync(study, "utf8")}\nreport: { leaveOut: [worked] }\n`);
    const { status, stdout } = await run("check", old);
    expect(status).toBe(0);
    expect(stdout).toContain(
      'report.leaveOut[0]: "worked", which is in the method document now; usually a section that reports have. It is ignored, and may stay or go.',
    );
  });

  it("draws a study's futures, with as many workers as are asked for", async () => {
    const { status, stdout } = await run("odds", quickStudy, "--futures", "256", "--workers", "1");
    expect(status).toBe(0);
    expect(stdout).toContain("256 simulated outcomes");
    expect(stdout).toContain("Chance that it pays");
  });

  it("gives the odds as JSON that parses", async () => {
    const { stdout } = await run("odds", quickStudy, "--futures", "256", "--seed", "3", "--json");
    expect(JSON.parse(stdout)).toMatchObject({ futures: 256, lakes: 32, settings: { seed: 3 } });
  });

  it.each([
    ["--futures", "0"],
    ["--futures", "many"],
    ["--workers", "0"],
    ["--seed", "-1"],
  ])("refuses %s=%s", async (name, value) => {
    const { status, stderr } = await run("odds", study, `${name}=${value}`);
    expect(status).toBe(2);
    expect(stderr).toContain(`${name} is "${value}"; allowed: a whole number from`);
  });

  it("prints the JSON Schema of a study", async () => {
    expect(JSON.parse((await run("schema")).stdout)).toMatchObject({ type: "object" });
  });

  it("ends with 2, a message and no output for a study with mistakes", () => {
    const wrong = join(folder, "wrong.yaml");
    writeFileSync(
      wrong,
      readFileSync(study, "utf8").replace("minimumElevation: 411.4 m", "minimumElevation: 500 m"),
    );
    const before = readdirSync(folder).length;
    const out = join(folder, "wrong.html");
    const { status, stdout, stderr } = runProgram(["report", wrong, "--out", out]);
    expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
    expect(stderr).toContain(
      "lake.minimumElevation: found 500 m; allowed: an elevation below the maximum, 412.6 m.",
    );
    expect(stderr).not.toMatch(/\n\s+at /);
    expect(existsSync(out)).toBe(false);
    expect(readdirSync(folder)).toHaveLength(before);
  });

  it.each([
    ["an unknown command", ["paint", study], "Unknown command"],
    ["a missing study", ["check"], "STUDY is missing"],
    ["a file that is not there", ["check", "none.yaml"], "no such file"],
    ["an unknown option", ["check", study, "--loud"], "--loud"],
    ["an ending that is no report", ["report", study, "--out", "report.docx"], "ends in .pdf or .html"],
    ["an ending that is no method document", ["method", "--out", "m.docx"], "ends in .pdf or .html"],
    ["an unknown month", ["explain", study, "--month", "moon"], "allowed: jan, feb"],
    ["a structure without sheets", ["explain", study, "--part", "moon"], '--part has "moon"; allowed: '],
    ["own values from nowhere", ["own-values", study], "--from FILE"],
    ["an unknown paper", ["report", study, "--out", "r.pdf", "--paper", "a3"], "letter or a4"],
  ])("ends with 2 and says what is allowed for %s", async (_what, args, words) => {
    const { status, stderr } = await run(...args);
    expect(status).toBe(2);
    expect(stderr).toContain(words);
  });

  it("writes what is raised or under a root in brackets", async () => {
    const { stdout } = await run("explain", study, "--month", "aug");
    expect(stdout).toMatch(/Mean shell length +λ = 1000 √\(c\/N\) /);
    expect(stdout).toMatch(/Mass of one +W = 2\.718281828\^\(a \+ b ln\(L\)\)\/1000 /);
    expect(stdout).toMatch(/left side +1\/√f /);
  });

  it("shows how each command is called, with an example that names it", async () => {
    const [, ...calls] = (await run()).stdout.matchAll(/^ {2}ramp-and-rack ([\w-]+)/gm);
    const unknown = (await run("paint")).stderr;
    for (const name of new Set(calls.map(([, command = ""]) => command))) {
      expect(unknown).toContain(name);
      const { status, stdout } = await run(name, "--help");
      expect(status).toBe(0);
      expect(stdout).toMatch(
        new RegExp(`^Usage:\n  ramp-and-rack ${name}[\\s\\S]*Example:\n  ramp-and-rack ${name}`),
      );
    }
  });

  it("shows its usage when asked for nothing", async () => {
    expect((await run()).stdout).toContain("Usage:");
  });
});
