import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { projectRoot } from "../../src/report/document/assets.js";
import { readStudyFile } from "../../src/study/reading/read.js";

const folder = mkdtempSync(join(tmpdir(), "ramp-and-rack-start-"));
afterAll(() => rmSync(folder, { recursive: true }));

/** The program itself, with what is typed on its input. */
function start(args: readonly string[], typed = "") {
  const program = [join(projectRoot, "dist", "cli", "main.js"), "start", ...args];
  const { status, stdout, stderr } = spawnSync(process.execPath, program, {
    encoding: "utf8",
    cwd: folder,
    input: typed,
  });
  return { status, stdout, stderr };
}

const at = (name: string) => join(folder, name);

describe("the start command", () => {
  it("writes a short file to begin with, and a full study from it", () => {
    expect(start(["--example", "--out", "lake.short.yaml"]).status).toBe(0);
    const made = start(["lake.short.yaml", "--out", "lake.yaml"]);
    expect(made).toMatchObject({ status: 0, stderr: "" });
    expect(made.stdout).toContain("typical values to replace with your own");
    // Two intakes, the plant, docks, three ramps and what the whole lake pays
    expect(readStudyFile(at("lake.yaml")).structures).toHaveLength(8);
  });

  it("asks where there is no file, and again where an answer cannot be", () => {
    const answers = ["Blue Lake", "si", "Nowhere", "Idaho", "12,5 m", "500 m", ...Array<string>(7).fill("")];
    const made = start(["--out", "asked.yaml"], [...answers, "y", "town", "0.3 m3/s"].join("\n"));
    expect(made.status).toBe(0);
    expect(made.stdout).toContain('found "Nowhere"');
    expect(made.stdout).toContain("Write decimals with a point");
    const { lake, structures } = readStudyFile(at("asked.yaml"));
    expect(lake.name).toBe("Blue Lake");
    expect(structures[0]).toMatchObject({ kind: "intake", demand: { jul: { text: "0.3 m3/s" } } });
  });

  it.each([
    ["empty.short.yaml", "", "found nothing"],
    ["sheet.short.yaml", "summerLevel;2136\nramps;3\n", "a text without fields"],
    ["wrong.short.yaml", "depth: deep\nramps: 2.5\n", "2 problems"],
  ])("says what is wrong with a file and writes nothing: %s", (name, text, found) => {
    writeFileSync(at(name), text);
    const made = start([name, "--out", "nothing.yaml"]);
    expect(made.status).toBe(2);
    expect(made.stderr).toContain(found);
    expect(existsSync(at("nothing.yaml"))).toBe(false);
  });

  it("says where a short file is missing, and that it needs a place to write to", () => {
    expect(start(["none.short.yaml", "--out", "nothing.yaml"]).stderr).toContain("no such file");
    expect(start(["--example"]).stderr).toContain("--out FILE is missing");
  });

  it("writes over nothing that is there", () => {
    writeFileSync(at("mine.yaml"), "mine");
    expect(start(["lake.short.yaml", "--out", "mine.yaml"])).toMatchObject({ status: 2 });
    expect(readFileSync(at("mine.yaml"), "utf8")).toBe("mine");
  });

  it("writes the example with what each fact is", () => {
    expect(readFileSync(at("lake.short.yaml"), "utf8")).toContain("# the largest");
  });
});
