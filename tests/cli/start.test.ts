import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { readStudyFile } from "../../src/study/reading/read.js";
import { run, runProgram } from "./command.js";

const folder = mkdtempSync(join(tmpdir(), "ramp-and-rack-start-"));
afterAll(() => rmSync(folder, { recursive: true }));

const at = (name: string) => join(folder, name);
const start = (...args: string[]) => run("start", ...args);

describe("the start command", () => {
  it("writes a short file to begin with, and a full study from it", async () => {
    expect((await start("--example", "--out", at("lake.short.yaml"))).status).toBe(0);
    const made = await start(at("lake.short.yaml"), "--out", at("lake.yaml"));
    expect(made).toMatchObject({ status: 0, stderr: "" });
    expect(made.stdout).toContain("typical values to replace with your own");
    // Two intakes, the plant, docks, three ramps and what the whole lake pays
    expect(readStudyFile(at("lake.yaml")).structures).toHaveLength(8);
  });

  it("asks where there is no file, and again where an answer cannot be", () => {
    const answers = ["Blue Lake", "si", "Nowhere", "Idaho", "12,5 m", "500 m", ...Array<string>(7).fill("")];
    const input = [...answers, "one of them", "y", "town", "0.3 m3/s"].join("\n");
    const made = runProgram(["start", "--out", "asked.yaml"], { cwd: folder, input });
    expect(made.status).toBe(0);
    expect(made.stdout).toContain('found "Nowhere"');
    expect(made.stdout).toContain("Write decimals with a point");
    expect(made.stdout).toContain('Found "one of them"; allowed: y or n.');
    const { lake, structures } = readStudyFile(at("asked.yaml"));
    expect(lake.name).toBe("Blue Lake");
    expect(structures[0]).toMatchObject({ kind: "intake", demand: { jul: { text: "0.3 m3/s" } } });
  });

  it.each([
    ["empty.short.yaml", "", "found nothing"],
    ["sheet.short.yaml", "summerLevel;2136\nramps;3\n", "a text without fields"],
    ["wrong.short.yaml", "depth: deep\nramps: 2.5\n", "2 problems"],
  ])("says what is wrong with a file and writes nothing: %s", async (name, text, found) => {
    writeFileSync(at(name), text);
    const made = await start(at(name), "--out", at("nothing.yaml"));
    expect(made.status).toBe(2);
    expect(made.stderr).toContain(found);
    expect(existsSync(at("nothing.yaml"))).toBe(false);
  });

  it("tells what is unusual of facts that can be together, and writes the study all the same", async () => {
    writeFileSync(at("odd.short.yaml"), "summerLevel: 1000 ft\nwinterLevel: 1010 ft\nramps: 1\n");
    const made = await start(at("odd.short.yaml"), "--out", at("odd.yaml"));
    expect(made.status).toBe(0);
    expect(made.stdout).toMatch(/Look again at “.*winter.*”: Above the level in summer, 1000 ft/);
    expect(existsSync(at("odd.yaml"))).toBe(true);
  });

  it("says where a short file is missing, and that it needs a place to write to", async () => {
    expect((await start(at("none.short.yaml"), "--out", at("nothing.yaml"))).stderr).toContain(
      "no such file",
    );
    expect((await start("--example")).stderr).toContain("--out FILE is missing");
  });

  it("writes over nothing that is there", async () => {
    writeFileSync(at("mine.yaml"), "mine");
    expect(await start(at("lake.short.yaml"), "--out", at("mine.yaml"))).toMatchObject({ status: 2 });
    expect(readFileSync(at("mine.yaml"), "utf8")).toBe("mine");
  });

  it("writes the example with what each fact is", () => {
    expect(readFileSync(at("lake.short.yaml"), "utf8")).toContain("# the largest");
  });
});
