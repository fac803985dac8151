import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { readStudyFile } from "../../src/study/reading/read.js";
import { examplePath } from "../study/example.js";
import { run } from "./command.js";

const folder = mkdtempSync(join(tmpdir(), "work-command-"));
afterAll(() => rmSync(folder, { recursive: true }));

const study = join(folder, "lake.yaml");
const file = join(folder, "orders.csv");
writeFileSync(study, readFileSync(examplePath("sorrel-bend"), "utf8"));
const csv = `Closed,Asset,Type,By,Hours,Labor
${["2,130", "4,260", "6,390"].map((amounts, index) => `2025-05-0${index + 1},Fire,Basket,J. Doe,${amounts}`).join("\n")}
`;
writeFileSync(file, csv);
const columns = ["date=Closed", "structure=Asset", "work=Type", "hours=Hours", "laborCost=Labor"];
const set = (...settings: readonly string[]) => settings.flatMap((each) => ["--set", each]);

describe("the work command", () => {
  it("asks for columns and words of a first file, and changes nothing", async () => {
    const before = readFileSync(study, "utf8");
    expect((await run("work", study, file)).stderr).toContain(
      "line 1: found the columns Closed, Asset, Type, By, Hours, Labor",
    );
    const asked = await run("work", study, file, ...set(...columns));
    expect(asked.status).toBe(2);
    expect(asked.stderr).toContain("found the structures “Fire” in 3 lines");
    expect(asked.stderr).toContain("found the kinds of work “Basket” in 3 lines");
    expect(readFileSync(study, "utf8")).toBe(before);
  });

  it("takes own values with their counts, and keeps no name", async () => {
    const words = set("structures=Fire=fire-lines", "works=Basket=strainer");
    const { status, stdout } = await run("work", study, file, ...set(...columns), ...words);
    expect(status).toBe(0);
    expect(stdout).toMatch(/fire-lines +Cleaning a strainer +3 +12 +780/);
    expect(stdout).toContain(
      "Own value for the hours of work to clean a strainer once: 4 ± 2.67 h, of 3 orders; before: the usual 3 h.",
    );
    expect(stdout).toContain("Dropped and not kept: By.");
    // By hand: three orders at the same 65 an hour, 65 (110 − 45) ÷ (2 · 64 √3); 4 h down to the usual low, 4 (1 − 1/3).
    expect(readStudyFile(study).overrides.slice(-2)).toMatchObject([
      { id: "labour.maintenance-rate", value: "65 ± 19.1 $/h" },
      { id: "raw-water.strainer-hours", value: "4 ± 2.67 h" },
    ]);
    expect(readFileSync(study, "utf8")).not.toContain("Doe");
  });

  it("reads the next file without a setting, and refuses lines with faults unless asked to go on", async () => {
    writeFileSync(file, csv.replace("2025-05-01", "2025-02-30").replace("6,390", "8,520"));
    const { status, stderr } = await run("work", study, file);
    expect([status, stderr]).toEqual([2, expect.stringContaining("allowed: a day that the month has.")]);
    const partly = await run("work", study, file, "--partly");
    expect(partly.stdout).toContain("6 ± 4 h, of 2 orders; before: 4 ± 2.67 h.");
    expect(partly.stdout).toContain("Left out: orders.csv, line 2");
    expect(readStudyFile(study).overrides.filter(({ id }) => id === "raw-water.strainer-hours")).toHaveLength(
      1,
    );
  });
});
